/**
 * Arrangement of sheets on the page: in reading order, in as many columns as make the whole about as wide as tall.
 * Pure.
 */

import type { SheetOnPage } from '../../src/protocol/sheets.ts';
import type { Box } from '../common/camera/viewport.ts';

export interface SheetPlace {
  readonly sheet: SheetOnPage;
  readonly x: number;
  readonly y: number;
}

export interface ArrangedSheets {
  readonly places: readonly SheetPlace[];
  readonly bounds: Box;
  /** Height of the letters of what is told above each sheet, in mm, and of its name over that. */
  readonly letters: number;
  readonly nameLetters: number;
}

/** As shares of the widest sheet. */
const gapShare = 0.05;
const lettersShare = 0.024;
/** Names are read from afar where there are many sheets: they grow with them, up to this. */
const mostNameShare = 0.1;

/** Depends only on the sheets, so that nothing moves when the page is resized. */
export function arranged(sheets: readonly SheetOnPage[]): ArrangedSheets {
  const widest = Math.max(0, ...sheets.map(({ width }) => width));
  const tallest = Math.max(0, ...sheets.map(({ height }) => height));
  const gap = gapShare * widest;
  const letters = lettersShare * widest;
  const columns = Math.max(1, Math.round(Math.sqrt((sheets.length * (tallest + gap)) / (widest + gap || 1))));
  const rows = Math.ceil(sheets.length / columns);
  const nameLetters = Math.min(lettersShare * Math.max(1, columns, rows), mostNameShare) * widest;
  const places: SheetPlace[] = [];
  let y = 0;
  for (let row = 0; row * columns < sheets.length; row += 1) {
    const own = sheets.slice(row * columns, (row + 1) * columns);
    y += 1.2 * nameLetters + 1.8 * letters;
    for (const [column, sheet] of own.entries()) places.push({ sheet, x: column * (widest + gap), y });
    y += Math.max(...own.map(({ height }) => height)) + gap;
  }
  const right = Math.max(0, ...places.map(({ x, sheet }) => x + sheet.width));
  const bottom = Math.max(0, ...places.map(({ y: top, sheet }) => top + sheet.height));
  return { places, bounds: [0, 0, right, bottom], letters, nameLetters };
}
