/** Groups of which one value alone may be written: `ring: top` for `ring: {at: top}`. */

import type { YamlPath } from '../core/issue.ts';

const onlyKeys: Readonly<Record<string, string>> = {
  ring: 'at',
  hole: 'at',
  slot: 'at',
  keyhole: 'at',
  arc: 'at',
  place: 'on',
  bridges: 'width',
  oval: 'size',
  house: 'size',
  label: 'size',
  ticket: 'size',
  border: 'of',
};

/** The key under which that value stands where there are others; `undefined` for what has no short form. */
export function shortKeyOf(path: YamlPath): string | undefined {
  // What is in second place was named by who wrote the spec.
  const name = path.length === 2 ? undefined : path.at(-1);
  return typeof name === 'string' && Object.hasOwn(onlyKeys, name) ? onlyKeys[name] : undefined;
}
