/** Entries of groups as text: reading and removing them. */

import type { TextEdit, TextRange, YamlPath } from '../../core/issue.ts';
import type { SpecSource } from '../yaml/source.ts';

/** Range from the key to the end of the value; `undefined` if either is missing. */
export function entryRange(source: SpecSource, path: YamlPath): TextRange | undefined {
  const [key, value] = [source.keyRange(path), source.range(path)];
  return value.start > key.end ? { start: key.start, end: value.end } : undefined;
}

/** The value as written; `undefined` if it takes more than one line. */
export function writtenValue(source: SpecSource, path: YamlPath): string | undefined {
  const { start, end } = source.range(path);
  const text = source.text.slice(start, end);
  return entryRange(source, path) && !text.includes('\n') ? text : undefined;
}

/** Removes an entry, with the comma or the line that is no longer needed. */
export function takenOut({ text }: SpecSource, { start, end }: TextRange): TextEdit | undefined {
  const [before, after] = [text.slice(0, start), text.slice(end)];
  // On its own line only: a comma that ends the value above may be part of the lettering.
  const comma = /,[^\S\n]*$/.exec(before)?.[0].length;
  const next = /^[^\S\n]*,\s*/.exec(after)?.[0].length;
  const indent = /(?:^|\n)([^\S\n]*)$/.exec(before)?.[1]!.length;
  const lineEnd = /^[^\S\n]*(?:\r?\n|$)/.exec(after)?.[0].length;
  if (comma !== undefined) return { range: { start: start - comma, end }, text: '' };
  if (next !== undefined) return { range: { start, end: end + next }, text: '' };
  if (indent === undefined || lineEnd === undefined) return undefined;
  return { range: { start: start - indent, end: end + lineEnd }, text: '' };
}
