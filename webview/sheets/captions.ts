/**
 * What is told above each sheet: all of it from near, and from afar, where many sheets are seen at once, no more than
 * can be read. Pure.
 */

import type { SheetOnPage } from '../../src/protocol/sheets.ts';
import { rushSign } from '../../src/look/signs.ts';
import type { Units } from '../../src/core/units.ts';
import { mostListed, percent, sheetFacts } from './words.ts';

/** Heights of letters, in mm. */
export interface CaptionLetters {
  readonly facts: number;
  readonly name: number;
}

export interface Caption {
  readonly name: string;
  /** In lines no wider than the widest sheet. */
  readonly facts: readonly string[];
}

/** From one line to the next, in letters. */
const leading = 1.25;
/** Between what is told and the sheet, in letters. */
const aboveSheet = 0.4;
/** Width of a letter of a line, on the average. */
const widthOfLetter = 0.56;
/** Largest letters, as a share of the widest sheet, in which the name of a sheet has room above it: our own judgement. */
export const nearShare = 0.13;

/** Distance of the lower edge of a line from the sheet; `below`: how many lines of facts come after it. */
export function lineHeight({ facts }: CaptionLetters, below: number): number {
  return (leading * below + aboveSheet) * facts;
}

export function captionHeight({ facts }: Caption, letters: CaptionLetters): number {
  return lineHeight(letters, facts.length) + leading * letters.name;
}

interface CaptionSpace {
  readonly letters: CaptionLetters;
  /** Of the widest sheet, in mm. */
  readonly width: number;
  /** Above the sheet, in mm; without, as much as it takes. */
  readonly room?: number;
  readonly units: Units;
}

export function captionOf(
  sheets: readonly SheetOnPage[],
  index: number,
  { letters, width, room = Infinity, units }: CaptionSpace,
): Caption {
  const sheet = sheets[index]!;
  const most = width / (widthOfLetter * letters.facts);
  const isNear = Math.max(letters.facts, letters.name) <= nearShare * width * 1.001;
  const whole = { name: sheet.name, facts: inLines(shortFacts(sheets, index, units), most) };
  if (isNear && captionHeight(whole, letters) <= room * 1.001) return whole;
  const rush = sheet.pieces.filter((piece) => piece.rush).length;
  return {
    name: ending(shortName(sheet, sheets[index - 1]), width / (0.62 * letters.name)),
    facts: inLines([percent(sheet.filled), ...(rush > 0 ? [`${rush}${rushSign}`] : [])], most),
  };
}

/** Its number, with what it is cut from where that begins; an offcut says that it is one. */
function shortName({ name, stock }: SheetOnPage, before: SheetOnPage | undefined): string {
  const own = name.startsWith(`${stock} `) ? name.slice(stock.length + 1) : name.replace(/: .*$/, '');
  const short = own.replace(/^sheet /i, '');
  return own !== name && before?.stock !== stock ? `${stock} ${short}` : short;
}

/** The last words that have room, which are its number. */
function ending(name: string, most: number): string {
  const words = name.split(' ');
  while (words.length > 1 && words.join(' ').length > most) words.shift();
  return words.join(' ');
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
