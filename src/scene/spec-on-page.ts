/** The sheets of a spec's tags, for the page that draws them. Pure. */

import { isError } from '../core/issue.ts';
import type { Job } from '../export/job/job.ts';
import type { SheetPlan } from '../export/sheets/sheet-plan.ts';
import type { Region } from '../geometry/types.ts';
import type { SheetOnPage, SheetShape } from '../protocol/sheets.ts';
import { sheetsOnPage } from './sheets-scene.ts';
import type { SheetToShow } from './sheets-scene.ts';

/** Identifies a piece on the page: its row, the copy, and its name in the spec. */
export type SpecPieceId = readonly [row: number, copy: number, piece: string];

export function specOnPage(
  { sheet: { width, height, margin }, sheets }: SheetPlan,
  jobs: readonly Job[],
): { readonly sheets: SheetOnPage[]; readonly shapes: SheetShape[] } {
  const faulty = new Set((jobs[0]?.issues ?? []).filter(isError).map(({ label }) => label ?? ''));
  const several = new Set(sheets.map(({ from }) => from.stock.name)).size > 1;
  let number = 0;
  return sheetsOnPage(
    sheets.map(({ from, pieces, use }, index): SheetToShow => ({
      id: `${index + 1}`,
      name: `Sheet ${index + 1}${several && from.stock.name !== undefined ? `: ${from.stock.name}` : ''}`,
      width,
      height,
      margin,
      filled: use.area / (width * height),
      outline: rectangle(width, height),
      of: from.stock,
      stock: from.stock.name ?? '',
      pieces: pieces.map(({ name, row, copy, piece, toSheet, region }) => ({
        id: JSON.stringify([row, copy, piece.id] satisfies SpecPieceId),
        number: ++number,
        name: name === '' || name === piece.title ? piece.title : `${name}, ${piece.title}`,
        order: '',
        rush: false,
        faulty: faulty.has(name),
        fixed: false,
        piece,
        toSheet,
        region,
        enclosed: region,
      })),
    })),
  );
}

function rectangle(width: number, height: number): Region {
  return [
    [
      { x: 0, y: 0 },
      { x: width, y: 0 },
      { x: width, y: height },
      { x: 0, y: height },
    ],
  ];
}
