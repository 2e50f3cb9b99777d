/**
 * Removes duplicate outlines: a line scored twice comes out twice as deep, so outlines that coincide along their whole
 * length count as one.
 */

import { difference } from '../geometry/clipper.ts';
import { area, boundsOf, perimeter, ringArea } from '../geometry/measure.ts';
import type { Bounds, Region, Ring } from '../geometry/types.ts';

/** Lines no further apart than this, in mm, count as one. */
const togetherMm = 0.005;

/** Keeps the first of each set of duplicates. */
export function removeDuplicates(rings: Region): Region {
  const kept: { readonly ring: Ring; readonly bounds: Bounds }[] = [];
  for (const ring of rings) {
    const bounds = boundsOf([ring])!;
    const isDouble = kept.some((other) => alike(other.bounds, bounds) && lieTogether(other.ring, ring));
    if (!isDouble) kept.push({ ring, bounds });
  }
  return kept.map(({ ring }) => ring);
}

function alike(a: Bounds, b: Bounds): boolean {
  return (['minX', 'minY', 'maxX', 'maxY'] as const).every((side) => Math.abs(a[side] - b[side]) <= togetherMm);
}

/** In either direction. */
function lieTogether(a: Ring, b: Ring): boolean {
  const [first, second] = [a, b].map((ring): Region => [ringArea(ring) < 0 ? [...ring].reverse() : ring]);
  const between = area(difference(first!, [second!])) + area(difference(second!, [first!]));
  return between <= togetherMm * perimeter([a]);
}
