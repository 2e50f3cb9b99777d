/**
 * Where a ring would be read as part of the lettering that it hangs: as a dot or an accent beside those there are, as an accent
 * on a small letter, as a full stop at the foot of the line, or as an “o” behind it. Before a capital nobody reads one. The costs and
 * reaches are our own judgement.
 */

import { boundsOf } from '../../geometry/measure.ts';
import type { Bounds, Point } from '../../geometry/types.ts';
import { marksAbove } from '../marks-above.ts';
import type { MadeShape } from '../made-shape.ts';

export interface RingReading {
  /** Boxes of dots and accents. */
  readonly marks: readonly Bounds[];
  /** Lines of upright lettering in small letters. */
  readonly lines: readonly (Bounds & {
    readonly baseline: number;
    readonly xHeight: number;
    /** 1 where it begins with a capital, else 0. */
    readonly capital: number;
  })[];
}

/** In shares of a fully joined ring. */
const markCost = 0.4;
const letterCost = 0.3;

/** A ring that stands within this share of the x-height of its line stands on a small letter. */
const onLine = 0.25;

/** In x-heights: what is as large as a letter is read as one. */
const smallestLetter = 0.6;
const largestLetter = 1.6;

/** Capitals have a band that is higher than their x-height by more than this factor. */
const smallLetters = 1.1;

export const noReading: RingReading = { marks: [], lines: [] };

export function readingOf(solids: readonly MadeShape[]): RingReading {
  return { marks: solids.flatMap(marksOf), lines: solids.flatMap(linesOf) };
}

function marksOf({ lettering = [] }: MadeShape): Bounds[] {
  return lettering.flatMap(({ letters, grow }) =>
    letters.flatMap(({ region }) => marksAbove(region).map((mark) => grown(boundsOf(mark)!, grow))),
  );
}

function linesOf({ band, lettering = [], region }: MadeShape): RingReading['lines'][number][] {
  const box = boundsOf(region);
  const [only, ...others] = lettering;
  if (!band || !box || !only || others.length > 0) return [];
  const xHeight = band.top - band.baseline;
  if (xHeight > smallLetters * only.xHeight) return [];
  const capital = /^\p{Lu}/u.test(only.letters[0]?.text ?? '') ? 1 : 0;
  return [{ ...box, baseline: band.baseline, xHeight, capital }];
}

function grown({ minX, minY, maxX, maxY }: Bounds, by: number): Bounds {
  return { minX: minX - by, minY: minY - by, maxX: maxX + by, maxY: maxY + by };
}

/** Of lettering that is scaled about the origin. */
export function scaledReading({ marks, lines }: RingReading, factor: number): RingReading {
  const scaled = <T extends object>(figures: T): T =>
    Object.fromEntries(Object.entries(figures).map(([key, value]) => [key, (value as number) * factor])) as T;
  return { marks: marks.map(scaled), lines: lines.map((line) => ({ ...scaled(line), capital: line.capital })) };
}

/** What it costs a ring to stand there. */
export function misreading(
  { marks, lines }: RingReading,
  { x, y }: Point,
  { hole, wall }: { hole: number; wall: number },
): number {
  const radius = hole + wall;
  const isBesideMark = marks.some(({ minX, minY, maxX, maxY }) => {
    const away = Math.hypot(Math.max(minX - x, 0, x - maxX), Math.max(minY - y, 0, y - maxY));
    return away < 2 * radius;
  });
  if (isBesideMark) return markCost;
  const costs = lines.map(({ minX, maxX, baseline, xHeight, capital }) => {
    const stands = y - hole - (baseline + xHeight);
    if (x > minX && x < maxX && Math.abs(stands) < onLine * xHeight) return markCost;
    if (y < baseline + radius) return markCost;
    const isBefore = capital > 0 && x < (minX + maxX) / 2;
    const isBeside = y > baseline && y < baseline + xHeight && !isBefore;
    const share = (2 * radius) / xHeight;
    return isBeside && share > smallestLetter && share < largestLetter ? letterCost : 0;
  });
  return Math.max(0, ...costs);
}
