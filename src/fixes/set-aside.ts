/** Last resort for a name that does not suit the batch: takes it off the list, to become a tag of its own. */

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
  // In a flow list, together with the comma beside it.
  if (before) return { range: { start: source.range(before.path).end, end }, text: '' };
  return next && { range: { start, end: source.range(next.path).start }, text: '' };
}
