/**
 * What a ring makes of a letter on which it hangs, anywhere in a line: a bowl in the crook of a stem, as “L” becomes “6” and “b” “B”, and the bowl of an
 * “R” on the left head of an “N”. The limits are our own judgement, from looking at 96 names in twelve faces.
 */

import type { Bounds, Point, Region } from '../../geometry/types.ts';
import { cellsOf, fillsRows, hasAny } from './letter-cells.ts';

/** Of a line, from left to right. */
export type LettersInLine = readonly { readonly text: string; readonly region: Region; readonly box: Bounds }[];

/**
 * A stem stands beside a ring if it reaches so many of the ring's radii up and down from its middle, no further aside than so many. From this
 * share of the letter's height on, a ring is as large as a bowl.
 */
const stem = { half: 0.6, aside: 1.1, leastBowl: 0.3 } as const;

/** The left head of an N is in this share of its width. A ring is the bowl of an R if it is between so many of its heights. */
const head = { share: 0.4, least: 0.35, most: 0.85 } as const;

const letterN = /^[NÑŃŇŅΝ]$/u;

/** The ends of a line are seen from inside only; `stems.ts` judges rings beyond them. */
export function madeOfLetter(letters: LettersInLine, { x, y }: Point, radius: number): ('crook' | 'R')[] {
  const last = letters.length - 1;
  return letters.flatMap(({ text, region, box }, index) => {
    const { minX, minY, maxX, maxY } = box;
    const reach = stem.aside * radius;
    if (x + reach < minX || x - reach > maxX || y - radius > maxY || y + radius < minY) return [];
    const share = (2 * radius) / (maxY - minY);
    const isOnHead = x > minX && x < minX + head.share * (maxX - minX) && y > maxY - radius;
    if (isOnHead && letterN.test(text) && share > head.least && share < head.most) return ['R'];
    if (share < stem.leastBowl) return [];
    const { ink } = cellsOf(region);
    const [bottom, top] = [y - stem.half * radius, y + stem.half * radius];
    const window = (from: number, to: number): Bounds => ({ minX: from, minY: bottom, maxX: to, maxY: top });
    const isWithin = (index > 0 || hasAny(ink, window(minX, x))) && (index < last || hasAny(ink, window(x, maxX)));
    const isBesideStem = [window(x - reach, x), window(x, x + reach)].some((side) => fillsRows(ink, box, side));
    return isWithin && isBesideStem ? ['crook'] : [];
  });
}
