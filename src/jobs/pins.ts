/** Turns pins from the sheets page, given by piece ids and sheet names, into edits of the job's text. */

import type { TextEdit } from '../core/issue.ts';
import { fixEdits, releaseEdits } from './layout/fixed-text.ts';
import type { PlaceToFix } from './layout/fixed-text.ts';
import type { CheckedJob } from './job.ts';
import { pieceId } from './orders/job-piece.ts';
import type { DraftSheet } from './layout/layout.ts';

export interface Pin {
  readonly piece: string;
  /** Name of the sheet. */
  readonly sheet: string;
  /** Lower left corner of its box, in mm from that of the sheet. */
  readonly x: number;
  readonly y: number;
  /** In degrees, counter-clockwise. */
  readonly turned: number;
}

/** A job with the sheets laid out so far. */
export interface PinnedJob extends Required<Pick<CheckedJob, 'model' | 'pieces' | 'source'>> {
  readonly sheets: readonly DraftSheet[];
}

/** `undefined` if the text has no place for it. Pieces and sheets that no longer exist are skipped. */
export function pinEdits(
  pins: readonly Pin[],
  { sheets: laidSheets, pieces, model, source }: PinnedJob,
): TextEdit[] | undefined {
  const sheets = new Map(laidSheets.map((sheet) => [sheet.name, sheet]));
  const laid = laidById(laidSheets);
  const places = pins.flatMap(({ piece, sheet: name, x, y, turned }): PlaceToFix[] => {
    const [sheet, known] = [sheets.get(name), laid.get(piece)];
    if (!sheet || !known) return [];
    const on = { kind: sheet.offcut ? 'offcut' : 'sheet', number: sheet.number } as const;
    const { of, fixed } = known;
    return [{ of, on, at: { x, y }, turned, ...(fixed ? { entry: fixed } : {}) }];
  });
  const all = pieces.stocks.flatMap((stock) => stock.pieces);
  return fixEdits(places, { source, units: model.units, all });
}

export function unpinEdits(ids: readonly string[], { sheets, source }: PinnedJob): TextEdit[] {
  const laid = laidById(sheets);
  return releaseEdits(
    ids.flatMap((id) => laid.get(id)?.fixed ?? []),
    source,
  );
}

function laidById(sheets: readonly DraftSheet[]) {
  return new Map(sheets.flatMap(({ pieces }) => pieces.map((laid) => [pieceId(laid.of), laid] as const)));
}
