/** The way out for a name that a batch does not suit: it is taken off the list, for a tag of its own. */

import { lineStart } from '../core/lines.ts';
import type { TextEdit } from '../core/issue.ts';
import type { BatchRow } from '../spec/batch.ts';
import type { SpecSource } from '../spec/source.ts';

/** `undefined` for the only row, and for one that comes from a table. */
export function setAside(source: SpecSource, rows: readonly BatchRow[], row: number): TextEdit | undefined {
  const [at, next, before] = [rows[row], rows[row + 1], rows[row - 1]];
  if (!at || at.path.length < 2 || rows.length < 2) return undefined;
  const { text } = source;
  const { start, end } = source.range(at.path);
  const dash = /^[ \t]*(-[ \t]+)$/m.exec(text.slice(lineStart(text, start), start));
  if (dash) {
    const from = start - dash[1]!.length;
    return text.slice(start, end).includes('\n') ? undefined : { range: { start: from, end: from }, text: '# ' };
  }
  // Between brackets, with the comma that parts it from its neighbour.
  if (before) return { range: { start: source.range(before.path).end, end }, text: '' };
  return next && { range: { start, end: source.range(next.path).start }, text: '' };
}
