/** Signature help inside lists of numbers: which number is at the offset. */

import { inline } from '../hover/docs.ts';
import { placesAt } from './cursor-context.ts';
import { nodesAt, schemasAt } from '../schema.ts';

export interface Signature {
  readonly label: string;
  /** Ranges within the label. */
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
  const node = schemasAt(list).find(({ title }) => title === 'Size');
  const key = list.findLast((step) => typeof step === 'string');
  if (!node || key === undefined) return undefined;
  // The points of a polygon are right and down; every other list of two numbers is a size.
  const names = list.at(-2) === 'points' ? ['right', 'down'] : ['width', 'height'];
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
