/**
 * Arrangement of sheets on the page: in reading order, in as many columns as make the whole about as wide as tall.
 * Pure.
 */

import type { SheetOnPage } from '../../src/protocol/sheets.ts';
import type { Units } from '../../src/core/units.ts';
import type { Box } from '../common/camera/viewport.ts';
import { mostListed, sheetFacts } from './words.ts';

export interface SheetPlace {
  readonly sheet: SheetOnPage;
  readonly x: number;
  readonly y: number;
}

export interface CaptionedSheet extends SheetPlace {
  /** What is told of it under its name, in lines no wider than the widest sheet, and how far above the sheet that begins. */
  readonly facts: readonly string[];
  readonly above: number;
}

export interface ArrangedSheets {
  readonly places: readonly CaptionedSheet[];
  readonly bounds: Box;
  /** Height of the letters of what is told above each sheet, in mm, and of its name over that. */
  readonly letters: number;
  readonly nameLetters: number;
}

/** As shares of the widest sheet. */
const gapShare = 0.05;
/** Where there are many sheets they are read from afar: letters grow with them, up to where the longest words of a line have no room. */
const lettersShare = { name: 0.024, facts: 0.019, least: 0.024, most: 0.13 };
/** From one line to the next, in letters. */
export const leading = 1.25;
/** Between what is told and the sheet, in letters. */
const aboveSheet = 0.4;
/** Width of a letter of a line, on the average. */
const widthOfLetter = 0.56;

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
  const sized = (share: number): number =>
    Math.min(Math.max(share * many, lettersShare.least), lettersShare.most) * widest;
  const [letters, nameLetters] = [sized(lettersShare.facts), sized(lettersShare.name)];
  const places: CaptionedSheet[] = [];
  let y = 0;
  for (let from = 0; from < sheets.length; from += columns) {
    const own = sheets.slice(from, from + columns);
    const facts = own.map((_, column) =>
      inLines(shortFacts(sheets, from + column, units), widest / (widthOfLetter * letters)),
    );
    const above = (leading * Math.max(...facts.map(({ length }) => length)) + aboveSheet) * letters;
    y += leading * nameLetters + above;
    for (const [column, sheet] of own.entries())
      places.push({ sheet, x: column * (widest + gap), y, facts: facts[column]!, above });
    y += Math.max(...own.map(({ height }) => height)) + gap;
  }
  const right = Math.max(0, ...places.map(({ x, sheet }) => x + sheet.width));
  const bottom = Math.max(0, ...places.map(({ y: top, sheet }) => top + sheet.height));
  return { places, bounds: [0, 0, right, bottom], letters, nameLetters };
}

/** Of many sheets in a row that are equally large, that is told of the first. */
function shortFacts(sheets: readonly SheetOnPage[], index: number, units: Units): string[] {
  const [size, ...others] = sheetFacts(sheets[index]!, units);
  const before = sheets.length > mostListed ? sheets[index - 1] : undefined;
  return before && sheetFacts(before, units)[0] === size ? others : [size!, ...others];
}

/** Of at most so many letters, where no fact alone is longer. */
function inLines(facts: readonly string[], most: number): string[] {
  const lines: string[] = [];
  for (const fact of facts) {
    const longer = `${lines.at(-1)} · ${fact}`;
    if (lines.length > 0 && longer.length <= most) lines.splice(-1, 1, longer);
    else lines.push(fact);
  }
  return lines;
}
