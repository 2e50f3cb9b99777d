/** Where outlines cross a level line. */

import type { Ring } from './types.ts';

/** The x of every place where a ring crosses a height, along the ring; a corner at that height counts once, or not at all. */
export function crossingsAt(ring: Ring, y: number): number[] {
  return ring.flatMap((to, index) => {
    const from = ring.at(index - 1)!;
    return from.y > y === to.y > y ? [] : [from.x + ((y - from.y) / (to.y - from.y)) * (to.x - from.x)];
  });
}
