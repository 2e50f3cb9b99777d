/** Cells of the table that leave words empty, wholly or in part, and those that are in no column. */

import type { Issue, YamlPath } from '../../core/issue.ts';
import { clip } from '../../core/length.ts';
import { beyondColumns } from '../batch/beyond-columns.ts';
import { columnsIn, filled } from '../batch/batch.ts';
import type { Problems } from './problems.ts';

/** Reports an empty text where it is written, or in the row that leaves it empty. `plain`: the message without a row. */
export function reportEmpty(written: string, path: YamlPath, problems: Problems, plain = 'The text is empty.'): void {
  if (written.trim() === '' || !problems.row) problems.error('bad-value', path, plain);
  else {
    const [asked] = columnsIn(written);
    const message = `${inRow(written, problems.row)}.`;
    reportAtRow(problems.row, asked?.column, { code: 'not-filled', severity: 'error', message });
  }
}

/**
 * Reports lines of a text of which an empty cell leaves only the words around it, “sown {month}” without a month, or words or
 * signs that lead to nothing, “{kind}, sown {month}”; not “{first} {last}” without a last name.
 */
export function reportGaps(written: string, { row }: Problems): void {
  if (!row) return;
  for (const line of written.split(/\r\n|\n/)) {
    const gap = gapIn(line, row);
    if (!gap || !/[\p{L}\p{N}]/u.test(gap.left) || (gap.isPartly && !gap.isDangling)) continue;
    const rest = gap.isPartly
      ? 'Fill the cell, or move the words that lead to it into its column.'
      : 'As an entry of “lines” with “optional: true” the line would be left out.';
    const message = `${inRow(line, row, gap.column)}, and only “${clip(gap.left)}” is left. ${rest}`;
    reportAtRow(row, gap.column, { code: 'not-filled', severity: 'warning', message });
  }
}

/** Reports a code that an empty cell leaves incomplete: nobody who looks at it sees that it leads nowhere. */
export function reportIncompleteCode(written: string, { row }: Problems): void {
  const gap = row && gapIn(written, row);
  if (!gap) return;
  const message = `${inRow(written, row, gap.column)}: the code would say only “${clip(gap.left)}”.`;
  reportAtRow(row, gap.column, { code: 'not-filled', severity: 'error', message });
}

/** Reports what a list or a shape lacks because of an empty cell. */
export function reportLacking(path: YamlPath, column: string, { row }: Problems): void {
  if (!row) return;
  const what = path.findLast((step) => typeof step === 'string');
  const message = `${inRow(`{${column}}`, row)}, and “${clip(what ?? '')}” cannot do without.`;
  reportAtRow(row, column, { code: 'bad-value', severity: 'error', message });
}

/** Reports cells of a table that are in no column. */
export function reportBeyond({ row: read }: Problems): void {
  if (!read?.table) return;
  const { row, table, problems } = read;
  const found = beyondColumns(row, table.name);
  if (!found) return;
  const { code, severity, message } = found;
  const path = ['batch', 'beyond'];
  problems.error(code, path, message, { severity, range: problems.source.range(['batch']) });
  problems.inTable.push({ ...found, path, range: table.places().cell(row.line!, table.header.length) });
}

type ReadRow = NonNullable<Problems['row']>;

/** What empty cells leave of a text. */
interface Gap {
  readonly left: string;
  /** That of the first empty cell. */
  readonly column: string;
  /** Whether other cells fill the rest. */
  readonly isPartly: boolean;
  /** Whether words or signs of the text stand between it and whatever is filled, and now lead to nothing. */
  readonly isDangling: boolean;
}

/** `undefined` if no cell is empty, or nothing is left. */
function gapIn(written: string, { row, batch }: ReadRow): Gap | undefined {
  const places = columnsIn(written);
  const asked = places.map(({ column }) => column);
  const isEmpty = (column: string): boolean => (row.cells.get(column) ?? '').trim() === '';
  const column = asked.find(isEmpty);
  if (column === undefined || !asked.every((each) => batch.columns.includes(each))) return undefined;
  const left = filled(written, row, () => undefined)?.trim();
  if (!left) return undefined;
  // From brace to brace, and from the first and the last to the ends.
  const between = [0, ...places.map(({ end }) => end + 1)].map((from, index) =>
    written.slice(from, (places[index]?.start ?? written.length + 1) - 1),
  );
  const isDangling = asked.some((each, index) => {
    if (!isEmpty(each)) return false;
    const [before, after] = [between[index]!, between[index + 1]!];
    const leadsOn = [index > 0 && before.trim() === '', index < asked.length - 1 && after.trim() === ''];
    return !leadsOn.includes(true) && `${before}${after}`.trim() !== '';
  });
  return { left, column, isPartly: !asked.every(isEmpty), isDangling };
}

/** “Sorrel” leaves {sown} empty (line 2 of “names.csv”). */
function inRow(written: string, { row: { label, line }, table }: ReadRow, column?: string): string {
  const what =
    column === undefined ? clip(written) : `{${clip(column)}}${isAlone(written) ? '' : ` in “${clip(written)}”`}`;
  const where = table && line !== undefined ? ` (line ${line} of “${table.name}”)` : '';
  return `“${clip(label)}” leaves ${what} empty${where}`;
}

const isAlone = (written: string): boolean => /^\s*\{[^{}]*\}\s*$/.test(written);

/** In the list of the spec at the row, in a table at the cell as well. */
function reportAtRow(
  { row: { line, path }, table, problems }: ReadRow,
  column: string | undefined,
  issue: Pick<Issue, 'code' | 'severity' | 'message'>,
): void {
  const { code, message, severity } = issue;
  // What different columns leave empty has different causes, although the spec has one place for the table.
  const cause = table && column !== undefined ? [...path, column] : path;
  problems.error(code, cause, message, { severity, range: problems.source.range(path) });
  if (!table || line === undefined || column === undefined) return;
  problems.inTable.push({ ...issue, path: cause, range: table.places().cell(line, table.header.indexOf(column)) });
}
