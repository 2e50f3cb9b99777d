/** Cells of a table that are in no column: most often a text has a comma in it. */

import type { Issue } from '../../core/issue.ts';
import { clip } from '../../core/length.ts';
import { listedQuoted } from '../../core/names.ts';
import type { BatchRow } from './batch.ts';

/** What is said of them, if a row has any. `table`: its name, as written. */
export function beyondColumns(
  { label, line, beyond }: Pick<BatchRow, 'label' | 'line' | 'beyond'>,
  table: string,
): Pick<Issue, 'code' | 'severity' | 'message'> | undefined {
  if (line === undefined || !beyond) return undefined;
  const cells = listedQuoted(beyond.map((cell) => clip(cell)));
  const message = `“${clip(label)}” has more cells than there are columns: ${cells} ${beyond.length === 1 ? 'is' : 'are'} left out (line ${line} of “${table}”). A text that has the separator in it needs quotation marks.`;
  return { code: 'odd-value', severity: 'warning', message };
}
