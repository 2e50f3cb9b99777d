/** Results of comparing two regions, kept for as long as both are the very objects they were: most edits touch neither. */

import type { Region } from '../geometry/types.ts';

export function remembered<T>(compare: (a: Region, b: Region) => T): (a: Region, b: Region) => T {
  const known = new WeakMap<Region, { readonly b: Region; readonly result: T }>();
  return (a, b) => {
    const before = known.get(a);
    if (before?.b === b) return before.result;
    const result = compare(a, b);
    known.set(a, { b, result });
    return result;
  };
}
