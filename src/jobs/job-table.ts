/** Table of all pieces of a job with their orders and places. */

import { boundsOf } from '../geometry/measure.ts';
import { tableText } from '../spec/table.ts';
import type { LaidOutJob } from './job.ts';
import type { JobSheet, LaidJobPiece } from './layout.ts';
import type { JobPiece } from './job-piece.ts';
import type { JobTag } from './work.ts';

export interface PieceRow {
  /** Number on the map of the sheet; absent if it fits on none. */
  readonly number?: number;
  readonly order: string;
  readonly rush: boolean;
  readonly spec: string;
  readonly tag: string;
  readonly copy: number;
  readonly piece: string;
  readonly stock: string;
  readonly sheet?: string;
  /** Its box on the sheet, in mm from the lower left corner. */
  readonly place?: { readonly x: number; readonly y: number; readonly width: number; readonly height: number };
  /** In degrees, counter-clockwise. */
  readonly turned?: number;
}

/** First the pieces on sheets, by number, then those on none. */
export function pieceRows({ layout }: Pick<LaidOutJob, 'layout'>): PieceRow[] {
  return [
    ...layout.sheets.flatMap((sheet) => sheet.pieces.map((laid) => rowOn(sheet, laid))),
    ...layout.left.map(({ stock, of }) => ({ ...plainRow(of), stock })),
  ];
}

function rowOn({ stock, name }: JobSheet, { number, of, region, toSheet: { a, b } }: LaidJobPiece): PieceRow {
  const { minX, minY, maxX, maxY } = boundsOf(region)!;
  const turned = Math.round((Math.atan2(b, a) * 180) / Math.PI);
  return {
    number,
    ...plainRow(of),
    stock,
    sheet: name,
    place: { x: minX, y: minY, width: maxX - minX, height: maxY - minY },
    turned: (turned + 360) % 360,
  };
}

function plainRow({ of, copy, piece }: JobPiece): Omit<PieceRow, 'stock'> {
  const { order, rush, spec, label } = of;
  return { order, rush, spec, tag: label, copy, piece: piece.id };
}

export function piecesWanted(tags: readonly JobTag[]): number {
  return tags.reduce((sum, { copies, tag }) => sum + copies * tag.pieces.length, 0);
}

/** As CSV, in mm. */
export function pieceTable(job: Pick<LaidOutJob, 'layout'>): string {
  const header = [
    'number',
    'order',
    'rush',
    'spec',
    'tag',
    'copy',
    'piece',
    'stock',
    'sheet',
    'x mm',
    'y mm',
    'width mm',
    'height mm',
    'turned',
  ];
  const rows = pieceRows(job).map(({ number, order, rush, spec, tag, copy, piece, stock, sheet, place, turned }) => [
    number ?? '',
    order,
    rush ? 'yes' : '',
    spec,
    tag,
    copy,
    piece,
    stock,
    sheet ?? 'none',
    ...(place
      ? [place.x, place.y, place.width, place.height].map((value) => Number(value.toFixed(2)))
      : ['', '', '', '']),
    turned ?? '',
  ]);
  return tableText(header, rows);
}
