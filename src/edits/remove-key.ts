/** Removes an entry cleanly from a map in a spec's text. */

import type { TextEdit, YamlPath } from '../core/issue.ts';
import type { SpecSource } from '../spec/yaml/source.ts';

/**
 * `undefined` if something else would go with it: a comment, the dash of a list entry or, in a block, the map itself if
 * this is its only entry.
 */
export function removeKey(source: SpecSource, path: YamlPath, siblings: number): TextEdit | undefined {
  const { text } = source;
  const start = source.keyRange(path).start;
  const { end } = source.range(path);
  const before = text.slice(0, start);
  const after = text.slice(end);
  const comma = /,\s*$/.exec(before);
  if (comma) return takingOut(text, before.length - comma[0].length, end);
  if (/\{\s*$/.test(before)) return takingOut(text, start, end + (/^\s*,\s*/.exec(after)?.[0].length ?? 0));
  const indent = /(?<=^|\n)[^\S\n]*$/.exec(before);
  const rest = /^[^\S\n]*(?:\n|$)/.exec(after);
  if (!indent || !rest || siblings === 0) return undefined;
  return takingOut(text, start - indent[0].length, end + rest[0].length);
}

function takingOut(text: string, start: number, end: number): TextEdit | undefined {
  return text.slice(start, end).includes('#') ? undefined : { range: { start, end }, text: '' };
}
