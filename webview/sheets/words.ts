/** Words about sheets and pieces on the page. Pure. */

import type { LayoutFigure, PieceOnSheet, SheetOnPage } from '../../src/protocol/sheets.ts';
import { counted, lengthText, shortSize, sizeText } from '../../src/core/units.ts';
import type { Units } from '../../src/core/units.ts';
import { rushSign } from '../../src/look/signs.ts';

/** More sheets than this are told of together, or in fewer words. */
export const mostListed = 6;

export function sheetText(sheet: SheetOnPage, units: Units): string {
  return [sheet.name, ...sheetFacts(sheet, units)].join(' · ');
}

/** The same without its name. */
export function sheetFacts({ width, height, filled, pieces }: SheetOnPage, units: Units): string[] {
  const own = [shortSize(width, height, units), `${percent(filled)} filled`, counted(pieces.length, 'piece')];
  return [...own, ...rushText(pieces)];
}

/** How many are of rush orders, with the sign behind their numbers; nothing if none is. */
export function rushText(pieces: readonly PieceOnSheet[]): string[] {
  const count = pieces.filter(({ rush }) => rush).length;
  return count > 0 ? [`${count} rush (${rushSign})`] : [];
}

/** How full sheets are; of many, from the emptiest to the fullest. */
export function filledText(sheets: readonly SheetOnPage[]): string {
  const shares = sheets.map(({ filled }) => filled);
  const [least, most] = [Math.min(...shares), Math.max(...shares)];
  const isRange = sheets.length > mostListed && percent(least) !== percent(most);
  if (isRange) return `${Math.round(100 * least)} to ${percent(most)}`;
  return (sheets.length > mostListed ? [most] : shares).map(percent).join(', ');
}

export function percent(share: number): string {
  return `${Math.round(100 * share)} %`;
}

/** “71.3 %”, “12 min”, “3”. */
export function figureText({ value, unit, digits }: LayoutFigure): string {
  return [value.toFixed(digits), unit].filter((part) => part !== '').join(' ');
}

/** “+1”, “−0.4 min”; “same” where the texts of both are. */
export function differenceText(before: LayoutFigure, after: LayoutFigure): string {
  if (figureText(before) === figureText(after)) return 'same';
  // Of what is shown: 71.3 and 72.0 differ by 0.7, whatever their further digits.
  const [was, is] = [before, after].map(({ value, digits }) => Number(value.toFixed(digits))) as [number, number];
  const sign = is > was ? '+' : '−';
  return `${sign}${figureText({ ...after, value: Math.abs(is - was) })}`;
}

/** “Order 102 · rush”; empty for a piece that belongs to no order. */
export function orderText({ order, rush }: PieceOnSheet): string {
  return [...(order === '' ? [] : [`Order ${order}`]), ...(rush ? ['rush'] : [])].join(' · ');
}

export function pieceSize({ box: [minX, minY, maxX, maxY] }: PieceOnSheet, units: Units): string {
  return sizeText(maxX - minX, maxY - minY, units);
}

/** From the lower left corner of the sheet to that of the piece. */
export function placeText({ box: [minX, , , maxY] }: PieceOnSheet, { height }: SheetOnPage, units: Units): string {
  return `${lengthText(minX, units)} from the left, ${lengthText(height - maxY, units)} from the bottom`;
}

/** Full description, for people who cannot see the sheet. */
export function spokenPiece(piece: PieceOnSheet, units: Units): string {
  return [
    `${piece.number}: ${piece.name}`,
    ...(piece.order === '' ? [] : [`Order ${piece.order}`]),
    ...(piece.rush ? ['rush'] : []),
    pieceSize(piece, units),
    ...(piece.fixed ? ['pinned'] : []),
    ...(piece.faulty ? ['has errors'] : []),
  ].join(', ');
}

/** The same with where it lies, once it was moved, turned, pinned or let go. */
export function spokenPlace(piece: PieceOnSheet, sheet: SheetOnPage, units: Units): string {
  const pinned = piece.fixed ? '' : ', not pinned';
  return `${spokenPiece(piece, units)}${pinned}, ${placeText(piece, sheet, units)}, ${sheet.name}`;
}

/** How pieces are moved by hand. Where they are not: what to do instead. */
export const byHand = {
  moved:
    'A piece that is selected is moved by the arrow keys, ten times as far with Shift, and turned by R; P pins it and lets it go.',
  inJobs: 'To move or pin pieces, name this spec in a job.',
  kept: 'The layout that you kept stays as it is.',
} as const;

/** What Export writes, as its title. */
export const exporting = {
  now: 'Write the cut files of these sheets',
  kept: 'Write the cut files of the sheets as they are now, not of the ones that you kept',
} as const;
