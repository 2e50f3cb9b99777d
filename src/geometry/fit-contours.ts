/**
 * Polygons turned back into the lines, arcs and curves they stand for, so that a machine runs smoothly along few nodes
 * instead of stuttering from point to point.
 *
 * A ring is cut at its joints: corners, and the ends of straight lines (`fitting/joints.ts`). Each stretch between them
 * is covered greedily, from its beginning, by the arc or cubic that reaches furthest within tolerance; where two meet
 * inside a stretch, they share their direction. The result is nowhere further than 0.01 mm from the polygon, nor the
 * polygon from the result.
 */

import { distance } from './measure.ts';
import type { Contour, Segment } from './contour.ts';
import { fitArc, fitCircle } from './fitting/arcs.ts';
import { fitCubic } from './fitting/cubics.ts';
import { smoothRuns } from './fitting/joints.ts';
import type { SmoothRun } from './fitting/joints.ts';
import { simplified } from './simplify.ts';
import type { Point, Region, Ring } from './types.ts';

/** Points that deviate from the outline by less than this, in mm, only obscure its direction. */
const idlePointMm = 0.0003;

/** Points nearer to each other than this, in mm, are one: no file needs so short a line, and its direction is noise. */
const samePointMm = 0.002;

/** One closed contour per ring, in the same order and direction; rings too small to enclose anything are left out. */
export function fitContours(region: Region): Contour[] {
  return region.flatMap((ring) => fitRing(ring) ?? []);
}

function fitRing(original: Ring): Contour | undefined {
  const ring = cleaned(original);
  if (ring.length < 3) return undefined;
  const runs = smoothRuns(ring);
  const [first] = runs;
  const circle = runs.length === 1 ? fitCircle(first!.points.slice(0, -1)) : undefined;
  if (circle) return { ...circle, closed: true };
  return { start: first!.points[0]!, segments: runs.flatMap(fittedSegments), closed: true };
}

function cleaned(original: Ring): Ring {
  const kept: Point[] = [];
  for (const point of original) {
    if (kept.length === 0 || distance(point, kept.at(-1)!) > samePointMm) kept.push(point);
  }
  while (kept.length > 1 && distance(kept[0]!, kept.at(-1)!) <= samePointMm) kept.pop();
  const [ring = []] = simplified([kept], idlePointMm);
  // The simplification always keeps the first point, even one on a straight line.
  const [first, second] = ring;
  return ring.length > 3 && offLine(first!, ring.at(-1)!, second!) < idlePointMm ? ring.slice(1) : ring;
}

function offLine(point: Point, from: Point, to: Point): number {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  return Math.abs((point.x - from.x) * dy - (point.y - from.y) * dx) / (Math.hypot(dx, dy) || 1);
}

function fittedSegments(run: SmoothRun): Segment[] {
  const end = run.points.length - 1;
  const segments: Segment[] = [];
  for (let at = 0; at < end;) {
    const best = furthestFit(run, at);
    segments.push(...best.segments);
    at = best.to;
  }
  return segments;
}

interface FittedReach {
  readonly to: number;
  readonly segments: readonly Segment[];
}

function furthestFit(run: SmoothRun, from: number): FittedReach {
  const end = run.points.length - 1;
  const line: FittedReach = { to: from + 1, segments: [{ type: 'line', to: run.points[from + 1]! }] };
  if (end === 1) return line;
  // A circle passes through any three points, so only a whole stretch may be an arc of three points.
  const arc = reach(from, end, from === 0 ? Math.min(2, end) : 3, (to) => fitArc(run, from, to));
  if (arc?.to === end) return arc;
  const cubic = reach(from, end, 1, (to) => {
    const fitted = fitCubic(run, from, to);
    return fitted && [fitted];
  });
  return [arc, cubic].reduce<FittedReach>((best, each) => (each && each.to >= best.to ? each : best), line);
}

/** The furthest point at which `fit` succeeds: the stretch is doubled until it fails, then searched by halving. */
function reach(
  from: number,
  end: number,
  least: number,
  fit: (to: number) => Segment[] | undefined,
): FittedReach | undefined {
  let best: FittedReach | undefined;
  const attempt = (to: number): boolean => {
    const segments = fit(to);
    if (segments) best = { to, segments };
    return segments !== undefined;
  };
  if (from + least > end) return undefined;
  if (attempt(end)) return best;
  let size = least;
  if (!attempt(from + size)) return undefined;
  let fails = end;
  while (from + 2 * size < end) {
    size *= 2;
    if (attempt(from + size)) continue;
    fails = from + size;
    break;
  }
  while (fails - best!.to > 1) {
    const middle = (best!.to + fails) >> 1;
    if (!attempt(middle)) fails = middle;
  }
  return best;
}
