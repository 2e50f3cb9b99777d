/** Table of all pieces of a job with their orders and places. */

import { boundsOf } from '../../geometry/measure.ts';
import { clip } from '../../core/length.ts';
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

/**
 * As CSV, in the unit of the job and in s. What is left out has a row for each tag that is asked for, without a piece, so
 * that the table adds up to the orders; one without a copy if nobody knows how many.
 */
export function pieceTable(job: Pick<LaidOutJob, 'layout' | 'pieces' | 'model' | 'leftOut'>): string {
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
    'why',
  ];
  const made = rowsAndPieces(job);
  const rows = made.map(({ row, of }) => {
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
      sheet === undefined ? `All sheets of “${clip(stock)}” are used up.` : '',
    ];
  });
  const lacking = notMade(
    made.map(({ row }) => row),
    job.leftOut,
  );
  const left = lacking.map(({ order, spec, tag, copy, why }) => {
    const known = new Map<string, string | number>(Object.entries({ order, spec, tag, copy, sheet: 'none', why }));
    return header.map((column) => known.get(column) ?? '');
  });
  return tableText(header, [...rows, ...left]);
}

interface NotMade extends Pick<PieceRow, 'order' | 'spec' | 'tag'> {
  readonly copy: number | '';
  readonly why: string;
}

/** Numbered behind the copies that are made. */
function notMade(made: readonly PieceRow[], leftOut: LaidOutJob['leftOut']): NotMade[] {
  const last = new Map<string, number>();
  const keyOf = ({ order, spec, tag }: Pick<PieceRow, 'order' | 'spec' | 'tag'>) => JSON.stringify([order, spec, tag]);
  for (const row of made) last.set(keyOf(row), Math.max(last.get(keyOf(row)) ?? 0, row.copy));
  return leftOut.flatMap(({ order, spec, label: tag, quantity, why }): NotMade[] => {
    const which = { order, spec, tag };
    if (quantity === undefined) return [{ ...which, copy: '', why }];
    const before = last.get(keyOf(which)) ?? 0;
    last.set(keyOf(which), before + quantity);
    return Array.from({ length: quantity }, (_, index) => ({ ...which, copy: before + index + 1, why }));
  });
}
