/**
 * The edges of a region as flat arrays, each with its place along its ring, so that the arc between two points of a ring and
 * the area between that arc and its chord cost the same however far apart they are.
 */

import { distance } from '../measure.ts';
import type { Region } from '../types.ts';

/** Edges shorter than this have no direction to speak of, in mm. */
const leastEdgeMm = 1e-7;

export interface Edges {
  readonly count: number;
  /** Where each edge starts, in mm. */
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** Its direction (of length 1); what is not enclosed lies to the right of it. */
  readonly dx: Float64Array;
  readonly dy: Float64Array;
  readonly length: Float64Array;
  readonly ring: Int32Array;
  /** Length of its ring before it, in mm. */
  readonly before: Float64Array;
  /** Twice the signed area between its ring before it and that ring's first point, in mm². */
  readonly swept: Float64Array;
  readonly rings: readonly EdgeRing[];
}

interface EdgeRing {
  readonly x: number;
  readonly y: number;
  readonly length: number;
  /** Twice its signed area, in mm². */
  readonly swept: number;
}

/** A point on an edge, so many mm from the edge's start. */
export interface OutlinePosition {
  readonly edge: number;
  readonly along: number;
  readonly x: number;
  readonly y: number;
}

/** The edges in the order of their rings; `reversed`: each ring walked backwards, so that material and gaps change places. */
export function edgesOf(region: Region, reversed: boolean): Edges {
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
      const from = ring[reversed ? (ring.length - k) % ring.length : k]!;
      const to = ring[reversed ? ring.length - k - 1 : (k + 1) % ring.length]!;
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
 * The walk along one ring from one place to another, in mm, and what lies to the right of it as far as the straight way back,
 * in mm² (negative where that lies to the left).
 */
export function walk(edges: Edges, from: OutlinePosition, to: OutlinePosition): { length: number; right: number } {
  const ring = edges.rings[edges.ring[from.edge]!]!;
  let length = edges.before[to.edge]! + to.along - edges.before[from.edge]! - from.along;
  let twice = sweptTo(edges, to, ring) - sweptTo(edges, from, ring);
  // A point may have two places, on the edges that meet in it: rounding must not send the walk all round.
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
