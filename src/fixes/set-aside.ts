/** Last resort for names that do not suit the batch: takes them off the list, to be made in specs of their own. */

import { lineStart } from '../core/lines.ts';
import { listedQuoted } from '../core/names.ts';
import { valueAt } from '../core/values.ts';
import type { TextEdit } from '../core/issue.ts';
import type { BatchRow } from '../spec/batch/batch.ts';
import type { SpecSource } from '../spec/yaml/source.ts';

/** Such as `“Fig” out of the batch, to be made in a spec of its own`: nothing else makes it. */
export function asideInWords(labels: readonly string[]): string {
  return `${listedQuoted(labels)} out of the batch, to be made in a spec of ${labels.length === 1 ? 'its' : 'their'} own`;
}

/** `undefined` if one of the rows takes several lines, or is of a table that has its name twice, and for all rows there are. */
export function setAside(
  source: SpecSource,
  rows: readonly BatchRow[],
  which: readonly number[],
): TextEdit[] | undefined {
  const aside = new Set(which);
  if (aside.size === rows.length) return undefined;
  if (rows[0]?.line !== undefined) return setAsideInTable(source, rows, aside);
  const edits = [...aside].map((row) => setRowAside(source, rows, row, aside));
  return edits.every((edit) => edit !== undefined) ? edits : undefined;
}

function setAsideInTable(
  source: SpecSource,
  rows: readonly BatchRow[],
  aside: ReadonlySet<number>,
): TextEdit[] | undefined {
  const names = rows.map(({ label }) => label.trim());
  const out = [...aside].sort((a, b) => a - b).map((row) => names[row]!);
  if (out.some((name) => names.indexOf(name) !== names.lastIndexOf(name))) return undefined;
  const already = (valueAt(source.value, ['batch', 'without']) ?? []) as string | number | readonly (string | number)[];
  const list = `[${[already, out]
    .flat()
    .map((name) => JSON.stringify(String(name)))
    .join(', ')}]`;
  const batch = source.range(['batch']);
  const edit =
    typeof valueAt(source.value, ['batch']) === 'string'
      ? { range: batch, text: `{table: ${source.text.slice(batch.start, batch.end)}, without: ${list}}` }
      : source.setKey(['batch'], 'without', list);
  return edit && [edit];
}

function setRowAside(
  source: SpecSource,
  rows: readonly BatchRow[],
  row: number,
  aside: ReadonlySet<number>,
): TextEdit | undefined {
  const [at, before] = [rows[row], rows[row - 1]];
  if (!at || at.path.length < 2) return undefined;
  const { text } = source;
  const { start, end } = source.range(at.path);
  const dash = /^[ \t]*(-[ \t]+)$/m.exec(text.slice(lineStart(text, start), start));
  if (dash) {
    const from = start - dash[1]!.length;
    return text.slice(start, end).includes('\n') ? undefined : { range: { start: from, end: from }, text: '# ' };
  }
  // In a flow list, together with the comma beside it: the one before, unless all before it go too.
  const hasBefore = rows.slice(0, row).some((_, index) => !aside.has(index));
  if (before && hasBefore) return { range: { start: source.range(before.path).end, end }, text: '' };
  const next = rows[row + 1];
  return next && { range: { start, end: source.range(next.path).start }, text: '' };
}
