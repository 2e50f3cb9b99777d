/** Pairs of edges that face each other across a gap narrower than a given reach, found by sweeping along the longer side. */

import Flatbush from 'flatbush';
import type { Bounds } from '../types.ts';
import type { Edges, OutlinePosition } from './edges.ts';
import { nearestOn, placeOn, walkBetween } from './edges.ts';

/** The part of an edge that is within reach of the other one, in mm along its ring. */
export interface FacingStretch {
  readonly ring: number;
  readonly start: number;
  readonly end: number;
}

export interface FacingPair {
  readonly width: number;
  readonly ends: readonly [OutlinePosition, OutlinePosition];
  readonly stretches: readonly [FacingStretch, FacingStretch];
}

/** Edges that meet at a right angle or wider form a corner. The limit is the cosine of a slightly sharper angle. */
const facingCosine = -0.02;
/** Below this distance, in mm, edges touch, and the direction from one to the other is undefined. */
const touchingMm = 1e-4;
/** Difference of equal lengths that are rounded, in mm: two steps of the grid on which outlines are turned and united. */
const roundingMm = 2e-5;
/**
 * Least sine of the angle between an edge and a way that leaves it. A way along the edge, as from one stem's end to the
 * next straight above, leaves to neither side, and rounding must not decide.
 */
const leastLeaving = 1e-3;
/** A gap that closes within this many reaches along the outline is a corner. */
export const cornerReaches = 12;
/**
 * Least area behind a place in a gap with a closed end, as a share of the area of a slit as long and as wide: 1 for a
 * slit, 1/2 for a wedge, 1/3 for the cusp between two round edges, much more for a bay with a narrow mouth.
 */
const leastFullness = 0.65;
/**
 * Holes whose mean width (twice the area over the length of the outline) is below this share of the reach are narrow.
 */
const narrowShare = 0.7;

/** Bounds for outlines that lie close to themselves everywhere, far above what lettering needs. */
const mostLooks = 2_000_000;
const mostPairs = 30_000;

/**
 * The facing pairs for each side of the outline. `sides` holds the same edges in the same order, walked in either
 * direction. Stops early, with the pairs found so far, once the work exceeds its bounds.
 */
export function facingPairs(sides: readonly Edges[], reach: number): FacingPair[][] {
  const found = sides.map((): FacingPair[] => []);
  const [edges] = sides;
  if (!edges || edges.count === 0) return found;
  let looks = 0;
  let judged = 0;
  let index: Flatbush | undefined;
  const blocked = (p: OutlinePosition, q: OutlinePosition): boolean => {
    index ??= indexOf(edges);
    return index.collides(Math.min(p.x, q.x), Math.min(p.y, q.y), Math.max(p.x, q.x), Math.max(p.y, q.y), (edge) => {
      looks++;
      return edge !== p.edge && edge !== q.edge && crosses(edges, edge, p, q);
    });
  };
  eachNearPair(edges, reach, (i, j) => {
    looks++;
    if (!areOpposed(edges, i, j) || isNearAlong(edges, i, j, reach)) return true;
    for (let side = 0; side < sides.length; side++) {
      const own = sides[side]!;
      if (!isInFront(own, i, j, reach) || !isInFront(own, j, i, reach)) continue;
      judged++;
      const pair = facingPairOf(own, i, j, reach, blocked);
      if (pair) found[side]!.push(pair);
    }
    return looks < mostLooks && judged < mostPairs;
  });
  return found;
}

/** Visits every two edges whose boxes come within reach of each other, the lower number first, until `visit` returns false. */
function eachNearPair(edges: Edges, reach: number, visit: (i: number, j: number) => boolean): void {
  const { count } = edges;
  const array = (): Float64Array => new Float64Array(count);
  const [minX, minY, maxX, maxY] = [array(), array(), array(), array()];
  for (let edge = 0; edge < count; edge++) {
    const box = boxOf(edges, edge);
    minX[edge] = box.minX;
    minY[edge] = box.minY;
    maxX[edge] = box.maxX;
    maxY[edge] = box.maxY;
  }
  const isWide = extentOf(minX, maxX) >= extentOf(minY, maxY);
  const [start, end, low, high] = isWide ? [minX, maxX, minY, maxY] : [minY, maxY, minX, maxX];
  const order = Uint32Array.from({ length: count }, (_, edge) => edge).sort((a, b) => start[a]! - start[b]!);
  for (let at = 0; at < count; at++) {
    const edge = order[at]!;
    const [until, from, to] = [end[edge]! + reach, low[edge]! - reach, high[edge]! + reach];
    for (let next = at + 1; next < count; next++) {
      const other = order[next]!;
      if (start[other]! > until) break;
      if (low[other]! > to || high[other]! < from) continue;
      if (!visit(Math.min(edge, other), Math.max(edge, other))) return;
    }
  }
}

function extentOf(starts: Float64Array, ends: Float64Array): number {
  let [least, most] = [Infinity, -Infinity];
  for (const start of starts) if (start < least) least = start;
  for (const end of ends) if (end > most) most = end;
  return most - least;
}

function indexOf(edges: Edges): Flatbush {
  const index = new Flatbush(edges.count);
  for (let i = 0; i < edges.count; i++) {
    const { minX, minY, maxX, maxY } = boxOf(edges, i);
    index.add(minX, minY, maxX, maxY);
  }
  index.finish();
  return index;
}

function boxOf({ x, y, dx, dy, length }: Edges, edge: number): Bounds {
  const fromX = x[edge]!;
  const fromY = y[edge]!;
  const toX = fromX + dx[edge]! * length[edge]!;
  const toY = fromY + dy[edge]! * length[edge]!;
  return {
    minX: Math.min(fromX, toX),
    minY: Math.min(fromY, toY),
    maxX: Math.max(fromX, toX),
    maxY: Math.max(fromY, toY),
  };
}

/**
 * Whether two edges run in opposite directions. This test and the next need no distance and run first, for every two
 * edges whose boxes are near each other.
 */
function areOpposed(edges: Edges, i: number, j: number): boolean {
  return edges.dx[i]! * edges.dx[j]! + edges.dy[i]! * edges.dy[j]! <= facingCosine;
}

/** Whether two edges lie near each other along their ring, in either direction. */
function isNearAlong(edges: Edges, i: number, j: number, reach: number): boolean {
  const ring = edges.ring[i]!;
  if (ring !== edges.ring[j]) return false;
  const isInOrder = edges.before[i]! < edges.before[j]!;
  const first = isInOrder ? i : j;
  const last = isInOrder ? j : i;
  const far = edges.before[last]! + edges.length[last]! - edges.before[first]!;
  const round = edges.rings[ring]!.length - (edges.before[last]! - edges.before[first]! - edges.length[first]!);
  return Math.min(far, round) < cornerReaches * reach;
}

/** Whether any of edge j lies on the outer side of edge i's line and within reach. */
function isInFront(edges: Edges, i: number, j: number, reach: number): boolean {
  const x = edges.x[j]! - edges.x[i]!;
  const y = edges.y[j]! - edges.y[i]!;
  const start = x * edges.dy[i]! - y * edges.dx[i]!;
  const end = start + edges.length[j]! * (edges.dx[j]! * edges.dy[i]! - edges.dy[j]! * edges.dx[i]!);
  return Math.max(start, end) > -touchingMm && Math.min(start, end) < reach;
}

function facingPairOf(
  edges: Edges,
  i: number,
  j: number,
  reach: number,
  blocked: (p: OutlinePosition, q: OutlinePosition) => boolean,
): FacingPair | undefined {
  const onI = stretchWithinReach(edges, i, j, reach);
  const onJ = onI && stretchWithinReach(edges, j, i, reach);
  if (!onJ) return undefined;
  let best: readonly [OutlinePosition, OutlinePosition] | undefined;
  let width = reach;
  // Two segments that do not cross are nearest at an end of one of them, and so at an end of a stretch. Where they run
  // side by side every place is equally near, and the middle stands for all.
  for (const share of [0, 1, 0.5]) {
    for (const swap of [false, true]) {
      const [edge, other, [start, end]] = swap ? [j, i, onJ] : [i, j, onI];
      const p = placeOn(edges, edge, start + share * (end - start));
      const q = nearestOn(edges, other, p);
      const distance = Math.sqrt((q.x - p.x) ** 2 + (q.y - p.y) ** 2);
      const allowance = share === 0.5 ? touchingMm : -roundingMm;
      if (distance >= Math.min(reach - roundingMm, best ? width + allowance : Infinity)) continue;
      if (!isGap(edges, p, q, distance, reach) || (distance > touchingMm && blocked(p, q))) continue;
      best = [p, q];
      width = Math.min(width, distance);
    }
  }
  if (!best) return undefined;
  return {
    width: width > touchingMm ? width : 0,
    ends: best,
    stretches: [stretchOf(edges, i, onI), stretchOf(edges, j, onJ)],
  };
}

function stretchOf(edges: Edges, edge: number, [start, end]: readonly [number, number]): FacingStretch {
  return { ring: edges.ring[edge]!, start: edges.before[edge]! + start, end: edges.before[edge]! + end };
}

/**
 * The stretch of edge i that is within reach of edge j, in mm along it: the part of its line inside the stadium of that
 * radius round j (two discs and the strip between them), which is convex.
 */
function stretchWithinReach(edges: Edges, i: number, j: number, reach: number): readonly [number, number] | undefined {
  const [ux, uy] = [edges.dx[i]!, edges.dy[i]!];
  const [vx, vy] = [edges.dx[j]!, edges.dy[j]!];
  const [x, y] = [edges.x[j]! - edges.x[i]!, edges.y[j]! - edges.y[i]!];
  let start = Infinity;
  let end = -Infinity;
  for (const along of [0, edges.length[j]!]) {
    const [cx, cy] = [x + along * vx, y + along * vy];
    const across = cx * uy - cy * ux;
    const half = reach * reach - across * across;
    if (half < 0) continue;
    const middle = cx * ux + cy * uy;
    start = Math.min(start, middle - Math.sqrt(half));
    end = Math.max(end, middle + Math.sqrt(half));
  }
  const beside = rangeBetween(-(x * vx + y * vy), ux * vx + uy * vy, 0, edges.length[j]!);
  const near = rangeBetween(y * vx - x * vy, ux * vy - uy * vx, -reach, reach);
  const first = Math.max(beside[0], near[0]);
  const last = Math.min(beside[1], near[1]);
  if (first <= last) {
    start = Math.min(start, first);
    end = Math.max(end, last);
  }
  start = Math.max(0, start);
  end = Math.min(edges.length[i]!, end);
  return start <= end ? [start, end] : undefined;
}

/** The range of t for which `at + t·slope` lies between `low` and `high`. */
function rangeBetween(at: number, slope: number, low: number, high: number): readonly [number, number] {
  if (slope === 0) return at >= low && at <= high ? [-Infinity, Infinity] : [Infinity, -Infinity];
  const a = (low - at) / slope;
  const b = (high - at) / slope;
  return a < b ? [a, b] : [b, a];
}

/** Whether the way from p to q crosses a gap that is not just a corner of the outline. */
function isGap(edges: Edges, p: OutlinePosition, q: OutlinePosition, distance: number, reach: number): boolean {
  if (distance > touchingMm && !(leavesOutwards(edges, p, q) && leavesOutwards(edges, q, p))) return false;
  if (edges.ring[p.edge] !== edges.ring[q.edge]) return true;
  const ways = [walkBetween(edges, p, q), walkBetween(edges, q, p)];
  if (ways.some(({ length }) => length < cornerReaches * reach)) return false;
  // Across a bay, one of the two ways along the ring has the bay to its right; across a hole, each has a part of it.
  const behind = ways.filter(({ right }) => right > 0);
  if (behind.length === 2 && isNarrow(edges, p, reach)) return true;
  return behind.length > 0 && behind.every(({ length, right }) => right >= (leastFullness * distance * length) / 2);
}

/**
 * Whether a hole is too narrow as a whole, so that no part of it is a corner of something wider. A lens whose middle is
 * as wide as the reach has a mean width of 2/3 of it, a slit 1.
 */
function isNarrow({ rings, ring }: Edges, { edge }: OutlinePosition, reach: number): boolean {
  const { swept, length } = rings[ring[edge]!]!;
  return Math.abs(swept) < narrowShare * reach * length;
}

/** Whether the way to q starts on the outer side of p's edge. */
function leavesOutwards(edges: Edges, p: OutlinePosition, q: OutlinePosition): boolean {
  const [x, y] = [q.x - p.x, q.y - p.y];
  return x * edges.dy[p.edge]! - y * edges.dx[p.edge]! > leastLeaving * Math.sqrt(x * x + y * y);
}

/** Whether an edge crosses the open segment from p to q, or ends on it. */
function crosses(edges: Edges, edge: number, p: OutlinePosition, q: OutlinePosition): boolean {
  const [dx, dy] = [edges.dx[edge]!, edges.dy[edge]!];
  const side = (place: OutlinePosition): number => (place.x - edges.x[edge]!) * dy - (place.y - edges.y[edge]!) * dx;
  const [a, b] = [side(p), side(q)];
  if (Math.abs(a) < touchingMm / 10 || Math.abs(b) < touchingMm / 10 || a > 0 === b > 0) return false;
  const share = a / (a - b);
  const x = p.x + share * (q.x - p.x) - edges.x[edge]!;
  const y = p.y + share * (q.y - p.y) - edges.y[edge]!;
  const along = x * dx + y * dy;
  return along >= -roundingMm && along <= edges.length[edge]! + roundingMm;
}
