/**
 * Curves as circular arcs, for file formats that have no other curves. Each cubic is replaced by pairs of arcs that
 * share a tangent with it at both ends and with each other where they meet (biarcs; K. M. Bolton, "Biarc curves",
 * Computer-Aided Design 7, 1975), and is halved until they lie on it.
 */

import { distance } from './measure.ts';
import { directionsOf, pointOn, splitSegment, startsOf } from './contour.ts';
import type { Contour, Segment } from './contour.ts';
import type { Point } from './types.ts';

/** Largest distance between an arc and its curve, in mm. */
const toleranceMm = 0.002;

/** Most times one cubic is halved, which leaves pieces of a thousandth of it. */
const deepest = 10;

/** Arcs that turn less than this, in radians, become lines. */
const leastSweep = 1e-5;

/** Parameters along each cubic at which the distance is measured. */
const samples = [0.125, 0.25, 0.375, 0.5, 0.625, 0.75, 0.875];

export function withArcsOnly(contour: Contour): Contour {
  const starts = startsOf(contour);
  const segments = contour.segments.flatMap((segment, i) =>
    segment.type === 'cubic' ? arcsOf(starts[i]!, segment, 0) : [segment],
  );
  return { ...contour, segments };
}

type Cubic = Extract<Segment, { type: 'cubic' }>;

function arcsOf(from: Point, cubic: Cubic, depth: number): Segment[] {
  const pair = biarc(from, cubic);
  if (pair && (depth === deepest || liesOn(pair, from, cubic))) return pair;
  if (depth === deepest) return [{ type: 'line', to: cubic.to }];
  const [first, second] = splitSegment(from, cubic, 0.5) as [Cubic, Cubic];
  return [...arcsOf(from, first, depth + 1), ...arcsOf(first.to, second, depth + 1)];
}

/**
 * With both arcs' tangents of equal length d, the joint lies halfway between the tips of the tangents, and 2d²(1 −
 * t₀·t₁) + 2d·v·(t₀ + t₁) − v·v = 0, where v runs from end to end.
 */
function biarc(from: Point, cubic: Cubic): Segment[] | undefined {
  const [t0, t1] = directionsOf(from, cubic);
  const { to } = cubic;
  const v = { x: to.x - from.x, y: to.y - from.y };
  const a = 2 * (1 - dot(t0, t1));
  const b = 2 * dot(v, { x: t0.x + t1.x, y: t0.y + t1.y });
  const c = -dot(v, v);
  // The form of the solution that does not cancel when the tangents are nearly parallel.
  const root = b * b - 4 * a * c;
  const d = root >= 0 ? (-2 * c) / (b + Math.sqrt(root)) : NaN;
  if (!(d > 0) || !Number.isFinite(d)) return undefined;
  const joint = { x: (from.x + d * t0.x + to.x - d * t1.x) / 2, y: (from.y + d * t0.y + to.y - d * t1.y) / 2 };
  const back = arc(to, { x: -t1.x, y: -t1.y }, joint);
  return [arc(from, t0, joint), back.type === 'arc' ? { ...back, to, sweep: -back.sweep } : { type: 'line', to }];
}

/** The arc that leaves `from` in a unit direction and ends at `to`; a line if it hardly turns. */
function arc(from: Point, direction: Point, to: Point): Segment {
  const chord = { x: to.x - from.x, y: to.y - from.y };
  const off = direction.x * chord.y - direction.y * chord.x;
  const sweep = 2 * Math.atan2(off, dot(direction, chord));
  if (Math.abs(sweep) < leastSweep) return { type: 'line', to };
  const radius = dot(chord, chord) / (2 * off);
  return { type: 'arc', to, centre: { x: from.x - radius * direction.y, y: from.y + radius * direction.x }, sweep };
}

function liesOn(pair: readonly Segment[], from: Point, cubic: Cubic): boolean {
  const [first, second] = pair as [Segment, Segment];
  const starts = [from, first.to];
  return samples.every((t) => {
    const point = pointOn(from, cubic, t);
    return [first, second].some((segment, i) => distanceTo(point, starts[i]!, segment) <= toleranceMm);
  });
}

/** Distance to a line or an arc, extended beyond its ends: the other segment of the pair continues there. */
function distanceTo(point: Point, from: Point, segment: Segment): number {
  if (segment.type === 'arc') {
    const { centre } = segment;
    const radius = distance(from, centre);
    return Math.abs(distance(point, centre) - radius);
  }
  const [dx, dy] = [segment.to.x - from.x, segment.to.y - from.y];
  return Math.abs((point.x - from.x) * dy - (point.y - from.y) * dx) / (Math.hypot(dx, dy) || 1);
}

function dot(a: Point, b: Point): number {
  return a.x * b.x + a.y * b.y;
}
