/** Adds a key to a spec below what it says of the tag as a whole, above its shapes. */

import { lastLineEnd, newLineOf } from '../core/lines.ts';
import type { TextEdit } from '../core/issue.ts';
import type { SpecSource } from '../spec/yaml/source.ts';

const above = ['tagwright', 'title', 'units', 'use', 'stocks', 'stock', 'ties', 'tie'];

/** `value` is YAML on one line. `undefined` if the spec is no map or has the key. */
export function addAboveShapes(source: SpecSource, key: string, value: string): TextEdit | undefined {
  const { text, tree } = source;
  if (tree?.kind !== 'map' || tree.entries.some((entry) => entry.key.value === key)) return undefined;
  const head = tree.entries.filter((entry) => above.includes(String(entry.key.value))).at(-1);
  if (tree.flow || !head) return source.setKey([], key, value);
  const end = lastLineEnd(text, head.value?.range ?? head.key.range);
  return { range: { start: end, end }, text: `${newLineOf(text)}${key}: ${value}` };
}
