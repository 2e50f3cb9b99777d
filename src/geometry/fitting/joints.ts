/**
 * Finds where a polygon that stands for a curve has corners, and where straight lines begin and end. A flattened curve
 * turns a little at each point and bulges a little from each edge, by similar amounts from one point to the next; a
 * joint is where that pattern breaks.
 */

import { distance } from '../measure.ts';
import type { Point, Ring } from '../types.ts';

/**
 * An edge whose curve would bulge further from it than this, in mm, is a straight line, not part of a curve: curves are
 * flattened to 0.002 mm, and offsets round corners to 0.0045 mm at worst.
 */
const mostBulgeMm = 0.006;

/** A point that turns less than this, in radians, is never a corner. */
const leastCorner = radians(8);

/** Nor is a point that turns at most this many times what the curvature beside it explains. */
const cornerFactor = 3;

/** A point that turns further than this, in radians, is always a corner: no round corner is flattened so coarsely. */
const mostSmooth = radians(75);

/** A join is smooth if the directions on its two sides differ by less than this, in radians. */
const smoothWithin = radians(5);

/** A stretch of outline between two joints: its points, and the unit direction of travel at each. */
export interface SmoothRun {
  readonly points: readonly Point[];
  readonly tangents: readonly Point[];
}

interface MeasuredOutline {
  readonly points: Ring;
  /** Length and direction of the edge from point i. */
  readonly lengths: readonly number[];
  readonly directions: readonly Point[];
  /** Signed turn at point i, in radians. */
  readonly turns: readonly number[];
}

/** The ring cut at its joints. A ring without joints becomes one run that ends where it begins. */
export function smoothRuns(ring: Ring): SmoothRun[] {
  const outline = measuredOutline(ring);
  const count = ring.length;
  const straight = ring.map((_, i) => isStraight(outline, i));
  const joints = [...ring.keys()].filter(
    (i) => straight[previousIndex(i, count)] || straight[i] || isCorner(outline, straight, i),
  );
  if (joints.length === 0) {
    const first = rightmostIndex(ring);
    const order = [...ring.map((_, i) => (first + i) % count), first];
    const points = order.map((i) => ring[i]!);
    const tangents = order.map((i) => tangentAt(ring.slice(-reach).concat(ring, ring.slice(0, reach)), i + reach));
    return [{ points, tangents }];
  }
  const runs = joints.map((from, k): SmoothRun & { readonly straight: boolean } => {
    const to = joints[(k + 1) % joints.length]!;
    const steps = (to - from + count) % count || count;
    const order = Array.from({ length: steps + 1 }, (_, i) => (from + i) % count);
    const points = order.map((i) => ring[i]!);
    return { points, tangents: points.map((_, i) => tangentAt(points, i)), straight: steps === 1 };
  });
  return runs.map((run, k) => smoothed(run, runs[(k - 1 + runs.length) % runs.length]!, runs[(k + 1) % runs.length]!));
}

function measuredOutline(points: Ring): MeasuredOutline {
  const next = (i: number) => points[(i + 1) % points.length]!;
  const lengths = points.map((point, i) => Math.hypot(next(i).x - point.x, next(i).y - point.y));
  const directions = points.map(({ x, y }, i) => ({
    x: (next(i).x - x) / lengths[i]!,
    y: (next(i).y - y) / lengths[i]!,
  }));
  const turns = points.map((_, i) => angleBetween(directions[previousIndex(i, points.length)]!, directions[i]!));
  return { points, lengths, directions, turns };
}

/** Whether an edge is a straight line, judged by the lesser turn at its ends: the greater one may be a corner. */
function isStraight({ lengths, turns }: MeasuredOutline, edge: number): boolean {
  const [a, b] = [turns[edge]!, turns[(edge + 1) % turns.length]!];
  const turn = Math.min(Math.abs(a), Math.abs(b));
  // An arc that turns by φ from end to end of a chord of length L rises L/2 · tan(φ/4) above it; a double bend half of that.
  const bulge = (lengths[edge]! / 2) * Math.tan(turn / 4);
  return (a > 0 === b > 0 ? bulge : bulge / 2) > mostBulgeMm;
}

function isCorner({ lengths, turns }: MeasuredOutline, straight: readonly boolean[], i: number): boolean {
  const count = turns.length;
  const turn = Math.abs(turns[i]!);
  if (turn < leastCorner) return false;
  if (turn > mostSmooth) return true;
  const curvature = (point: number, inner: number, outer: number): number => {
    if (turns[point]! > 0 !== turns[i]! > 0) return 0;
    const bend = Math.abs(turns[point]!);
    // Beside a straight line the turn is measured from tangent to chord: half a step of the curve.
    return straight[outer] ? (2 * bend) / lengths[inner]! : (2 * bend) / (lengths[inner]! + lengths[outer]!);
  };
  const [back, next] = [previousIndex(i, count), (i + 1) % count];
  const least = Math.min(curvature(back, back, previousIndex(back, count)), curvature(next, i, next));
  return turn > (cornerFactor * least * (lengths[back]! + lengths[i]!)) / 2;
}

/** Number of points on either side that determine the direction at a point. */
const reach = 2;

/**
 * The direction at a point of a smooth stretch: the tangent of the Lagrange polynomial through it and its neighbours,
 * over the distances along the polygon. Its error falls with the fourth power of their spacing; that of a circle
 * through three points only falls with the second, and would bend every fitted curve the same way.
 */
function tangentAt(points: readonly Point[], i: number): Point {
  const first = Math.max(0, Math.min(i - reach, points.length - 1 - reach - 1));
  const near = points.slice(first, Math.max(i + reach, first + reach + 1) + 1);
  const at = i - first;
  const along = [0];
  for (let k = 1; k < near.length; k++) along.push(along[k - 1]! + distance(near[k - 1]!, near[k]!));
  let [x, y] = [0, 0];
  near.forEach((point, j) => {
    if (j === at) return;
    let weight = 1 / (along[j]! - along[at]!);
    for (let k = 0; k < near.length; k++) {
      if (k !== j && k !== at) weight *= (along[at]! - along[k]!) / (along[j]! - along[k]!);
    }
    x += weight * (point.x - near[at]!.x);
    y += weight * (point.y - near[at]!.y);
  });
  return unit({ x, y });
}

/**
 * The run with the directions at its ends averaged with its neighbours' if they nearly agree; a straight neighbour's
 * direction is taken unchanged.
 */
function smoothed(
  run: SmoothRun & { readonly straight: boolean },
  last: SmoothRun & { readonly straight: boolean },
  next: SmoothRun & { readonly straight: boolean },
): SmoothRun {
  if (run.straight) return run;
  const joined = (own: Point, other: Point, isLine: boolean): Point => {
    if (Math.abs(angleBetween(own, other)) > smoothWithin) return own;
    return isLine ? other : unit({ x: own.x + other.x, y: own.y + other.y });
  };
  return {
    points: run.points,
    tangents: [
      joined(run.tangents[0]!, last.tangents.at(-1)!, last.straight),
      ...run.tangents.slice(1, -1),
      joined(run.tangents.at(-1)!, next.tangents[0]!, next.straight),
    ],
  };
}

function rightmostIndex(ring: Ring): number {
  return ring.reduce((best, point, i) => (point.x > ring[best]!.x ? i : best), 0);
}

export function angleBetween(a: Point, b: Point): number {
  return Math.atan2(a.x * b.y - a.y * b.x, a.x * b.x + a.y * b.y);
}

function unit({ x, y }: Point): Point {
  const length = Math.hypot(x, y) || 1;
  return { x: x / length, y: y / length };
}

function previousIndex(i: number, count: number): number {
  return (i - 1 + count) % count;
}

function radians(degrees: number): number {
  return (degrees * Math.PI) / 180;
}
