/**
 * Bare stems that a strap or a bar makes other letters of: two with one between them halfway up are an “H” (“Ilse”, “Till” with straps), and one with a
 * strap at its top is a “T” or an “F”.
 */

import { translation, transform } from '../../geometry/affine.ts';
import { clippedToBox } from '../../geometry/clip-to-box.ts';
import { boundsOf } from '../../geometry/measure.ts';
import { partsOf } from '../../geometry/parts.ts';
import type { Region } from '../../geometry/types.ts';
import type { Letter, Lettering } from '../../tag/lettering/letters.ts';
import { isBareStem, isSingleStem } from '../../tag/overlap/reading.ts';
import { lineAt, rowAt, rowsOf, topOf } from '../../tag/overlap/runs.ts';
import type { Runs } from '../../tag/overlap/runs.ts';

/** Rows to an x-height. */
const fine = 60;

/** A letter that is wider than so many x-heights is no stem; with a serif at its top it is wider there than halfway up, by so many. */
const widest = 0.7;
const serif = 0.1;

/**
 * In heights of the lower letter: below the first a bar is the foot of the two, and with its middle below the second it is that of an “H”; at a top it
 * reaches above the third. By eye and by OCR, which reads 6 of 18 words that begin with “Il” on such bars in six sans faces, and 27 of 70 words with straps on such stems in five.
 */
const bar = { foot: 0.06, halfway: 0.75, top: 0.86 } as const;

/** So high a bar is a wall, as of two letters that have run together, in heights of the lower letter. */
const highest = 0.4;

export interface BarredStem {
  readonly letters: string;
  readonly as: 'H' | 'T';
}

/** The first of them in a line. */
export function barredStem({ letters, xHeight, grow }: Lettering, shape: Region): BarredStem | undefined {
  const scanned = new Map<Letter, Runs>();
  const rowsIn = (letter: Letter): Runs => {
    const rows = scanned.get(letter) ?? scannedRows(letter, xHeight);
    scanned.set(letter, rows);
    return rows;
  };
  const isBare = (letter: Letter, side: -1 | 1): boolean => {
    const { minX, maxX } = boundsOf(letter.region)!;
    if (!/^[\p{L}1]$/u.test(letter.text) || maxX - minX > widest * xHeight) return false;
    if (letter.text !== '1') return isBareStem(rowsIn(letter), xHeight) && !hasSerif(rowsIn(letter), xHeight);
    // Its flag is on the left.
    return side > 0 && isSingleStem(rowsIn(letter), xHeight);
  };
  for (const [index, right] of letters.entries()) {
    const left = letters[index - 1];
    if (!left || left.line !== right.line || left.baseline === undefined || right.baseline === undefined) continue;
    const bare = [isBare(left, 1), isBare(right, -1)] as const;
    if (!bare.includes(true)) continue;
    const between = barBetween({ left: rowsIn(left), right: rowsIn(right) }, shape, { baseline: left.baseline, grow });
    if (!between) continue;
    const height = Math.min(topOf(rowsIn(left)), topOf(rowsIn(right)));
    const [low, high] = [between.low / height, between.high / height];
    if (high - low > highest) continue;
    const isInside = low > bar.foot && low + high < 2 * bar.halfway;
    if (bare.every(Boolean) && isInside) return { letters: left.text + right.text, as: 'H' };
    const barred = [left, right].find((each, k) => bare[k] && between.high > bar.top * topOf(rowsIn(each)));
    if (barred) return { letters: barred.text, as: 'T' };
  }
  return undefined;
}

/** Whether it has a serif at its top, with which a strap there runs on. */
function hasSerif(rows: Runs, xHeight: number): boolean {
  const widthAt = (row: number): number => (lineAt(rows, row).at(-1) ?? 0) - (lineAt(rows, row)[0] ?? 0);
  const top = rowAt(rows, topOf(rows));
  const upper = Array.from({ length: rowAt(rows, serif * topOf(rows)) + 1 }, (_, row) => widthAt(top - row));
  return Math.max(...upper) > widthAt(Math.round(top / 2)) + serif * xHeight;
}

function scannedRows({ region, baseline = 0 }: Letter, xHeight: number): Runs {
  return rowsOf(transform(region, translation(0, -baseline)), xHeight / fine);
}

/** The only thing that lies between two letters, from the baseline up; `undefined` if they touch, or there is more or nothing. */
function barBetween(
  { left, right }: { readonly left: Runs; readonly right: Runs },
  shape: Region,
  { baseline, grow }: { readonly baseline: number; readonly grow: number },
): { readonly low: number; readonly high: number } | undefined {
  const rows = Array.from({ length: rowAt(left, Math.min(topOf(left), topOf(right))) + 1 }, (_, row) => row);
  const end = Math.max(...rows.map((row) => lineAt(left, row).at(-1) ?? -Infinity)) + grow;
  const start = Math.min(...rows.map((row) => lineAt(right, row)[0] ?? Infinity)) - grow;
  if (!(start > end)) return undefined;
  const middle = (start + end) / 2;
  const half = left.pitch / 2;
  const top = Math.max(topOf(left), topOf(right)) + grow;
  const strip = { minX: middle - half, maxX: middle + half, minY: baseline - grow, maxY: baseline + top };
  const [only, ...others] = partsOf(clippedToBox(shape, strip)).map((part) => boundsOf(part)!);
  if (!only || others.length > 0) return undefined;
  return { low: only.minY - baseline, high: only.maxY - baseline };
}
