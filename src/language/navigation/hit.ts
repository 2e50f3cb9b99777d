/** Hit test: the word of a spec at an offset of its text. */

import type { TextRange, YamlPath } from '../../core/issue.ts';
import type { SpecNode, SpecScalar } from '../../spec/yaml/tree.ts';

export interface Hit {
  /** Path of the value that the word is, or is the key of. */
  readonly path: YamlPath;
  readonly on: 'key' | 'value';
  readonly word: SpecScalar;
  readonly range: TextRange;
}

/** `undefined` between words. */
export function hitAt(tree: SpecNode | undefined, offset: number, path: YamlPath = []): Hit | undefined {
  if (!tree || !holds(tree.range, offset)) return undefined;
  switch (tree.kind) {
    case 'scalar':
      return { path, on: 'value', word: tree, range: tree.range };
    case 'alias':
      return undefined;
    case 'list': {
      const index = tree.items.findIndex((item) => item && holds(item.range, offset));
      return index < 0 ? undefined : hitAt(tree.items[index], offset, [...path, index]);
    }
    case 'map': {
      const entry = tree.entries.find(
        ({ key, value }) => holds(key.range, offset) || (value && holds(value.range, offset)),
      );
      if (!entry) return undefined;
      const inner = [...path, String(entry.key.value)];
      if (holds(entry.key.range, offset)) return { path: inner, on: 'key', word: entry.key, range: entry.key.range };
      return hitAt(entry.value, offset, inner);
    }
  }
}

function holds({ start, end }: TextRange, offset: number): boolean {
  return start <= offset && offset <= end;
}
