/** Entries of groups as text: what is written, and taking one out. */

import type { TextEdit, TextRange, YamlPath } from '../../core/issue.ts';
import type { SpecSource } from '../source.ts';

/** From the key to the end of the value; `undefined` where either is missing. */
export function entryRange(source: SpecSource, path: YamlPath): TextRange | undefined {
  const [key, value] = [source.keyRange(path), source.range(path)];
  return value.start > key.end ? { start: key.start, end: value.end } : undefined;
}

/** The value as it is written; `undefined` for one that takes more than a line. */
export function writtenValue(source: SpecSource, path: YamlPath): string | undefined {
  const { start, end } = source.range(path);
  const text = source.text.slice(start, end);
  return entryRange(source, path) && !text.includes('\n') ? text : undefined;
}

/** Takes an entry out, with the comma or the line that is then no use. */
export function takenOut({ text }: SpecSource, { start, end }: TextRange): TextEdit | undefined {
  const [before, after] = [text.slice(0, start), text.slice(end)];
  // On its own line only: the comma that ends the value above may be lettering.
  const comma = /,[^\S\n]*$/.exec(before)?.[0].length;
  const next = /^[^\S\n]*,\s*/.exec(after)?.[0].length;
  const indent = /(?:^|\n)([^\S\n]*)$/.exec(before)?.[1]!.length;
  const lineEnd = /^[^\S\n]*(?:\r?\n|$)/.exec(after)?.[0].length;
  if (comma !== undefined) return { range: { start: start - comma, end }, text: '' };
  if (next !== undefined) return { range: { start, end: end + next }, text: '' };
  if (indent === undefined || lineEnd === undefined) return undefined;
  return { range: { start: start - indent, end: end + lineEnd }, text: '' };
}
