/** Keys with a new name. The old name still works in this version, and is reported once with a fix. */

import { isMap, isScalar, isSeq } from 'yaml';
import type { Pair, YAMLMap } from 'yaml';
import type { TextRange, YamlPath } from '../../core/issue.ts';

interface RenamedKey {
  readonly old: string;
  readonly key: string;
  /** The groups with this key. */
  readonly groups: readonly string[];
  /** Renamed only beside this key, which has a new name as well. */
  readonly beside?: string;
}

const renamedKeys: readonly RenamedKey[] = [
  { old: 'opening', key: 'diameter', groups: ['ring', 'hole'] },
  { old: 'opening', key: 'width', groups: ['slot'] },
  { old: 'interval', key: 'hatch', groups: ['machine'] },
  { old: 'corner', key: 'corner_jump', groups: ['machine'] },
  { old: 'cut', key: 'clip', groups: ['label'] },
  // An arrow used to be as wide as its shaft, and its head had a width of its own.
  { old: 'width', key: 'shaft', groups: ['arrow'], beside: 'head' },
  { old: 'head', key: 'width', groups: ['arrow'] },
];

/**
 * Name of a group in the language; `undefined` for a name that the writer chose (the second step of a path): a piece, a
 * tie, a shape.
 */
function groupName(path: YamlPath): string | undefined {
  return path.length === 2 ? undefined : String(path.at(-1));
}

/** An old key in a text. */
export interface OldKey {
  readonly old: string;
  readonly key: string;
  /** Path of the value, with the new key. */
  readonly path: YamlPath;
  readonly range: TextRange;
  /**
   * Other old keys of the group whose old or new name is one of its own names: they must be renamed with it, or a key
   * would occur twice.
   */
  readonly together: readonly { readonly range: TextRange; readonly key: string }[];
}

/**
 * Gives old keys in a YAML tree their new names, in place, so that everything that reads the tree only sees the new
 * ones. An old key beside its new one stays, and counts as unknown.
 */
export function renameKeys(node: unknown, path: YamlPath = []): OldKey[] {
  if (isSeq(node)) return node.items.flatMap((item, index) => renameKeys(item, [...path, index]));
  if (!isMap(node)) return [];
  const renamed = renamedIn(node, groupName(path));
  return node.items.flatMap((pair): OldKey[] => {
    const { key, value } = pair;
    if (!isScalar(key)) return [];
    const here = [...path, String(key.value)];
    const found = renameKeys(value, here);
    const own = renamed.find((each) => each.pair === pair);
    if (!own) return found;
    const together = renamed
      .filter((each) => each.key === own.old || own.key === each.old)
      .map((each) => ({ range: each.range, key: each.key }));
    return [{ old: own.old, key: own.key, path: here, range: own.range, together }, ...found];
  });
}

interface Renamed {
  readonly pair: Pair;
  readonly old: string;
  readonly key: string;
  readonly range: TextRange;
}

/** The keys to rename, in the order of the table, so that a name that has become free can be used. */
function renamedIn(node: YAMLMap, group: string | undefined): Renamed[] {
  const find = (name: string): Pair | undefined => node.items.find(({ key }) => isScalar(key) && key.value === name);
  return renamedKeys.flatMap(({ old, key: now, groups, beside }): Renamed[] => {
    const pair = group !== undefined && groups.includes(group) ? find(old) : undefined;
    if (!pair || !isScalar(pair.key) || !pair.key.range || find(now)) return [];
    if (beside !== undefined && !find(beside)) return [];
    const [start, end] = pair.key.range;
    pair.key.value = now;
    return [{ pair, old, key: now, range: { start, end } }];
  });
}
