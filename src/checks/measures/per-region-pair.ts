/** Caches the results of comparing two regions as long as both are the same objects: most edits touch neither. */

import type { Region } from '../../geometry/types.ts';

export function perRegionPair<T>(compare: (a: Region, b: Region) => T): (a: Region, b: Region) => T {
  // Keyed by both: one shape may be drawn on two pieces, and one piece be compared with many shapes.
  const known = new WeakMap<Region, WeakMap<Region, { readonly result: T }>>();
  return (a, b) => {
    const ofA = known.get(a) ?? new WeakMap<Region, { readonly result: T }>();
    known.set(a, ofA);
    const before = ofA.get(b);
    if (before) return before.result;
    const result = compare(a, b);
    ofA.set(b, { result });
    return result;
  };
}
