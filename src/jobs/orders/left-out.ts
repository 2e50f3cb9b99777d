/** Why tags of a job cannot be cut, in words. */

import type { Report } from '../../engine/engine.ts';
import { isError } from '../../core/issue.ts';
import type { Issue } from '../../core/issue.ts';
import { clip } from '../../core/length.ts';
import { listed } from '../../core/names.ts';
import { counted } from '../../core/units.ts';
import { valueAt } from '../../core/values.ts';
import { columnsIn, labelOf } from '../../spec/batch/batch.ts';
import { cellRange } from '../../spec/files/table.ts';
import type { OrderLine } from './orders.ts';

/** What a job needs to know of a tag that is made. */
export type MadeTag = Pick<Report, 'row' | 'issues' | 'source' | 'tag' | 'batch'> & Partial<Pick<Report, 'files'>>;

/** A sheet that the spec names is not what the job cuts from. */
export function keepsFromCutting(issue: Issue): boolean {
  return isError(issue) && issue.code !== 'exceeds-sheet';
}

export function whyOf({ issues, source }: MadeTag): string {
  const errors = issues.filter(keepsFromCutting);
  const [first] = errors;
  if (!first) return 'there is nothing to cut.';
  const { line } = source.position(first.range.start);
  const more = errors.length > 1 ? ` And ${errors.length - 1} more.` : '';
  return `line ${line}: ${first.message}${more}`;
}

/** Whether the spec has the same fault whatever the lines contain: several different tags, and one reason. */
export function isOneFault(reports: readonly MadeTag[]): boolean {
  const isText = reports.every(({ tag }) => tag === undefined);
  return reports.length > 1 && new Set(reports.map(whyOf)).size === 1 && (isText || new Set(reports).size > 1);
}

/**
 * An empty cell that the spec refers to is the likeliest fault; else the cell that stands in the faulty value, or the first
 * that the spec refers to. `columns`: those cells' columns.
 */
export function faultOfLine(
  { row, line, order }: OrderLine,
  report: MadeTag,
  {
    csv,
    header,
    columns,
    spec,
  }: {
    readonly csv: string;
    readonly header: readonly string[];
    readonly columns: readonly string[];
    readonly spec: string;
  },
): Issue {
  const empty = columns.find((column) => row.cells.get(column) === '');
  const fault = report.issues.find(keepsFromCutting);
  const column = empty ?? (fault && columnOf(fault, report)) ?? columns[0];
  const code = empty === undefined ? (fault?.code ?? 'bad-value') : 'missing-key';
  const who = order === '' ? `“${clip(row.label)}”` : `Order ${clip(order)}`;
  const what = empty === undefined ? ` (“${clip(row.label)}”) cannot be cut` : ` has no “${clip(empty)}”`;
  const why = empty === undefined ? `: ${spec}, ${whyOf(report)}` : '.';
  const message = `${who}${what} and is left out${why}`;
  const range = cellRange(csv, line, column === undefined ? 0 : header.indexOf(column));
  return { code, severity: 'error', path: [], range, message };
}

/** The column that the faulty value is filled from. */
function columnOf({ path }: Issue, { source }: MadeTag): string | undefined {
  const written = valueAt(source.value, path);
  return typeof written === 'string' ? columnsIn(written)[0]?.column : undefined;
}

/** More labels are given as a count. */
const mostNames = 4;

/** Such as `2 tags of labels.tag.yaml (“Rue” and “Kale”) cannot be cut and are left out`. `count`: of all tags of the spec. */
export function leftOutInWords(spec: string, faulty: readonly MadeTag[], count: number): string {
  const who = faulty.map((report) => labelOf(report)).filter((label) => label !== undefined);
  if (who.length === 0 || count === 1) return `${spec} cannot be cut and is left out`;
  const are = faulty.length === 1 ? 'is' : 'are';
  return `${counted(faulty.length, 'tag')} of ${spec} (${listed(who, mostNames)}) cannot be cut and ${are} left out`;
}
