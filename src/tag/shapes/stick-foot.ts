/** The foot of a stick under letters: a bar along their lower edge, so that the stick need not reach up among them. */

import { intersection, offset, union } from '../../geometry/clipper.ts';
import { area, boundsOf, boxRing, centroid, perimeter, ringArea } from '../../geometry/measure.ts';
import { partsOf } from '../../geometry/parts.ts';
import type { Bounds, Region, Ring } from '../../geometry/types.ts';
import { extentOf } from '../size.ts';

/** The foot reaches up into half the thickness of the strokes, so that counters stay as they are, but no more than this, in mm. */
const mostBiteMm = 0.8;

/** Clearance beside strokes that go down past the foot, in widths of the stick; our own judgement. */
const clearance = 0.3;

/** Levels that are tried: lettering on an arc has as many as letters. */
const mostLevels = 12;

/** Thickness of the foot below the letters and depth of its slopes, in widths of the stick; our own judgement. */
const thickness = 0.3;
const slope = 0.6;

/** Where a foot would be longer to one side of the stick, the stick is moved by such steps, up to so far, in its widths. */
const movingStep = 0.125;
const mostMoved = 1.5;

/** Costs in shares of the carried width that the stick may stand off the balance instead. Our own judgement. */
const lopsidedCost = 1.5;
const deficitCost = 2;
const coveringCost = 3;
const lengthCost = 0.5;
const thinAboveCost = 1;
const hollowCost = 1;

/** Radius of the fillets beside the strokes, and the least hole that is left there, in mm; our own judgement. */
const filletMm = 0.5;
const leastHoleMm = 1.5;

const toleranceMm = 0.005;

export interface Foot {
  /** The middle of the stick. */
  readonly x: number;
  /** The upper edge of the foot. */
  readonly top: number;
  readonly region: Region;
}

interface Span {
  readonly from: number;
  readonly to: number;
}

interface Standing extends Span {
  readonly x: number;
  readonly level: number;
  readonly cost: number;
}

/**
 * The foot under letters whose lower ends are at the heights `bottoms`: where the strokes that stand on it are `lap` wide
 * together, clear of descenders, and as near to the balance as that allows. `undefined` if there is nothing to stand on.
 */
export function footUnder(
  carried: Region,
  bottoms: readonly number[],
  { width, lap }: { readonly width: number; readonly lap: number },
): Foot | undefined {
  const box = boundsOf(carried);
  const balance = centroid(carried)?.x;
  if (!box || balance === undefined) return undefined;
  const bite = Math.min(area(carried) / perimeter(carried), mostBiteMm);
  const found = levelsOf([box.minY, ...bottoms], bite).flatMap((level) => {
    const strokesAt = (y: number): Span[] => spansOf(carried, { ...box, minY: y - toleranceMm, maxY: y });
    const strokes = strokesAt(level + bite);
    // The loop of a descender is as wide as a letter where the foot meets it, and thin above.
    const strokesAbove = strokesAt(level + bite + width / 2);
    const lettersAbove = spansOf(carried, { ...box, minY: level + bite, maxY: level + bite + width });
    // What goes down no further than the foot itself is taken into it.
    const under = level - Math.max(bite, thickness * width) / 2;
    const below = intersection(carried, [boxRing({ ...box, minY: box.minY - 1, maxY: under })]);
    const free = between(spansIn(below), box, clearance * width);
    return [...free, { from: box.minX, to: box.maxX }].flatMap((span) =>
      standingsOn(strokes, span, { balance, width, lap }).map(({ lack, oneSided, ...where }): Standing => {
        const column = boxRing({ minX: where.from, maxX: where.to, minY: box.minY - 1, maxY: level });
        const isCovering = below.length > 0 && area(intersection(below, [column])) > 0;
        const lengthMm = lengthCost * (where.to - where.from - width);
        const asideMm = Math.abs(where.x - balance) + oneSided + lopsidedCost * lopsided(where) + lengthMm;
        const thinness = Math.max(0, 1 - lengthOf(clipped(strokesAbove, where)) / lap);
        // Hung under the tips of descenders, it is a bar below the word.
        const hollow =
          lengthOf(between(lettersAbove, { ...box, minX: where.from, maxX: where.to }, 0)) / (where.to - where.from);
        const cost =
          asideMm / (box.maxX - box.minX) +
          deficitCost * lack +
          thinAboveCost * thinness +
          hollowCost * hollow +
          (isCovering ? coveringCost : 0);
        return { ...where, level, cost };
      }),
    );
  });
  const [best] = found.sort((a, b) => a.cost - b.cost);
  if (!best) return undefined;
  const top = best.level + bite;
  return {
    x: best.x,
    top,
    region: rounded(softened(footRing(best, top, width), (thickness * width) / 2), carried, best, top),
  };
}

/** Heights from below, those nearly alike (round letters overshoot the baseline) as the lowest of them. */
function levelsOf(bottoms: readonly number[], apart: number): number[] {
  const levels: number[] = [];
  for (const bottom of [...bottoms].sort((a, b) => a - b))
    if (levels.length === 0 || bottom - levels.at(-1)! > apart) levels.push(bottom);
  return levels.slice(0, mostLevels);
}

function spansOf(region: Region, box: Bounds): Span[] {
  return spansIn(intersection(region, [boxRing(box)]));
}

function spansIn(region: Region): Span[] {
  return partsOf(region).map((part) => {
    const { minX, maxX } = boundsOf(part)!;
    return { from: minX, to: maxX };
  });
}

/** What the spans and their clearance leave of the width. */
function between(taken: readonly Span[], { minX, maxX }: Bounds, clear: number): Span[] {
  const free: Span[] = [];
  let from = minX;
  for (const each of [...taken].sort((a, b) => a.from - b.from)) {
    if (each.from - clear > from) free.push({ from, to: each.from - clear });
    from = Math.max(from, each.to + clear);
  }
  if (from < maxX) free.push({ from, to: maxX });
  return free;
}

interface Footing extends Span {
  readonly x: number;
  readonly lack: number;
  readonly oneSided: number;
}

/** How much further the foot goes to one side of the stick than to the other, in mm. */
function lopsided({ from, to, x }: Span & { readonly x: number }): number {
  return Math.abs(from + to - 2 * x);
}

/**
 * Feet about the stick within the span: as near to the balance as there is room and, where that leaves the foot longer to one side, with
 * the stick moved to that side.
 */
function standingsOn(
  strokes: readonly Span[],
  span: Span,
  { balance, width, lap }: { readonly balance: number; readonly width: number; readonly lap: number },
): Footing[] {
  if (span.to - span.from < width) return [];
  const [least, most] = [span.from + width / 2, span.to - width / 2];
  const nearest = Math.min(Math.max(balance, least), most);
  const first = standingOn(strokes, span, { x: nearest, width, lap });
  if (!first || lopsided(first) < toleranceMm) return first ? [first] : [];
  const way = Math.sign(first.from + first.to - 2 * nearest);
  const moved = Array.from(
    { length: mostMoved / movingStep },
    (_, step) => nearest + way * (step + 1) * movingStep * width,
  );
  const others = moved.filter((x) => x >= least && x <= most).map((x) => standingOn(strokes, span, { x, width, lap }));
  return [first, ...others.filter((each) => each !== undefined)];
}

/**
 * The least foot about the stick within the span that has its width of strokes, the share of it that is lacking, and how
 * far from the stick the middle of the strokes is, in mm.
 */
function standingOn(
  strokes: readonly Span[],
  span: Span,
  { x, width, lap }: { readonly x: number; readonly width: number; readonly lap: number },
): Footing | undefined {
  const within = (half: number): Span => ({ from: Math.max(x - half, span.from), to: Math.min(x + half, span.to) });
  const stood = (half: number): number => lengthOf(clipped(strokes, within(half)));
  let [low, high] = [width / 2, span.to - span.from];
  if (stood(high) === 0) return undefined;
  if (stood(low) >= lap) high = low;
  while (high - low > toleranceMm) {
    const middle = (low + high) / 2;
    if (stood(middle) < lap) low = middle;
    else high = middle;
  }
  const { from, to } = within(high);
  // A stroke that it cuts into is taken wholly, unless it is more of a plate.
  const cut = strokes.filter((each) => each.from < to && each.to > from && each.to - each.from < 1.5 * width);
  const whole = {
    from: Math.max(Math.min(from, ...cut.map((each) => each.from)), span.from),
    to: Math.min(Math.max(to, ...cut.map((each) => each.to)), span.to),
  };
  // As far to either side, where there is room: a foot that leans to one side looks like a slip.
  const half = Math.max(x - whole.from, whole.to - x);
  const even = { from: Math.max(x - half, span.from), to: Math.min(x + half, span.to) };
  const stoodOn = clipped(strokes, whole);
  const middle = stoodOn.reduce((sum, each) => sum + (each.to ** 2 - each.from ** 2) / 2, 0) / lengthOf(stoodOn);
  return { ...even, x, lack: Math.max(0, 1 - stood(high) / lap), oneSided: Math.abs(middle - x) };
}

function clipped(strokes: readonly Span[], { from, to }: Span): Span[] {
  return strokes
    .map((each) => ({ from: Math.max(each.from, from), to: Math.min(each.to, to) }))
    .filter((each) => each.to > each.from);
}

function lengthOf(spans: readonly Span[]): number {
  return spans.reduce((sum, { from, to }) => sum + to - from, 0);
}

/** A bar that slopes down to the stick on both sides. */
function footRing({ from, to, x, level }: Standing, top: number, width: number): Ring {
  const under = level - thickness * width;
  const [left, right] = [x - width / 2, x + width / 2];
  const down = under - slope * Math.min(Math.max(left - from, to - right), width);
  return [
    { x: from, y: top },
    { x: from, y: under },
    { x: left, y: down },
    { x: right, y: down },
    { x: to, y: under },
    { x: to, y: top },
  ];
}

/** With round ends. */
const softened = (ring: Ring, radius: number): Region => offset(offset([ring], -radius), radius);

/** The foot with the notches and holes beside the strokes filled in that a beam would not come out of, or that crack. */
function rounded(foot: Region, carried: Region, { from, to }: Span, top: number): Region {
  const around = (by: number): Region => [boxRing({ minX: from - by, maxX: to + by, minY: top - by, maxY: top + by })];
  const nearby = intersection(carried, around(4 * filletMm));
  const closed = offset(offset(union([nearby, foot]), filletMm), -filletMm);
  const added = union([foot, intersection(closed, around(2 * filletMm))]);
  // What only just reaches a stroke would be a hair of material between a hole and the outside.
  const whole = offset(offset(union([nearby, added]), -filletMm), filletMm);
  const filleted = union([foot, intersection(added, whole)]);
  const holes = union([nearby, filleted]).filter((ring) => ringArea(ring) < 0 && extentOf(ring) < leastHoleMm);
  return union([filleted, ...holes.map((ring) => [ring.toReversed()])]);
}
