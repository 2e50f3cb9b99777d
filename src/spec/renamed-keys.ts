/** Keys that have a new name. The old one still works in this version: it is read as the new one, which is said once, with a fix. */

import { isMap, isScalar, isSeq } from 'yaml';
import type { TextRange, YamlPath } from '../core/issue.ts';

interface RenamedKey {
  readonly old: string;
  readonly key: string;
  /** The groups that have it. */
  readonly groups: readonly string[];
}

const renamedKeys: readonly RenamedKey[] = [
  { old: 'opening', key: 'diameter', groups: ['ring', 'hole'] },
  { old: 'opening', key: 'width', groups: ['slot'] },
  { old: 'interval', key: 'hatch', groups: ['machine'] },
  { old: 'corner', key: 'corner_jump', groups: ['machine'] },
  { old: 'cut', key: 'clip', groups: ['label'] },
];

/** The name of a group as the language has it; what is in second place was named by who wrote the spec: a piece, a tie, a shape. */
function groupName(path: YamlPath): string | undefined {
  return path.length === 2 ? undefined : String(path.at(-1));
}

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
  const group = groupName(path);
  const isThere = (name: string): boolean => node.items.some(({ key }) => isScalar(key) && key.value === name);
  return node.items.flatMap(({ key, value }): OldKey[] => {
    if (!isScalar(key)) return [];
    const renamed =
      group === undefined
        ? undefined
        : renamedKeys.find(({ old, key: now, groups }) => old === key.value && groups.includes(group) && !isThere(now));
    if (renamed) key.value = renamed.key;
    const here = [...path, String(key.value)];
    const found = renameKeys(value, here);
    if (!renamed || !key.range) return found;
    const [start, end] = key.range;
    return [{ old: renamed.old, key: renamed.key, path: here, range: { start, end } }, ...found];
  });
}
