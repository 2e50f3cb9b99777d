/**
 * Caches a result for a region, and for a width if there is one, as long as both stay the same: an edit elsewhere keeps
 * a region as the same object.
 */

import type { Region } from '../../geometry/types.ts';

export function perRegion<T>(compute: (region: Region, width: number) => T): (region: Region, width?: number) => T {
  const known = new WeakMap<Region, { readonly width: number; readonly result: T }>();
  return (region, width = 0) => {
    const before = known.get(region);
    if (before?.width === width) return before.result;
    const result = compute(region, width);
    known.set(region, { width, result });
    return result;
  };
}
