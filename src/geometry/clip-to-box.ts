/** Rings clipped to a box, cheaply, for work on a corner of something large. */

import type { Bounds, Point, Ring } from './types.ts';

/**
 * The part of each ring inside the box (Sutherland and Hodgman 1974). Where a ring leaves the box and comes back, its
 * parts stay joined by edges along the side of the box, so fill the rings by the non-zero rule and do not measure along
 * those sides.
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

/** The part of a ring where `depth`, which must be linear along any line, is not negative. */
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
