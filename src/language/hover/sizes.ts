/** Sizes of regions, and their number of parts and holes. */

import { boundsOf, ringArea } from '../../geometry/measure.ts';
import type { Bounds, Region } from '../../geometry/types.ts';

export interface BoxSize {
  readonly width: number;
  readonly height: number;
}

export function sizeOf({ minX, minY, maxX, maxY }: Bounds): BoxSize {
  return { width: maxX - minX, height: maxY - minY };
}

/** `undefined` for an empty region. */
export function sizeOfRegion(region: Region): BoxSize | undefined {
  const bounds = boundsOf(region);
  return bounds && sizeOf(bounds);
}

export function countParts(region: Region): { parts: number; holes: number } {
  const parts = region.filter((ring) => ringArea(ring) > 0).length;
  return { parts, holes: region.length - parts };
}
