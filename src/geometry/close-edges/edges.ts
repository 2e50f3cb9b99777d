/**
 * The edges of a region as flat arrays, each with its place along its ring, so that the arc between two points of a ring and
 * the area between that arc and its chord cost the same however far apart they are.
 */

import { distance } from '../measure.ts';
import type { Region } from '../types.ts';

/** Edges shorter than this, in mm, have no meaningful direction. */
const leastEdgeMm = 1e-7;

export interface Edges {
  readonly count: number;
  /** Start of each edge, in mm. */
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** Direction, of length 1; what is not enclosed lies to its right. */
  readonly dx: Float64Array;
  readonly dy: Float64Array;
  readonly length: Float64Array;
  readonly ring: Int32Array;
  /** Length of the ring before this edge, in mm. */
  readonly before: Float64Array;
  /** Twice the signed area between the part of the ring before this edge and the ring's first point, in mm². */
  readonly swept: Float64Array;
  readonly rings: readonly EdgeRing[];
}

interface EdgeRing {
  readonly x: number;
  readonly y: number;
  readonly length: number;
  /** Twice the signed area, in mm². */
  readonly swept: number;
}

/** A point on an edge, at a distance from the edge's start in mm. */
export interface OutlinePosition {
  readonly edge: number;
  readonly along: number;
  readonly x: number;
  readonly y: number;
}

/** The edges of a region, ring by ring. */
export function edgesOf(region: Region): Edges {
  const size = region.reduce((sum, ring) => sum + ring.length, 0);
  const array = (): Float64Array => new Float64Array(size);
  const [x, y, dx, dy, length, before, swept] = [array(), array(), array(), array(), array(), array(), array()];
  const ringOf = new Int32Array(size);
  const rings: EdgeRing[] = [];
  let count = 0;
  for (const ring of region) {
    const origin = ring[0];
    if (!origin) continue;
    let arc = 0;
    let area = 0;
    for (let k = 0; k < ring.length; k++) {
      const from = ring[k]!;
      const to = ring[(k + 1) % ring.length]!;
      const long = distance(to, from);
      if (long < leastEdgeMm) continue;
      x[count] = from.x;
      y[count] = from.y;
      dx[count] = (to.x - from.x) / long;
      dy[count] = (to.y - from.y) / long;
      length[count] = long;
      ringOf[count] = rings.length;
      before[count] = arc;
      swept[count] = area;
      arc += long;
      area += (from.x - origin.x) * (to.y - origin.y) - (to.x - origin.x) * (from.y - origin.y);
      count++;
    }
    rings.push({ x: origin.x, y: origin.y, length: arc, swept: area });
  }
  return { count, x, y, dx, dy, length, ring: ringOf, before, swept, rings };
}

/** The same edges under the same numbers, with each ring walked backwards, so that material and gaps change places. */
export function reversed(edges: Edges): Edges {
  const { count, length, ring, rings } = edges;
  const array = (): Float64Array => new Float64Array(count);
  const [x, y, dx, dy, before, swept] = [array(), array(), array(), array(), array(), array()];
  for (let edge = 0; edge < count; edge++) {
    const { x: originX, y: originY, length: whole, swept: all } = rings[ring[edge]!]!;
    const [fromX, fromY] = [edges.x[edge]! - originX, edges.y[edge]! - originY];
    const [toX, toY] = [fromX + length[edge]! * edges.dx[edge]!, fromY + length[edge]! * edges.dy[edge]!];
    x[edge] = originX + toX;
    y[edge] = originY + toY;
    dx[edge] = -edges.dx[edge]!;
    dy[edge] = -edges.dy[edge]!;
    before[edge] = whole - edges.before[edge]! - length[edge]!;
    swept[edge] = edges.swept[edge]! + fromX * toY - toX * fromY - all;
  }
  const back = rings.map((each) => ({ ...each, swept: -each.swept }));
  return { count, x, y, dx, dy, length, ring, before, swept, rings: back };
}

export function placeOn(edges: Edges, edge: number, along: number): OutlinePosition {
  const x = edges.x[edge]! + along * edges.dx[edge]!;
  const y = edges.y[edge]! + along * edges.dy[edge]!;
  return { edge, along, x, y };
}

/** The point of an edge that is nearest to another point. */
export function nearestOn(edges: Edges, edge: number, { x, y }: OutlinePosition): OutlinePosition {
  const along = (x - edges.x[edge]!) * edges.dx[edge]! + (y - edges.y[edge]!) * edges.dy[edge]!;
  return placeOn(edges, edge, Math.min(edges.length[edge]!, Math.max(0, along)));
}

/**
 * The walk along one ring from one place to another: its length in mm, and the area to its right as far as the straight
 * line back, in mm² (negative if that lies to the left).
 */
export function walkBetween(
  edges: Edges,
  from: OutlinePosition,
  to: OutlinePosition,
): { length: number; right: number } {
  const ring = edges.rings[edges.ring[from.edge]!]!;
  let length = edges.before[to.edge]! + to.along - edges.before[from.edge]! - from.along;
  let twice = sweptTo(edges, to, ring) - sweptTo(edges, from, ring);
  // A point may have two places, on the two edges that meet there: rounding must not send the walk once round the ring.
  if (length < -leastEdgeMm) {
    length += ring.length;
    twice += ring.swept;
  }
  twice += (to.x - ring.x) * (from.y - ring.y) - (from.x - ring.x) * (to.y - ring.y);
  return { length, right: -twice / 2 };
}

function sweptTo(edges: Edges, { edge, x, y }: OutlinePosition, ring: EdgeRing): number {
  return edges.swept[edge]! + (edges.x[edge]! - ring.x) * (y - ring.y) - (x - ring.x) * (edges.y[edge]! - ring.y);
}
