/** Turns a text into a batch: of the names that it lists, or starting with the one it has. */

import { newLineOf } from '../../core/lines.ts';
import type { TextEdit } from '../../core/issue.ts';
import { nameColumn } from '../../spec/batch/batch.ts';
import type { SpecSource } from '../../spec/yaml/source.ts';
import type { SpecScalar } from '../../spec/yaml/tree.ts';
import type { Refactoring } from './refactoring.ts';
import { yamlText } from '../completion/snippets.ts';
import { isGroup } from '../../core/values.ts';
import { namesIn } from '../names-of-batch.ts';
import { valuesIn } from '../values-with-schema.ts';

/** `undefined` if there is no text at the offset, or a batch already. */
export function intoBatch(source: SpecSource, offset: number): Refactoring | undefined {
  const text = textAt(source, offset);
  if (!text || !isGroup(source.value) || 'batch' in source.value) return undefined;
  const names = namesIn(String(text.value));
  const batch = batchEdit(source, names);
  if (names.length === 0 || !names.every(mayBeName) || !batch) return undefined;
  const { start, end } = text.range;
  const range = { start, end: start + source.text.slice(start, end).trimEnd().length };
  const title =
    names.length > 1 ? `Make a batch of these ${names.length} names` : `Make a batch that begins with “${names[0]!}”`;
  return { kind: 'rewrite', title, edits: [batch, { range, text: `"{${nameColumn}}"` }] };
}

function textAt({ tree }: SpecSource, offset: number): SpecScalar | undefined {
  const found = [...valuesIn(tree)].find(({ node: { kind, range }, path }) => {
    return kind === 'scalar' && path.at(-1) === 'text' && range.start <= offset && offset <= range.end;
  });
  return found?.node as SpecScalar | undefined;
}

/** Prices, dates, sums and phrases with figures in them are none; “Table 4” and “12” are. */
function mayBeName(text: string): boolean {
  if (/\p{Sc}/u.test(text) || /\d\s*[./:×%-]\s*\d|%/.test(text)) return false;
  return !/\p{N}/u.test(text) || !/\p{No}|\b(1[89]|20)\d\d\b|(^|\s)\p{Ll}/u.test(text);
}

/** Above the shapes, and above the comment that belongs to them. */
function batchEdit(source: SpecSource, names: readonly string[]): TextEdit | undefined {
  const { text, tree } = source;
  if (tree?.kind !== 'map') return undefined;
  const entries = names.map(yamlText);
  if (tree.flow) return source.setKey([], 'batch', `[${entries.join(', ')}]`);
  const below = tree.entries.find(({ key }) => key.value === 'shapes' || key.value === 'pieces');
  if (!below) return undefined;
  const above = text.slice(0, below.key.range.start);
  const start = above.length - (/(?:^[ \t]*#.*\r?\n)+$/m.exec(above)?.[0].length ?? 0);
  const newLine = newLineOf(text);
  const lines = ['batch:', ...entries.map((entry) => `  - ${entry}`), '', ''];
  return { range: { start, end: start }, text: lines.join(newLine) };
}
