/**
 * Finds where a ring would read as part of the lettering that it hangs: as a dot or an accent beside existing ones, as
 * an accent on a small letter, as a full stop at the foot of the line, as an “o” in front of, within or behind it, as
 * a sign between two words, as a “d” or a “9” with the stem of its first letter, or as the bowl of a “6” below one. The
 * reaches are our own judgement, the order of the costs what OCR makes of rings at 7000 places (`npm run ring-places -- --read` shows those chosen).
 */

import { withoutAccents } from '../../core/names.ts';
import type { Bounds, Point } from '../../geometry/types.ts';
import type { MadeShape } from '../made-shape.ts';
import { coverableOf, coverCost, coveredOf, coversOf } from './cover.ts';
import type { Coverable, Cover } from './cover.ts';
import { madeOfLetter } from './crook.ts';
import { closesLetter } from './closed-letter.ts';
import type { ClosedLetter } from './closed-letter.ts';
import { isTurnedByNeck } from './turned-by-neck.ts';
import { onHeads } from './on-head.ts';
import type { OnHead } from './on-head.ts';
import { isLow, letterLines } from './letter-lines.ts';
import type { LetterLine, Span } from './letter-lines.ts';
import { awayFrom, isInPlaceOf, marksOf } from './marks.ts';
import type { Mark } from './marks.ts';
import { isUnderArm, leansOut, scaledEnd, withStem } from './stems.ts';
import type { StemLetter } from './stems.ts';

export interface RingReading {
  readonly marks: readonly Mark[];
  readonly lines: readonly LetterLine[];
  readonly coverable: Coverable;
}

/**
 * What a ring is read as. `d` and `9`: together with the stem of the first letter; `b` and `P`: of the last one.
 * `p`: with the stem of a small last one. `crook`, `R`: with a letter anywhere in the line. `on a mark`: the ring covers a dot or an accent, and stands in for it. `dot`: straight above the dot of an “i”. `ringed`: on the head of an “A” or a “U”. `dotted stem`: on the end of a bare stem, as the dot of an “i”. `heads`: on the heads of two letters, which it joins; capitals among themselves are read all the same. `loop`: hardly anything, halfway up the stem of a capital. `initial`: at most an “o” in front of a capital. `small`: as hardly more beneath the arm or the swash of a capital that is much higher, or at its foot. `leaning`: as a “d” beneath the first stroke of one, which leans over it.
 */
export type ReadAs =
  | 'on a mark'
  | 'dot'
  | 'mark'
  | 'accent'
  | OnHead
  | 'neck'
  | 'full stop'
  | 'tail'
  | 'letter'
  | 'letter behind'
  | 'small'
  | 'leaning'
  | 'p'
  | 'letter within'
  | 'between words'
  | 'crook'
  | 'R'
  | StemLetter
  | ClosedLetter
  | 'loop'
  | 'initial';

/** Costs, in shares of a fully joined ring. */
const costs: Readonly<Record<ReadAs, number>> = {
  'on a mark': 1.5,
  dot: 0.75,
  mark: 0.8,
  accent: 0.75,
  ringed: 0.75,
  heads: 0.6,
  neck: 0.75,
  'dotted stem': 0.3,
  'full stop': 0.4,
  tail: 0.8,
  letter: 0.4,
  'letter behind': 0.65,
  small: 0.3,
  leaning: 0.5,
  p: 0.4,
  'letter within': 0.7,
  'between words': 1,
  crook: 0.7,
  R: 0.6,
  d: 0.7,
  9: 0.6,
  b: 0.7,
  P: 0.6,
  digit: 0.7,
  hook: 0.1,
  roof: 0.5,
  'loop of a waw': 0.6,
  loop: 0.3,
  initial: 0.1,
};

/**
 * A ring within this share of the x-height of its line stands on a small letter; above one that does not reach up, it is
 * its accent up to a higher one.
 */
const onLine = 0.25;
const aboveLow = 0.6;

/** A ring whose middle is within this many of its radii of a dot or an accent covers part of it. */
const onMark = 1;

/** A ring about as large as a letter reads as one; limits in x-heights. */
const smallestLetter = 0.5;
/** Before capitals a smaller one is the bowl of a “d” with one that is a stem and no more, as wide as so much of its height. */
const smallestBowl = 0.28;
const onlyStem = 0.4;
const largestLetter = 1.6;

/** Behind one of these, which end in a stem, it is the bowl of a “p” even where its middle is above the x-height, by so many of its radii. */
const stemLast = /^[adhilmnqu]/u;
const bowlAbove = 0.5;

/** Letters whose first stroke leans away from a ring at its foot: beside that it is the bowl of a “d” (“dNilma”). */
const leaning = /^[VWYΥ]$/u;

/** Letters whose first stroke stands by itself beside a ring: a “d” as well (“dlera”). */
const open = /^[UV]$/u;

/**
 * A ring no wider than this share of the height of a first capital is read as no letter beneath its arm or at its foot. By OCR of 350 names in seven faces: of the readings
 * without a ring 0.76 are left with such a ring, 0.48 with wider ones. Not beside a first stroke that stands by itself, as of an N.
 */
const smallShare = 0.48;
const lone = /^[IJNUV]$/u;

/** In front of a capital it only reads as a letter if it is this similar in size and height to one, in x-heights. */
const likeLetter = { least: 0.75, most: 1.3, offLine: 0.15 } as const;

export const noReading: RingReading = { marks: [], lines: [], coverable: coverableOf([]) };

export function readingOf(shapes: readonly MadeShape[]): RingReading {
  return { marks: shapes.flatMap(marksOf), lines: letterLines(shapes), coverable: coverableOf(shapes) };
}

/** The reading of lettering that is scaled about the origin. */
export function scaledReading({ marks, lines, coverable }: RingReading, factor: number): RingReading {
  const scaled = ({ minX, minY, maxX, maxY }: Bounds): Bounds => {
    return { minX: factor * minX, minY: factor * minY, maxX: factor * maxX, maxY: factor * maxY };
  };
  const along = ({ from, to }: Span): Span => ({ from: factor * from, to: factor * to });
  return {
    marks: marks.map(({ isDot, ...box }) => ({ ...scaled(box), isDot })),
    lines: lines.map(({ box, baseline, xHeight, ends, first, last, gaps, low, ...line }) => ({
      ...{ ...line, box: scaled(box), baseline: factor * baseline, xHeight: factor * xHeight },
      ends: [scaledEnd(ends[0], factor), scaledEnd(ends[1], factor)],
      ...{ first: factor * first, last: factor * last, gaps: gaps.map(along), low: low.map(along) },
    })),
    coverable: { ...coverable, factor: factor * coverable.factor },
  };
}

/** Whether a place that is to be at the side lies over the letters instead: beyond the last one there. */
export function isPastEnd({ lines, coverable: { factor } }: RingReading, { x }: Point, direction: Point): boolean {
  if (direction.y !== 0 || lines.length === 0) return false;
  return direction.x < 0
    ? x > factor * Math.min(...lines.map(({ letters }) => letters[0]!.box.maxX))
    : x < factor * Math.max(...lines.map(({ letters }) => letters.at(-1)!.box.minX));
}

interface RingRadii {
  readonly hole: number;
  readonly wall: number;
}

/**
 * The cost of what a ring at that place reads as, and of what it covers. Where the ring may go to any side, what is in front of the letters stays as much
 * cheaper than what is among them as it is at one side.
 */
export function misreadingCost(reading: RingReading, centre: Point, ring: RingRadii, isAnySide = false): number {
  const all = readAs(reading, centre, ring);
  const asLetters = Math.max(0, ...all.map((each) => costs[each] + (isAnySide && !inFront.has(each) ? amongCost : 0)));
  if (all.includes('dot')) return asLetters;
  const covered = coverCost(coversAt(reading, centre, ring));
  return asLetters + covered + (isAnySide && covered > amongCost && asLetters === 0 ? amongCost : 0);
}

const inFront: ReadonlySet<ReadAs> = new Set(['letter', 'small', 'initial', 'loop', 'hook', 'full stop', 'leaning']);
const amongCost = 0.1;

/** What a ring at that place may read as, and the letter that it makes another one of. */
export function seenAs(
  reading: RingReading,
  centre: Point,
  ring: RingRadii,
  neckOn?: string,
): { readonly readAs: readonly ReadAs[]; readonly covers: string | undefined } {
  const isTurned = neckOn !== undefined && isTurnedByNeck(neckOn);
  const all: readonly ReadAs[] = [...readAs(reading, centre, ring), ...(isTurned ? (['neck'] as const) : [])];
  return { readAs: all, covers: all.includes('dot') ? undefined : coveredOf(coversAt(reading, centre, ring)) };
}

function coversAt({ coverable }: RingReading, centre: Point, { hole, wall }: RingRadii): Cover[] {
  return coversOf(coverable, centre, hole + wall);
}

/** Everything that a ring at that place may read as. */
export function readAs(
  { marks, lines, coverable: { factor } }: RingReading,
  { x, y }: Point,
  { hole, wall }: RingRadii,
): ReadAs[] {
  const radius = hole + wall;
  const away = marks.map((mark) => awayFrom(mark, { x, y }));
  const nearest = Math.min(...away);
  if (nearest < onMark * radius) return [isInPlaceOf(marks[away.indexOf(nearest)]!, { x, y }) ? 'dot' : 'on a mark'];
  const scaled = { x: x / factor, y: y / factor };
  const ofLetters = lines.flatMap(({ letters }) => madeOfLetter(letters, scaled, radius / factor));
  if (nearest < 2 * radius) return ['mark', ...ofLetters];
  const beside = lines.flatMap((line) => [
    ...(isWithin(line.gaps, x) ? (['between words'] as const) : []),
    ...onTheLine(line, { x, y }, { hole, wall }),
    ...onHeads(line.letters, scaled, radius / factor, hole / factor, (top) => isLow(line, factor * top)).filter(
      (each) => each !== 'heads' || line.hasSmallLetters,
    ),
    ...withEnds(asLetter(line, { x, y }, radius), closesLetter(line, { x, y }, radius, factor)),
  ]);
  return [...beside, ...ofLetters];
}

/** The hook of a J with whose stem a ring is a “d” is none besides. */
function withEnds(letters: readonly ReadAs[], closed: readonly ClosedLetter[]): ReadAs[] {
  return [...letters, ...closed.filter((each) => each !== 'hook' || !letters.some((letter) => /^[d9]$/u.test(letter)))];
}

function isWithin(spans: readonly Span[], x: number): boolean {
  return spans.some(({ from, to }) => x > from && x < to);
}

function onTheLine(
  { box, baseline, xHeight, hasSmallLetters, isOverLine, low }: LetterLine,
  { x, y }: Point,
  ring: RingRadii,
): ReadAs[] {
  const stands = (y - ring.hole - (baseline + xHeight)) / xHeight;
  if (hasSmallLetters && x > box.minX && x < box.maxX && Math.abs(stands) < onLine) return ['accent'];
  if (stands > 0 && stands < aboveLow && isWithin(low, x)) return ['accent'];
  const radius = ring.hole + ring.wall;
  return y < baseline + radius && (!isOverLine || y > baseline - radius) ? ['full stop'] : [];
}

function isOnlyStem({ minX, minY, maxX, maxY }: Bounds): boolean {
  return maxX - minX < onlyStem * (maxY - minY);
}

function asLetter(line: LetterLine, { x, y }: Point, radius: number): ReadAs[] {
  const { box, baseline, xHeight, letters, first, last, hasInitial, ends, isOverLine } = line;
  const share = (2 * radius) / xHeight;
  const isInBand = y >= baseline && y <= baseline + xHeight;
  // However small, a ring among the letters is one of them.
  if (isInBand && share < largestLetter && x > first && x < last) return ['letter within'];
  const isBefore = x < first;
  const isBowl =
    isBefore && share < smallestLetter && share > smallestBowl && !line.hasSmallLetters && isOnlyStem(letters[0]!.box);
  if ((share < smallestLetter && !isBowl) || share > largestLetter) return [];
  if (!isBowl && y < baseline && x > box.minX && x < box.maxX && (!isOverLine || y > baseline - 2 * radius))
    return ['tail'];
  const end = ends[isBefore ? 0 : 1];
  const stemmed = isBefore || x > last ? withStem(line, end, { x, y }, radius) : undefined;
  if (stemmed && stemmed !== 'loop') return [stemmed];
  if (isBowl) return [];
  const isAtStem = x > last && stemLast.test(withoutAccents(letters.at(-1)!.text));
  const above = y - (baseline + xHeight);
  if (isAtStem && above > 0 && above < bowlAbove * radius) return ['p'];
  if (!isInBand) return [];
  if (!isBefore) return ['letter behind'];
  if (!hasInitial) return ['letter'];
  const capital = withoutAccents(letters[0]!.text);
  // An accent makes no capital higher.
  const isSmall = capital === letters[0]!.text && 2 * radius < smallShare * (end.ink.at(-1)!.y - baseline);
  const seen = isSmall && !lone.test(capital) ? 'small' : 'letter';
  const isLeaning = leaning.test(capital) && leansOut(end, xHeight);
  if (isUnderArm(end, { x, y })) return [isLeaning ? 'leaning' : seen];
  if (stemmed) return [stemmed];
  if (isLeaning || open.test(capital)) return ['d'];
  const isOnLine = Math.abs(y - radius - baseline) < likeLetter.offLine * xHeight;
  return [isOnLine && share > likeLetter.least && share < likeLetter.most ? seen : 'initial'];
}
