/** Groups that may be written as a single value: `ring: top` for `ring: {at: top}`. */

import type { YamlPath } from '../../core/issue.ts';

const onlyKeys: Readonly<Record<string, string>> = {
  ring: 'at',
  hole: 'at',
  slot: 'at',
  keyhole: 'at',
  arc: 'at',
  place: 'on',
  fit: 'in',
  bridges: 'width',
  oval: 'size',
  house: 'size',
  label: 'size',
  ticket: 'size',
  border: 'of',
};

/** The key that the single value stands for; `undefined` if there is no short form. */
export function shortKeyOf(path: YamlPath): string | undefined {
  if (path.at(-2) === 'lines' && typeof path.at(-1) === 'number') return 'text';
  // The second step of a path is a name that the writer chose.
  const name = path.length === 2 ? undefined : path.at(-1);
  return typeof name === 'string' && Object.hasOwn(onlyKeys, name) ? onlyKeys[name] : undefined;
}
