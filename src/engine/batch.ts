/** All tags of a batch: each computed as a tag of its own, and what is wrong with them told once for all. */

import { listed } from '../core/names.ts';
import type { ComputeOptions, Engine, Report } from './engine.ts';
import { causeOf, inOrder, severityRank } from '../core/issue.ts';
import type { Issue } from '../core/issue.ts';
import { labelOf } from '../spec/batch.ts';

/** Of a spec without a batch there is one. */
export function rowCount({ batch }: Pick<Report, 'batch'>): number {
  return batch?.rows.length ?? 1;
}

/** What is kept of a tag that nobody looks at. */
export type RowIssues = Pick<Report, 'row' | 'issues' | 'batch'>;

/**
 * The reports of all rows in order, `report` among them, each made when it is asked for: whoever keeps none holds the memory of
 * one. Rejects with the signal's reason once that is aborted.
 * @param before Waited for before each row: others may be in more of a hurry.
 */
export async function* eachReport(
  engine: Engine,
  report: Report,
  options: ComputeOptions,
  before: () => Promise<unknown> = () => Promise.resolve(),
): AsyncGenerator<Report> {
  for (let row = 0; row < rowCount(report); row++) {
    await before();
    yield row === report.row ? report : await engine.compute(report.source.text, { ...options, row });
  }
}

/** The same, all of them. */
export async function reportsOf(...asked: Parameters<typeof eachReport>): Promise<Report[]> {
  const reports: Report[] = [];
  for await (const report of eachReport(...asked)) reports.push(report);
  return reports;
}

/** All of a batch: the report with what is wrong with any of its tags, and the tags' own reports. */
export async function checkBatch(
  engine: Engine,
  report: Report,
  options: ComputeOptions,
): Promise<{ readonly report: Report; readonly all: readonly Report[] }> {
  if (rowCount(report) === 1) return { report, all: [report] };
  const all = await reportsOf(engine, report, options);
  return { report: { ...report, issues: issuesOfBatch(report, all) }, all };
}

/** The report that an issue was found in: it may be that of another row than the one drawn. */
export async function reportOf(engine: Engine, report: Report, issue: Issue, options: ComputeOptions): Promise<Report> {
  const { row = report.row } = issue;
  return row === report.row ? report : engine.compute(report.source.text, { ...options, row });
}

/**
 * Everything that is wrong with the tag that is shown; and of the others, for each cause the gravest case and who else has it.
 * What changes the cause changes all of them, so forty names are one more finding at a line and not forty.
 */
export function issuesOfBatch(shown: RowIssues, all: readonly RowIssues[]): Issue[] {
  const told = new Set(shown.issues.map(wordsOf));
  const cases = new Map<string, Case[]>();
  for (const report of all) {
    if (report.row === shown.row) continue;
    // What is wrong whatever the row says has been told.
    for (const issue of report.issues.filter((each) => !told.has(wordsOf(each)))) {
      const cause = causeOf(issue);
      cases.set(cause, [...(cases.get(cause) ?? []), { issue, report }]);
    }
  }
  return inOrder([...shown.issues, ...[...cases.values()].map(gravest)]);
}

interface Case {
  readonly issue: Issue;
  readonly report: RowIssues;
}

function wordsOf({ code, range, message }: Issue): string {
  return JSON.stringify([code, range, message]);
}

function gravest(cases: readonly Case[]): Issue {
  const { issue, report } = cases.reduce((a, b) => (isGraver(b.issue, a.issue) ? b : a));
  const label = labelOf(report)!;
  const others = [...new Set(cases.map((each) => labelOf(each.report)!))].filter((each) => each !== label);
  const quoted = others.map((each) => `“${each}”`);
  const also = others.length === 0 ? '' : ` Likewise ${listed(quoted, mostNames)}.`;
  return { ...issue, row: report.row, message: `${named(label, issue.message)}${also}` };
}

/** A message that begins with the name says it once. */
function named(label: string, message: string): string {
  return message.startsWith(`“${label}”`) ? message : `“${label}”: ${message}`;
}

function isGraver(a: Issue, b: Issue): boolean {
  if (a.severity !== b.severity) return severityRank[a.severity] > severityRank[b.severity];
  return (a.width ?? Infinity) < (b.width ?? Infinity);
}

/** Names beyond these are counted. */
const mostNames = 5;
