/** A quick test whether an outline crosses a region's edges, which saves a boolean operation if it does not. */

import type { EdgeIndex } from '../../geometry/edge-index.ts';
import { boundsOf } from '../../geometry/measure.ts';
import type { Point } from '../../geometry/types.ts';

/** Whether an outline crosses any edge, or comes so near that it may. */
export function isCrossed(ring: readonly Point[], edges: EdgeIndex): boolean {
  const box = boundsOf([ring])!;
  const middle = { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 };
  const reach = Math.max(box.maxX - box.minX, box.maxY - box.minY) / 2;
  if (edges.near(middle, reach).length === 0) return false;
  return ring.some((from, index) => {
    const to = ring[(index + 1) % ring.length]!;
    const half = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
    return edges.near(half, Math.max(Math.abs(to.x - from.x), Math.abs(to.y - from.y)) / 2).length > 0;
  });
}
