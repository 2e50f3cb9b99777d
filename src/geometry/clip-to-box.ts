/** Rings clipped to a box, cheaply, for work on a corner of something large. */

import { boundsOf } from './measure.ts';
import type { Bounds, Point, Ring } from './types.ts';

/**
 * The part of each ring inside the box (Sutherland and Hodgman 1974). Where a ring leaves the box and comes back, its
 * parts stay joined by edges along the side of the box, so fill the rings by the non-zero rule and do not measure along
 * those sides.
 */
export function clippedToBox(rings: readonly Ring[], { minX, minY, maxX, maxY }: Bounds): Ring[] {
  return rings.flatMap((ring) => {
    const box = boundsOf([ring]);
    if (!box || box.maxX < minX || box.minX > maxX || box.maxY < minY || box.minY > maxY) return [];
    let left: readonly Point[] = ring;
    if (box.minX < minX) left = clipped(left, (p) => p.x - minX);
    if (box.maxX > maxX) left = clipped(left, (p) => maxX - p.x);
    if (box.minY < minY) left = clipped(left, (p) => p.y - minY);
    if (box.maxY > maxY) left = clipped(left, (p) => maxY - p.y);
    return left.length > 2 ? [left] : [];
  });
}

/** The part of a ring where `depth`, which must be linear along any line, is not negative. */
function clipped(ring: readonly Point[], depth: (point: Point) => number): readonly Point[] {
  const last = ring[ring.length - 1];
  if (!last) return ring;
  const kept: Point[] = [];
  let from = last;
  let fromDepth = depth(last);
  for (const to of ring) {
    const toDepth = depth(to);
    if (fromDepth >= 0 !== toDepth >= 0) {
      const t = fromDepth / (fromDepth - toDepth);
      kept.push({ x: from.x + t * (to.x - from.x), y: from.y + t * (to.y - from.y) });
    }
    if (toDepth >= 0) kept.push(to);
    from = to;
    fromDepth = toDepth;
  }
  return kept;
}
