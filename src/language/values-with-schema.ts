/** Walks all values of a spec's text together with the schema nodes that describe them. */

import type { YamlPath } from '../core/issue.ts';
import type { SpecNode } from '../spec/yaml/tree.ts';
import { rootSchemas, schemasUnder } from './schema.ts';
import type { SchemaNode } from './schema.ts';

export interface ValueWithSchema {
  readonly node: SpecNode;
  readonly path: YamlPath;
  readonly schemas: readonly SchemaNode[];
}

/** In text order, a group before its contents. */
export function* valuesIn(
  node: SpecNode | undefined,
  schemas: readonly SchemaNode[] = rootSchemas,
  path: YamlPath = [],
): Generator<ValueWithSchema> {
  if (!node) return;
  yield { node, path, schemas };
  if (node.kind === 'map') {
    for (const { key, value } of node.entries) {
      const step = String(key.value);
      yield* valuesIn(value, schemasUnder(schemas, step), [...path, step]);
    }
  } else if (node.kind === 'list') {
    for (const [index, item] of node.items.entries())
      yield* valuesIn(item, schemasUnder(schemas, index), [...path, index]);
  }
}
