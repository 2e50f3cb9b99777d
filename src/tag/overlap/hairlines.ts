/** Hairlines of letters, thickened until they hold, while all other strokes stay as they are. */

import { difference, normalise, offset } from '../../geometry/clipper.ts';
import { area, boundsOf, ringArea, widened } from '../../geometry/measure.ts';
import { movedOff } from '../../geometry/move-off.ts';
import { simplifiedLine } from '../../geometry/simplify.ts';
import { smoothedLine } from '../../geometry/smooth.ts';
import { strokesAlong } from '../../geometry/strokes.ts';
import { thinSpines } from '../../geometry/thin-spines.ts';
import type { Line, Region, Ring } from '../../geometry/types.ts';
import type { Measures } from './measures.ts';

/** Hairlines are thickened to this share of the x-height at most: the stems of a usual text face, or hardly more. Our own judgement. */
const stemShare = 0.17;

/** Share of its area that each counter keeps, where that can be. Our own judgement. */
const openShare = 0.4;

/** A counter through which no disc of this share of the width goes is an eyelet. Our own judgement. */
const eyeletShare = 0.4;

/** What is tried beside a counter until it stays open: strokes along the hairline, the same moved off the counter, and narrower ones, by a factor of the width. */
const attempts = [
  { factor: 1, isOff: false },
  { factor: 1, isOff: true },
  { factor: 0.8, isOff: false },
  { factor: 0.6, isOff: false },
];

/** Strokes that are moved off a counter reach into it by the rest of half their width. Our own judgement: so its outside hardly bulges. */
const offShare = 0.8;

/** Excess over the least width, in mm, so that what is measured later is not a hair below it. */
const spareMm = 0.01;

/** Distance between a line and its simplified form, in mm. */
const toleranceMm = 0.005;

/** A letter has hairlines if something in it is thinner than this share of the web; what lacks less may as well grow. Our own judgement. */
const fineShare = 0.5;

/** Whether a letter has hairlines before it grows. */
export function hasHairlines(letter: Region, web: number): boolean {
  return thinSpines(letter, fineShare * web).length > 0;
}

/** Width to which hairlines are thickened, growth included, in mm. What letters bear bounds it before they are grown. */
export function hairlineWidth({ web, xHeight, grow }: Pick<Measures, 'web' | 'xHeight' | 'grow'>): number {
  return Math.min(web + spareMm, stemShare * xHeight + 2 * grow);
}

/** Strokes along hairlines, `width` mm wide. */
export interface Hairlines {
  readonly lines: readonly Line[];
  readonly width: number;
}

/**
 * Strokes along all that is thinner than `width`; beside one of the counters, as the font draws them, that they would close they are
 * moved off it, narrower, or left out.
 */
export function hairlinesOf(region: Region, width: number, counters: Region = countersOf(region)): Hairlines[] {
  const found: Hairlines[] = [];
  const seen = counters.filter((counter) => isSeen(counter, width));
  let lines = thinSpines(region, width).map((line) => simplifiedLine(smoothedLine(line), toleranceMm));
  let closed: Region = [];
  for (const { factor, isOff } of attempts) {
    if (lines.length === 0) break;
    const narrower = factor * width;
    const moved = isOff ? lines.map((line) => movedOff(line, closed, (offShare * narrower) / 2)) : lines;
    const strokes = strokesAlong(moved, narrower);
    closed = seen.filter((counter) => !staysOpen(counter, [region, strokes]));
    const isClear = moved.map((line) => !closed.some((counter) => isBeside(line, counter, narrower)));
    found.push({ lines: moved.filter((_, index) => isClear[index]), width: narrower });
    lines = lines.filter((_, index) => !isClear[index]);
  }
  return found.filter((each) => each.lines.length > 0);
}

export function countersOf(letter: Region): Region {
  return letter.filter((ring) => ringArea(ring) < 0);
}

/** The eyelet of a flourish is none: it may close. */
function isSeen(counter: Ring, width: number): boolean {
  return offset([[...counter].reverse()], (-eyeletShare * width) / 2).length > 0;
}

function staysOpen(counter: Ring, filled: readonly Region[]): boolean {
  const open = difference(normalise([[...counter].reverse()]), filled);
  return area(open) >= openShare * -ringArea(counter);
}

function isBeside(line: Line, counter: Ring, width: number): boolean {
  const { minX, minY, maxX, maxY } = widened(boundsOf([counter])!, width / 2);
  return line.some(({ x, y }) => x > minX && x < maxX && y > minY && y < maxY);
}

/** The area of the strokes, each narrower by `less` mm. */
export function hairlineStrokes(hairlines: readonly Hairlines[], less = 0): Region {
  return hairlines.flatMap(({ lines, width }) => (width > less ? [...strokesAlong(lines, width - less)] : []));
}
