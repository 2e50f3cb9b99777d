/** Keys that have a new name. The old one still works in this version: it is read as the new one, which is said once, with a fix. */

import { isMap, isScalar, isSeq } from 'yaml';
import type { TextRange, YamlPath } from '../core/issue.ts';

interface RenamedKey {
  readonly old: string;
  readonly key: string;
  /** Whether a group at this path has the key. */
  readonly isIn: (path: YamlPath) => boolean;
}

const inGroup =
  (...names: readonly string[]) =>
  (path: YamlPath): boolean =>
    names.includes(String(path.at(-1)));

/** A shape’s generator, not a piece of the same name. */
const inLabel = (path: YamlPath): boolean => path[0] === 'shapes' && path.length > 2 && path.at(-1) === 'label';

const renamedKeys: readonly RenamedKey[] = [
  { old: 'opening', key: 'diameter', isIn: inGroup('ring', 'hole') },
  { old: 'opening', key: 'width', isIn: inGroup('slot') },
  { old: 'interval', key: 'hatch', isIn: inGroup('machine') },
  { old: 'corner', key: 'corner_jump', isIn: inGroup('machine') },
  { old: 'cut', key: 'clip', isIn: inLabel },
];

/** An old key as it stands in a text. */
export interface OldKey {
  readonly old: string;
  readonly key: string;
  /** Of the value, by its new key. */
  readonly path: YamlPath;
  readonly range: TextRange;
}

/**
 * Gives old keys in a YAML tree their new names, in place, so that all that reads the tree knows the new ones only. An old key
 * beside its new one stays, and is unknown.
 */
export function renameKeys(node: unknown, path: YamlPath = []): OldKey[] {
  if (isSeq(node)) return node.items.flatMap((item, index) => renameKeys(item, [...path, index]));
  if (!isMap(node)) return [];
  const isThere = (name: string): boolean => node.items.some(({ key }) => isScalar(key) && key.value === name);
  return node.items.flatMap(({ key, value }): OldKey[] => {
    if (!isScalar(key)) return [];
    const renamed = renamedKeys.find((each) => each.old === key.value && each.isIn(path) && !isThere(each.key));
    if (renamed) key.value = renamed.key;
    const here = [...path, String(key.value)];
    const found = renameKeys(value, here);
    if (!renamed || !key.range) return found;
    const [start, end] = key.range;
    return [{ old: renamed.old, key: renamed.key, path: here, range: { start, end } }, ...found];
  });
}
