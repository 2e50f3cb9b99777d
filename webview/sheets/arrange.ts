/**
 * Arrangement of sheets on the page: in reading order, in as many columns as make the whole about as wide as tall.
 * Pure.
 */

import type { SheetOnPage } from '../../src/protocol/sheets.ts';
import type { Units } from '../../src/core/units.ts';
import type { Box } from '../common/camera/viewport.ts';
import { captionHeight, captionOf, nearShare } from './captions.ts';
import type { CaptionLetters } from './captions.ts';

export interface SheetPlace {
  readonly sheet: SheetOnPage;
  readonly x: number;
  readonly y: number;
}

export interface CaptionedSheet extends SheetPlace {
  /** Room above it for what is told of it. */
  readonly above: number;
}

export interface ArrangedSheets {
  readonly places: readonly CaptionedSheet[];
  readonly bounds: Box;
  /** Width of the widest sheet. */
  readonly widest: number;
  /** Of what is told above each sheet when all are in view; there is no room for larger ones. */
  readonly letters: CaptionLetters;
}

/** As shares of the widest sheet. */
const gapShare = 0.05;
/** Where there are many sheets they are read from afar: letters grow with them, up to where a number has no room. */
const lettersShare = { name: 0.024, facts: 0.019, least: 0.024, most: 0.2 };

/** Depends only on the sheets, so that nothing moves when the page is resized. */
export function arranged(sheets: readonly SheetOnPage[], units: Units): ArrangedSheets {
  const counts = Array.from({ length: Math.max(1, sheets.length) }, (_, index) => index + 1);
  const all = counts.map((columns) => inColumns(sheets, columns, units));
  return all.reduce((best, each) => (longerSide(each) < longerSide(best) ? each : best));
}

function longerSide({ bounds: [left, top, right, bottom] }: ArrangedSheets): number {
  return Math.max(right - left, bottom - top);
}

function inColumns(sheets: readonly SheetOnPage[], columns: number, units: Units): ArrangedSheets {
  const widest = Math.max(0, ...sheets.map(({ width }) => width));
  const gap = gapShare * widest;
  const many = Math.max(columns, Math.ceil(sheets.length / columns));
  const most = lettersShare.facts * many > nearShare ? lettersShare.most : nearShare;
  const sized = (share: number): number => Math.min(Math.max(share * many, lettersShare.least), most) * widest;
  const letters: CaptionLetters = { facts: sized(lettersShare.facts), name: sized(lettersShare.name) };
  const places: CaptionedSheet[] = [];
  let y = 0;
  for (let from = 0; from < sheets.length; from += columns) {
    const own = sheets.slice(from, from + columns);
    const space = { letters, width: widest, units };
    const above = Math.max(...own.map((_, column) => captionHeight(captionOf(sheets, from + column, space), letters)));
    y += above;
    for (const [column, sheet] of own.entries()) places.push({ sheet, x: column * (widest + gap), y, above });
    y += Math.max(...own.map(({ height }) => height)) + gap;
  }
  const right = Math.max(0, ...places.map(({ x, sheet }) => x + sheet.width));
  const bottom = Math.max(0, ...places.map(({ y: top, sheet }) => top + sheet.height));
  return { places, bounds: [0, 0, right, bottom], widest, letters };
}
