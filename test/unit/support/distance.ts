/** Distances between outlines, by trying every point against every edge: slow, and too plain to be wrong. */

import type { Point, Region } from '../../../src/geometry/types.ts';

/** The least distance in mm between the outlines of two regions that do not cross. */
export function distance(a: Region, b: Region): number {
  return Math.min(fromPoints(a, b), fromPoints(b, a));
}

function fromPoints(points: Region, edges: Region): number {
  let least = Infinity;
  for (const point of points.flat()) {
    for (const ring of edges) {
      ring.forEach((from, index) => {
        least = Math.min(least, toSegment(point, from, ring[(index + 1) % ring.length]!));
      });
    }
  }
  return least;
}

function toSegment(point: Point, from: Point, to: Point): number {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const along = ((point.x - from.x) * dx + (point.y - from.y) * dy) / (dx * dx + dy * dy || 1);
  const t = Math.min(1, Math.max(0, along));
  return Math.hypot(from.x + t * dx - point.x, from.y + t * dy - point.y);
}
