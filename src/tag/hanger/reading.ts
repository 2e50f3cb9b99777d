/**
 * Finds where a ring would read as part of the lettering that it hangs: as a dot or an accent beside existing ones, as
 * an accent on a small letter, as a full stop at the foot of the line, or as an “o” in front of, within or behind it.
 * The costs and reaches are our own judgement.
 */

import { boundsOf, widened } from '../../geometry/measure.ts';
import type { Bounds, Point, Region } from '../../geometry/types.ts';
import { marksAbove } from '../marks-above.ts';
import type { MadeShape } from '../made-shape.ts';

/** A line of upright lettering, in mm. */
interface LetterLine {
  readonly box: Bounds;
  readonly baseline: number;
  /** Of capitals, if there is nothing else. */
  readonly xHeight: number;
  /** The x of the middle of its first and of its last letter. */
  readonly first: number;
  readonly last: number;
  /** Whether it begins with a capital and continues in small letters: a small “o” in front of that makes no word. */
  readonly hasInitial: boolean;
  /** How wide the ink of its first letter is at some heights of the band, from the baseline up. */
  readonly initial: readonly InkAt[];
  readonly hasSmallLetters: boolean;
}

interface InkAt {
  readonly y: number;
  /** Where it begins, as x; `Infinity` where there is none. */
  readonly left: number;
  readonly width: number;
}

export interface RingReading {
  /** Boxes of dots and accents. */
  readonly marks: readonly Bounds[];
  readonly lines: readonly LetterLine[];
}

/** What a ring is read as. `initial`: at most an “o” in front of a capital. `bowl`: together with the stem of the capital a “d”. */
export type ReadAs = 'mark' | 'accent' | 'full stop' | 'letter' | 'letter within' | 'bowl' | 'initial';

/** Costs, in shares of a fully joined ring. */
const costs: Readonly<Record<ReadAs, number>> = {
  mark: 0.4,
  accent: 0.4,
  'full stop': 0.4,
  letter: 0.3,
  'letter within': 0.6,
  bowl: 0.3,
  initial: 0.1,
};

/** A ring within this share of the x-height of its line stands on a small letter. */
const onLine = 0.25;

/** A ring about as large as a letter reads as one; limits in x-heights. */
const smallestLetter = 0.5;
const largestLetter = 1.6;

/** In front of a capital it only reads as a letter if it is this similar in size and height to one, in x-heights. */
const likeLetter = { least: 0.75, most: 1.3, offLine: 0.15 } as const;

/** Beside the middle of a ring the capital is no more than a stem, as T, I and Y are: in x-heights, of the ring's radius up and down, and in x-heights. */
const stem = { widest: 0.7, beside: 0.6, near: 0.1 } as const;

/** At how many heights of the band the ink of a capital is looked at. */
const inkLevels = 12;

/** The band of capitals is higher than their x-height by more than this factor. */
const smallLetters = 1.1;

export const noReading: RingReading = { marks: [], lines: [] };

export function readingOf(shapes: readonly MadeShape[]): RingReading {
  return { marks: shapes.flatMap(markBounds), lines: shapes.flatMap(letterLines) };
}

function markBounds({ lettering = [] }: MadeShape): Bounds[] {
  return lettering.flatMap(({ letters, grow }) =>
    letters.flatMap(({ region }) => marksAbove(region).map((mark) => widened(boundsOf(mark)!, grow))),
  );
}

function letterLines({ band, lettering = [], region }: MadeShape): LetterLine[] {
  const box = boundsOf(region);
  const [only, ...others] = lettering;
  const middles = only?.letters.map((letter) => middleX(boundsOf(letter.region)!)).sort((a, b) => a - b) ?? [];
  if (!band || !box || !only || middles.length === 0 || others.length > 0) return [];
  const xHeight = band.top - band.baseline;
  const hasSmallLetters = xHeight <= smallLetters * only.xHeight;
  const hasInitial = hasSmallLetters && /^\p{Lu}/u.test(only.letters[0]!.text);
  const initial = hasInitial ? inkOf(only.letters[0]!.region, band.baseline, xHeight) : [];
  return [
    {
      ...{ box, baseline: band.baseline, xHeight, hasInitial, initial, hasSmallLetters },
      ...{ first: middles[0]!, last: middles.at(-1)! },
    },
  ];
}

function inkOf(letter: Region, baseline: number, xHeight: number): InkAt[] {
  return Array.from({ length: inkLevels }, (_, level) => {
    const y = baseline + ((level + 0.5) / inkLevels) * xHeight;
    const crossed = letter.flatMap((ring) =>
      ring.flatMap((to, index) => {
        const from = ring.at(index - 1)!;
        return from.y > y === to.y > y ? [] : [from.x + ((y - from.y) / (to.y - from.y)) * (to.x - from.x)];
      }),
    );
    const left = Math.min(...crossed);
    return { y, left, width: crossed.length === 0 ? 0 : Math.max(...crossed) - left };
  });
}

function middleX({ minX, maxX }: Bounds): number {
  return (minX + maxX) / 2;
}

/** The reading of lettering that is scaled about the origin. */
export function scaledReading({ marks, lines }: RingReading, factor: number): RingReading {
  const scaled = ({ minX, minY, maxX, maxY }: Bounds): Bounds => {
    return { minX: factor * minX, minY: factor * minY, maxX: factor * maxX, maxY: factor * maxY };
  };
  return {
    marks: marks.map(scaled),
    lines: lines.map(({ box, baseline, xHeight, initial, first, last, ...line }) => ({
      ...{ ...line, box: scaled(box), baseline: factor * baseline, xHeight: factor * xHeight },
      initial: initial.map(({ y, left, width }) => ({ y: factor * y, left: factor * left, width: factor * width })),
      ...{ first: factor * first, last: factor * last },
    })),
  };
}

interface RingRadii {
  readonly hole: number;
  readonly wall: number;
}

/** The cost of a ring at that place. */
export function misreadingCost(reading: RingReading, centre: Point, ring: RingRadii): number {
  return Math.max(0, ...readAs(reading, centre, ring).map((each) => costs[each]));
}

/** Everything that a ring at that place may read as. */
export function readAs({ marks, lines }: RingReading, { x, y }: Point, { hole, wall }: RingRadii): ReadAs[] {
  const radius = hole + wall;
  const isBesideMark = marks.some(({ minX, minY, maxX, maxY }) => {
    const away = Math.hypot(Math.max(minX - x, 0, x - maxX), Math.max(minY - y, 0, y - maxY));
    return away < 2 * radius;
  });
  if (isBesideMark) return ['mark'];
  return lines.flatMap((line) => [
    ...onTheLine(line, { x, y }, { hole, wall }),
    ...asLetter(line, { x, y }, hole + wall),
  ]);
}

function onTheLine(
  { box, baseline, xHeight, hasSmallLetters }: LetterLine,
  { x, y }: Point,
  ring: RingRadii,
): ReadAs[] {
  const stands = y - ring.hole - (baseline + xHeight);
  if (hasSmallLetters && x > box.minX && x < box.maxX && Math.abs(stands) < onLine * xHeight) return ['accent'];
  return y < baseline + ring.hole + ring.wall ? ['full stop'] : [];
}

function asLetter(line: LetterLine, { x, y }: Point, radius: number): ReadAs[] {
  const { baseline, xHeight, first, last, hasInitial } = line;
  const share = (2 * radius) / xHeight;
  if (y < baseline || y > baseline + xHeight || share < smallestLetter || share > largestLetter) return [];
  if (x > first && x < last) return ['letter within'];
  if (x > first || !hasInitial) return ['letter'];
  if (isStemBeside(line, { x, y }, radius)) return ['bowl'];
  const isOnLine = Math.abs(y - radius - baseline) < likeLetter.offLine * xHeight;
  return [isOnLine && share > likeLetter.least && share < likeLetter.most ? 'letter' : 'initial'];
}

function isStemBeside({ initial, xHeight }: LetterLine, { x, y }: Point, radius: number): boolean {
  const beside = initial.filter((ink) => Math.abs(ink.y - y) < stem.beside * radius);
  const isStem = beside.every(({ width }) => width > 0 && width < stem.widest * xHeight);
  return isStem && beside.some(({ left }) => left - (x + radius) < stem.near * xHeight);
}
