/** The text with a value at a path: missing groups on the way are added, and everything else is left as it is. */

import { withEdits } from '../core/issue.ts';
import type { YamlPath } from '../core/issue.ts';
import { SpecSource } from '../spec/yaml/source.ts';
import { valueAt } from '../core/values.ts';

/** `undefined` if the text has no place for it. */
export function withValue(text: string, path: YamlPath, value: string): string | undefined {
  const source = new SpecSource(text);
  for (let depth = path.length - 1; depth >= 0; depth--) {
    const parent = path.slice(0, depth);
    const there = valueAt(source.value, parent);
    if (typeof there !== 'object' || there === null) continue;
    const key = String(path[depth]);
    const rest = path.slice(depth + 1).reduceRight<string>((inner, step) => `{${step}: ${inner}}`, value);
    // A key without a value would end up in the text twice.
    if ((there as Record<string, unknown>)[key] === null) return undefined;
    const edit = source.setKey(parent, key, rest);
    return edit && withEdits(text, [edit]);
  }
  return undefined;
}
