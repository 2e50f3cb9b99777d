/**
 * A cubic Bézier through the points of a flattened outline: P. J. Schneider, "An algorithm for automatically fitting
 * digitized curves", Graphics Gems (1990). The directions at both ends are given; the lengths of the handles follow by
 * least squares, the parameters of the points from their distances along the polygon, improved by Newton's method.
 *
 * Once the curve is near enough, only distances across it count: those along it are due to the parameters, and would
 * make it bulge to one side (tangent distance minimization; W. Wang, H. Pottmann, Y. Liu, "Fitting B-spline curves to
 * point clouds by curvature-based squared distance minimization", ACM Transactions on Graphics 25, 2006).
 */

import { distance } from '../measure.ts';
import type { Segment } from '../contour.ts';
import { pointOn } from '../contour.ts';
import type { Point } from '../types.ts';
import type { SmoothRun } from './joints.ts';

type Cubic = Extract<Segment, { type: 'cubic' }>;

/** Largest distance between a point and the curve, in mm. */
const pointToCurveMm = 0.0035;

/**
 * Largest distance between curve and edges, in mm; edges of a flattened curve are up to 0.0045 mm off it themselves.
 */
const curveToEdgeMm = 0.007;

/** Rounds of improving the parameters; most of the gain comes in the first few. */
const rounds = 8;

/** The fit is abandoned if the error exceeds this many times the tolerance. */
const hopelessFactor = 15;

/** The fit is also abandoned if a round leaves more than this share of the error: it converges too slowly. */
const leastGain = 0.95;

export function fitCubic(run: SmoothRun, from: number, to: number): Cubic | undefined {
  const points = run.points.slice(from, to + 1);
  const [start, end] = [run.tangents[from]!, run.tangents[to]!];
  const parameters = alongPolygon(points);
  let before = Infinity;
  let best: Cubic | undefined;
  for (let round = 0; round < rounds; round++) {
    const cubic = handles(points, parameters, start, end, best);
    if (!cubic) break;
    const most = best ? pointToCurveMm : Math.min(hopelessFactor * pointToCurveMm, leastGain * before);
    let error = 0;
    for (let i = 1; i < points.length - 1 && error <= most; i++) {
      parameters[i] = newtonStep(points[0]!, cubic, points[i]!, parameters[i]!);
      error = Math.max(error, distance(points[i]!, pointOn(points[0]!, cubic, parameters[i]!)));
    }
    if (error > most) break;
    const fits = error <= pointToCurveMm && staysClose(points, parameters, cubic);
    if (best && !fits) break;
    if (fits) best = cubic;
    before = error;
  }
  return best;
}

function alongPolygon(points: readonly Point[]): number[] {
  const along = [0];
  for (let i = 1; i < points.length; i++) along.push(along[i - 1]! + distance(points[i - 1]!, points[i]!));
  const total = along.at(-1)!;
  return along.map((length) => length / total);
}

/** The lengths of both handles by least squares; `undefined` if one would point backwards. */
function handles(
  points: readonly Point[],
  parameters: readonly number[],
  start: Point,
  end: Point,
  before: Cubic | undefined,
): Cubic | undefined {
  const [first, last] = [points[0]!, points.at(-1)!];
  const chord = distance(first, last);
  // With two points there is nothing to fit: use Hermite's choice.
  if (points.length === 2) return withHandles(first, last, start, end, chord / 3, chord / 3);
  let [aa, ab, bb, ax, bx] = [0, 0, 0, 0, 0];
  for (let i = 1; i < points.length - 1; i++) {
    const point = points[i]!;
    const t = parameters[i]!;
    const s = 1 - t;
    const [b0, b1, b2, b3] = [s * s * s, 3 * s * s * t, 3 * s * t * t, t * t * t];
    const dx = point.x - (b0 + b1) * first.x - (b2 + b3) * last.x;
    const dy = point.y - (b0 + b1) * first.y - (b2 + b3) * last.y;
    if (before) {
      const ny = firstDerivative(first.x, before.c1.x, before.c2.x, last.x, s, t);
      const nx = -firstDerivative(first.y, before.c1.y, before.c2.y, last.y, s, t);
      const size = Math.hypot(nx, ny) || 1;
      const a = (b1 * (nx * start.x + ny * start.y)) / size;
      const b = (-b2 * (nx * end.x + ny * end.y)) / size;
      const off = (nx * dx + ny * dy) / size;
      aa += a * a;
      ab += a * b;
      bb += b * b;
      ax += a * off;
      bx += b * off;
    } else {
      aa += b1 * b1;
      bb += b2 * b2;
      ab -= b1 * b2 * (start.x * end.x + start.y * end.y);
      ax += b1 * (dx * start.x + dy * start.y);
      bx -= b2 * (dx * end.x + dy * end.y);
    }
  }
  const determinant = aa * bb - ab * ab;
  const a = determinant > 1e-12 ? (ax * bb - bx * ab) / determinant : chord / 3;
  const b = determinant > 1e-12 ? (aa * bx - ab * ax) / determinant : chord / 3;
  const least = 1e-3 * chord;
  return a > least && b > least ? withHandles(first, last, start, end, a, b) : undefined;
}

function withHandles(first: Point, last: Point, start: Point, end: Point, a: number, b: number): Cubic {
  return {
    type: 'cubic',
    c1: { x: first.x + a * start.x, y: first.y + a * start.y },
    c2: { x: last.x - b * end.x, y: last.y - b * end.y },
    to: last,
  };
}

/** One step of Newton's method towards the parameter whose point is nearest to `point`. */
function newtonStep(from: Point, cubic: Cubic, point: Point, t: number): number {
  const { c1, c2, to } = cubic;
  const s = 1 - t;
  const at = pointOn(from, cubic, t);
  const [dx, dy] = [at.x - point.x, at.y - point.y];
  const vx = firstDerivative(from.x, c1.x, c2.x, to.x, s, t);
  const vy = firstDerivative(from.y, c1.y, c2.y, to.y, s, t);
  const bend =
    dx * secondDerivative(from.x, c1.x, c2.x, to.x, s, t) + dy * secondDerivative(from.y, c1.y, c2.y, to.y, s, t);
  const steepness = vx * vx + vy * vy + bend;
  if (steepness <= 0) return t;
  return Math.min(1, Math.max(0, t - (dx * vx + dy * vy) / steepness));
}

function firstDerivative(p0: number, p1: number, p2: number, p3: number, s: number, t: number): number {
  return 3 * (s * s * (p1 - p0) + 2 * s * t * (p2 - p1) + t * t * (p3 - p2));
}

function secondDerivative(p0: number, p1: number, p2: number, p3: number, s: number, t: number): number {
  return 6 * (s * (p2 - 2 * p1 + p0) + t * (p3 - 2 * p2 + p1));
}

/** Whether the curve stays near the polygon between its points too, and passes them in order. */
function staysClose(points: readonly Point[], parameters: readonly number[], cubic: Cubic): boolean {
  for (let i = 1; i < points.length; i++) {
    const [u, v] = [parameters[i - 1]!, parameters[i]!];
    if (v < u) return false;
    for (const share of [0.25, 0.5, 0.75]) {
      const at = pointOn(points[0]!, cubic, u + share * (v - u));
      if (toEdge(at, points[i - 1]!, points[i]!) > curveToEdgeMm) return false;
    }
  }
  return true;
}

function toEdge(point: Point, a: Point, b: Point): number {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const t = ((point.x - a.x) * dx + (point.y - a.y) * dy) / (dx * dx + dy * dy || 1);
  const within = Math.min(1, Math.max(0, t));
  return distance({ x: a.x + within * dx, y: a.y + within * dy }, point);
}
