/** A column of a batch that says how many are wanted, which nobody reads: a batch makes one tag of each row. */

import { clip } from '../../core/length.ts';
import type { Batch } from '../batch/batch.ts';
import { saysHowMany } from '../batch/quantity-columns.ts';
import type { Problems } from './problems.ts';

/** `asked`: the columns that the spec asks for. */
export function reportUncounted({ row: read }: Problems, asked: ReadonlySet<string>): void {
  if (!read) return;
  const { batch, table, problems } = read;
  const { rows } = batch;
  const column = uncountedColumn(batch, asked);
  if (column === undefined) return;
  const message = `Nothing uses the column “${clip(column)}”: a batch makes one tag of each row. A job makes as many as its table of orders says.`;
  const path = rows.find(({ cells }) => Number(cells.get(column)) > 1)?.places?.get(column) ?? ['batch'];
  problems.error('odd-value', path, message, { severity: 'warning' });
  if (table) {
    const range = table.places().cell(1, table.header.indexOf(column));
    problems.inTable.push({ code: 'odd-value', severity: 'warning', path, message, range });
  }
}

export function uncountedColumn(
  { rows, columns }: Pick<Batch, 'rows' | 'columns'>,
  asked: ReadonlySet<string>,
): string | undefined {
  return columns.find((each) => {
    const cells = rows.map((row) => row.cells.get(each) ?? '');
    return !asked.has(each) && saysHowMany(each, cells) === 'surely' && cells.some((cell) => Number(cell) > 1);
  });
}
