/** The sheets of a job, for the page that draws them. Pure. */

import { tagNames } from '../jobs/papers/by-order.ts';
import type { CheckedJob } from '../jobs/job.ts';
import type { DraftSheet } from '../jobs/layout/layout.ts';
import { pieceId } from '../jobs/orders/job-piece.ts';
import { pieceName } from '../jobs/papers/sheet-map.ts';
import type { SheetOnPage, SheetShape } from '../protocol/sheets.ts';
import { sheetsOnPage } from './sheets-scene.ts';
import type { SheetToShow } from './sheets-scene.ts';

export function jobOnPage(
  drafts: readonly DraftSheet[],
  job: Pick<CheckedJob, 'pieces' | 'leftOut'>,
): {
  readonly sheets: SheetOnPage[];
  readonly shapes: SheetShape[];
} {
  const nameOf = tagNames(job);
  return sheetsOnPage(
    drafts.map(({ name, stock, width, height, margin, filled, outline, from, pieces }): SheetToShow => ({
      id: name,
      name,
      stock,
      width,
      height,
      margin,
      filled,
      outline,
      of: from.stock,
      pieces: pieces.map(({ number, of, toSheet, region, enclosed, fixed }) => ({
        id: pieceId(of),
        number,
        name: pieceName(of, nameOf),
        order: of.of.order,
        rush: of.of.rush,
        faulty: false,
        fixed: fixed !== undefined,
        piece: of.piece,
        toSheet,
        region,
        enclosed,
      })),
    })),
  );
}
