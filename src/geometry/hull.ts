/** The convex hull of points, by Andrew's monotone chain (Information Processing Letters 9, 1979). */

import type { Point, Ring } from './types.ts';

/** Counter-clockwise, without points that lie between others on an edge; fewer than three where the points span no area. */
export function hullOf(points: readonly Point[]): Ring {
  const sorted = points.toSorted((a, b) => a.x - b.x || a.y - b.y);
  const chain = (along: readonly Point[]): Point[] => {
    const kept: Point[] = [];
    for (const point of along) {
      while (kept.length > 1 && !turnsLeft(kept.at(-2)!, kept.at(-1)!, point)) kept.pop();
      kept.push(point);
    }
    return kept.slice(0, -1);
  };
  return [...chain(sorted), ...chain(sorted.toReversed())];
}

function turnsLeft(a: Point, b: Point, c: Point): boolean {
  return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x) > 0;
}
