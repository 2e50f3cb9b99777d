/** What of many rings lies near one place, cheaply: for work on a corner of something large. */

import type { Bounds, Point, Ring } from './types.ts';

/**
 * What of each ring lies in the box (Sutherland and Hodgman 1974). Where a ring leaves the box and comes back, its parts stay
 * joined by edges along the side of the box, so the rings are to be filled by the non-zero rule and not looked at there.
 */
export function clippedToBox(rings: readonly Ring[], { minX, minY, maxX, maxY }: Bounds): Ring[] {
  return rings.flatMap((ring) => {
    let left: readonly Point[] = ring;
    left = clipped(left, (p) => p.x - minX);
    left = clipped(left, (p) => maxX - p.x);
    left = clipped(left, (p) => p.y - minY);
    left = clipped(left, (p) => maxY - p.y);
    return left.length > 2 ? [left] : [];
  });
}

/** What of a ring is on the side where `depth`, which grows evenly along any line, is not negative. */
function clipped(ring: readonly Point[], depth: (point: Point) => number): readonly Point[] {
  const last = ring[ring.length - 1];
  if (!last || ring.every((point) => depth(point) >= 0)) return ring;
  const kept: Point[] = [];
  let [from, fromDepth] = [last, depth(last)];
  for (const to of ring) {
    const toDepth = depth(to);
    if (fromDepth >= 0 !== toDepth >= 0) {
      const t = fromDepth / (fromDepth - toDepth);
      kept.push({ x: from.x + t * (to.x - from.x), y: from.y + t * (to.y - from.y) });
    }
    if (toDepth >= 0) kept.push(to);
    [from, fromDepth] = [to, toDepth];
  }
  return kept;
}
