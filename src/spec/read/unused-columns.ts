/** Columns of a batch that the spec does not use: all tags come out alike, or without what a row says. */

import { columnsInWords, columnsOf, textsIn } from '../batch/batch.ts';
import type { Batch } from '../batch/batch.ts';
import { isGroup } from '../../core/values.ts';
import { clip } from '../../core/length.ts';
import type { Issue } from '../../core/issue.ts';
import type { Uses } from '../files/used-files.ts';
import type { SpecPlaces } from '../yaml/source.ts';
import { uncountedColumn } from './uncounted.ts';

/** A table may have columns for others, such as addresses, so only those of a list are told one by one. */
export function unusedColumns(source: SpecPlaces, { used, table }: Uses, { rows, columns }: Batch): Issue[] {
  const asked = columnsOf(source, used);
  const onTag = columnsOf(source, used, textsButTitle);
  if (rows.length > 1 && !columns.some((column) => onTag.has(column))) {
    const message = `Nothing on the tag uses a column of its batch, such as “{${clip(columns[0]!)}}”: all ${rows.length} tags are alike.`;
    const path = ['batch'];
    return [{ code: 'odd-value', severity: 'warning', path, range: source.keyRange(path), message }];
  }
  if (table) return [];
  // The first tells the rows apart, which is enough where no words come from them.
  const mayName = ![...columnsInWords(source, used)].some((column) => columns.includes(column));
  const counted = uncountedColumn({ rows, columns }, asked);
  return columns
    .filter((column) => !asked.has(column) && column !== counted && !(mayName && column === columns[0]))
    .map((column) => {
      const path = rows.find(({ places }) => places?.has(column))!.places!.get(column)!;
      const message = `Nothing uses the column “${clip(column)}” of the batch: no text has “{${clip(column)}}” in it.`;
      return { code: 'odd-value', severity: 'info', path, range: source.range(path), message };
    });
}

/** A title is not on the tag. */
function textsButTitle(value: unknown): string[] {
  return isGroup(value) ? textsIn({ ...value, title: undefined }) : textsIn(value);
}
