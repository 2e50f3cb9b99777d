/** Help inside lists of figures: which figure comes at the offset. */

import type { YamlPath } from '../issue.ts';
import { inline } from './docs.ts';
import { placesAt } from './place.ts';
import { isLength, nodesAt, schemasAt, schemasUnder } from './schema.ts';
import type { SchemaNode } from './schema.ts';

export interface Signature {
  readonly label: string;
  /** Stretches of the label. */
  readonly parameters: readonly (readonly [start: number, end: number])[];
  readonly active: number;
  /** Markdown from the schema. */
  readonly docs: string;
}

export function signatureAt(text: string, offset: number): Signature | undefined {
  const place = placesAt(text, offset).find(({ role }) => role === 'value');
  const index = place?.path.at(-1);
  if (!place?.flow || typeof index !== 'number') return undefined;
  const list = place.path.slice(0, -1);
  const node = schemasAt(list).find((each) => isFixedList(each));
  const key = list.findLast((step) => typeof step === 'string');
  if (!node || key === undefined) return undefined;
  const names = partNames(node, list);
  const start = `${key}: [`;
  let at = start.length;
  const parameters = names.map((name) => {
    const from = at;
    at += name.length + 2;
    return [from, from + name.length] as const;
  });
  const example = nodesAt(list)[0]?.examples?.[0] ?? node.examples?.[0];
  const docs = [
    nodesAt(list)[0]?.description ?? '',
    example === undefined ? '' : `Example: \`${key}: ${inline(example)}\``,
  ];
  return {
    label: `${start}${names.join(', ')}]`,
    parameters,
    active: Math.min(index, names.length - 1),
    docs: docs.filter((part) => part !== '').join('\n\n'),
  };
}

function isFixedList({ items, maxItems = Infinity }: SchemaNode): boolean {
  return Array.isArray(items) && maxItems === items.length;
}

/** `[width, height]` where the schema calls it so; the corners of a polygon go right and down. */
function partNames(node: SchemaNode, list: YamlPath): string[] {
  if (list.at(-2) === 'points') return ['right', 'down'];
  const named = /^\[([\w, ]+)\]/.exec(node.description ?? '')?.[1]?.split(', ');
  return named ?? [0, 1].filter((index) => schemasUnder([node], index).some(isLength)).map(() => 'length');
}
