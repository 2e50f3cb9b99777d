/** Table of all pieces of a job with their orders and places. */

import { boundsOf } from '../../geometry/measure.ts';
import { shortFigure } from '../../core/units.ts';
import { tableText } from '../../spec/files/table.ts';
import type { LaidOutJob } from '../job.ts';
import type { JobSheet, LaidJobPiece } from '../layout/layout.ts';
import type { JobPiece } from '../orders/job-piece.ts';
import { sharesOfPieces } from '../shares.ts';
import { costsOfJob } from '../totals.ts';

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
export function pieceRows(job: Pick<LaidOutJob, 'layout'>): PieceRow[] {
  return rowsAndPieces(job).map(({ row }) => row);
}

function rowsAndPieces({ layout }: Pick<LaidOutJob, 'layout'>): { readonly row: PieceRow; readonly of: JobPiece }[] {
  return [
    ...layout.sheets.flatMap((sheet) => sheet.pieces.map((laid) => ({ row: rowOn(sheet, laid), of: laid.of }))),
    ...layout.left.map(({ stock, of }) => ({ row: { ...plainRow(of), stock }, of })),
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

/** As CSV, in the unit of the job and in s. */
export function pieceTable(job: Pick<LaidOutJob, 'layout' | 'pieces' | 'model'>): string {
  const { units } = job.model;
  const shareOf = sharesOfPieces(job);
  const currency = costsOfJob(job).material?.currency;
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
    ...['x', 'y', 'width', 'height'].map((name) => `${name} ${units}`),
    'turned',
    currency === undefined ? 'cost' : `cost ${currency}`,
    'machine s',
  ];
  const rows = rowsAndPieces(job).map(({ row, of }) => {
    const { number, order, rush, spec, tag, copy, piece, stock, sheet, place, turned } = row;
    const { cost, seconds } = shareOf(of);
    return [
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
        ? [place.x, place.y, place.width, place.height].map((value) => Number(shortFigure(value, units)))
        : ['', '', '', '']),
      turned ?? '',
      cost?.amount.toFixed(2) ?? '',
      seconds ?? '',
    ];
  });
  return tableText(header, rows);
}
