/** Distances between outlines, by trying every point against every edge that is not plainly further away than one before. */

import type { Point, Region } from '../../../src/geometry/types.ts';

/** The least distance in mm between the outlines of two regions that do not cross. */
export function distance(a: Region, b: Region): number {
  return fromPoints(b, a, fromPoints(a, b, Infinity));
}

/** Or `least`, if none is nearer. */
function fromPoints(points: Region, edges: Region, least: number): number {
  for (const ring of edges) {
    for (const [index, from] of ring.entries()) {
      const to = ring[(index + 1) % ring.length]!;
      const [left, right] = from.x < to.x ? [from.x, to.x] : [to.x, from.x];
      const [low, high] = from.y < to.y ? [from.y, to.y] : [to.y, from.y];
      for (const outline of points) {
        for (const point of outline) {
          if (point.x < left - least || point.x > right + least) continue;
          if (point.y < low - least || point.y > high + least) continue;
          least = Math.min(least, toSegment(point, from, to));
        }
      }
    }
  }
  return least;
}

/** The greatest distance from a corner of one outline to the other, both ways. */
export function apart(a: Region, b: Region): number {
  const [fromA, fromB] = [new Outlines(b), new Outlines(a)];
  const worst = (points: Region, from: Outlines): number =>
    points.flat().reduce((most, point) => Math.max(most, from.distance(point)), 0);
  return Math.max(worst(a, fromA), worst(b, fromB));
}

/** How far points are from outlines. The edge that was nearest to the last point is tried first: it rules out most others. */
export class Outlines {
  readonly #edges: readonly (readonly [Point, Point])[];
  #nearest: readonly [Point, Point];

  constructor(region: Region) {
    this.#edges = region.flatMap((ring) =>
      ring.map((from, index) => [from, ring[(index + 1) % ring.length]!] as const),
    );
    this.#nearest = this.#edges[0]!;
  }

  distance(point: Point): number {
    const { x, y } = point;
    let least = toSegment(point, ...this.#nearest);
    for (const edge of this.#edges) {
      const [from, to] = edge;
      if (Math.min(from.x, to.x) - x >= least || x - Math.max(from.x, to.x) >= least) continue;
      if (Math.min(from.y, to.y) - y >= least || y - Math.max(from.y, to.y) >= least) continue;
      const away = toSegment(point, from, to);
      if (away >= least) continue;
      least = away;
      this.#nearest = edge;
    }
    return least;
  }
}

function toSegment(point: Point, from: Point, to: Point): number {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const along = ((point.x - from.x) * dx + (point.y - from.y) * dy) / (dx * dx + dy * dy || 1);
  const t = Math.min(1, Math.max(0, along));
  return Math.hypot(from.x + t * dx - point.x, from.y + t * dy - point.y);
}
