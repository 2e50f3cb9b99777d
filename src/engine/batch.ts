/** The tags of a batch: each is computed as a tag of its own, and problems they share are reported once. */

import { listedQuoted } from '../core/names.ts';
import { withRanges } from './engine.ts';
import type { ComputeOptions, Engine, Report } from './engine.ts';
import { judgeIssues } from './severity.ts';
import type { Severities } from './severity.ts';
import { unevenHanging } from '../checks/uneven-hanging.ts';
import { keptSmall, unevenSizes } from '../checks/uneven-sizes.ts';
import { acceptComments } from '../spec/accept-comments.ts';
import { causeOf, inOrder, severityRank } from '../core/issue.ts';
import type { Issue } from '../core/issue.ts';
import { labelOf } from '../spec/batch/batch.ts';

/** 1 for a spec without a batch. */
export function rowCount({ batch }: Pick<Report, 'batch'>): number {
  return batch?.rows.length ?? 1;
}

/** The part of a report that is kept for a tag that is not on show. */
export type RowIssues = Pick<Report, 'row' | 'issues' | 'batch' | 'alike'>;

/**
 * The reports of all rows in order, `report` among them, each computed on demand: a caller that keeps none holds only
 * one in memory. Rejects with the signal's reason once that is aborted.
 * @param before Awaited before each row, so that more urgent work can go first.
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

/** Collects everything that `eachReport` yields. */
export async function reportsOf(...asked: Parameters<typeof eachReport>): Promise<Report[]> {
  const reports: Report[] = [];
  for await (const report of eachReport(...asked)) reports.push(report);
  return reports;
}

/** Checks a whole batch: the report with the problems of all its tags, and each tag's own report. */
export async function checkBatch(
  engine: Engine,
  report: Report,
  options: ComputeOptions,
): Promise<{ readonly report: Report; readonly all: readonly Report[] }> {
  if (rowCount(report) === 1) return { report, all: [report] };
  const all = await reportsOf(engine, report, options);
  return { report: ofBatch(report, all, options), all };
}

/** The report with what is wrong with its whole batch: on the other tags, and with all of them together. */
export function ofBatch(
  report: Report,
  all: readonly RowIssues[],
  { severities = {}, joined = false }: { readonly severities?: Severities; readonly joined?: boolean },
): Report {
  const { source, tag, shared = [] } = report;
  const labelIn = (row: number): string => labelOf({ ...report, row }) ?? '';
  const rows = all.map(({ row, alike: { fitted, hung } = { fitted: [], hung: [] } }) => {
    return { row, label: labelIn(row), fitted, hung };
  });
  const labels = Array.from({ length: rowCount(report) }, (_, row) => labelIn(row));
  const small = tag ? keptSmall(shared, tag, labels) : [];
  const together = withRanges([...unevenSizes(rows), ...small, ...unevenHanging(rows)], source, tag?.units ?? 'mm');
  const comments = acceptComments(source.text);
  const judged = judgeIssues(together, source, comments, severities, false);
  const found = judged.issues
    .filter(({ code }) => code !== 'odd-comment')
    .map(({ row, ...issue }): Issue => (row === undefined || row === report.row ? issue : { ...issue, row }));
  return {
    ...report,
    issues: inOrder([...issuesOfBatch(report, all, { joined }), ...found]),
    accepted: [...report.accepted, ...judged.accepted],
  };
}

/** The report in which an issue was found, possibly of another row than the one drawn. */
export async function reportOf(engine: Engine, report: Report, issue: Issue, options: ComputeOptions): Promise<Report> {
  const { row = report.row } = issue;
  return row === report.row ? report : engine.compute(report.source.text, { ...options, row });
}

/**
 * All issues of the tag shown and, for each further cause among the others, the gravest case and which tags share it.
 * One change to the cause fixes all of them, so a problem of forty names is one line, not forty.
 * @param how With `joined`, where the tag shown has the problem no less, it says which others have it too.
 */
export function issuesOfBatch(
  shown: RowIssues,
  all: readonly RowIssues[],
  { joined = false }: { readonly joined?: boolean } = {},
): Issue[] {
  const whateverRow = sameInAll(all);
  const cases = new Map<string, RowCase[]>();
  for (const report of all) {
    if (report.row === shown.row) continue;
    for (const issue of report.issues.filter((each) => !whateverRow.has(issueKey(each)))) {
      const cause = causeOf(issue);
      cases.set(cause, [...(cases.get(cause) ?? []), { issue, report }]);
    }
  }
  if (!joined) return inOrder([...shown.issues, ...[...cases.values()].map(mostSevere)]);
  const label = labelOf(shown);
  const own = shown.issues.map((issue): Issue => {
    return label === undefined || whateverRow.has(issueKey(issue)) ? issue : { ...issue, names: [label] };
  });
  const first = new Map(own.toReversed().map((issue) => [causeOf(issue), issue]));
  const isWorst = (issue: Issue | undefined, also: readonly RowCase[]): boolean =>
    issue !== undefined && also.every((other) => !isMoreSevere(other.issue, issue));
  const told = own.map((issue): Issue => {
    const also = cases.get(causeOf(issue)) ?? [];
    const isFirst = first.get(causeOf(issue)) === issue;
    if (also.length === 0 || !isFirst || !isWorst(issue, also)) return issue;
    const others = namesOf(also, label);
    return { ...issue, names: [...(issue.names ?? []), ...others], message: `${issue.message}${likewise(others)}` };
  });
  const others = [...cases].filter(([cause, also]) => !isWorst(first.get(cause), also));
  return inOrder([...told, ...others.map(([, also]) => mostSevere(also))]);
}

interface RowCase {
  readonly issue: Issue;
  readonly report: RowIssues;
}

function issueKey({ code, range, message }: Issue): string {
  return JSON.stringify([code, range, message]);
}

/** Keys of the issues that do not depend on the row: all tags that are made have them in the same words. */
function sameInAll(all: readonly RowIssues[]): ReadonlySet<string> {
  const made = all.filter(({ alike }) => alike);
  const each = (made.length > 0 ? made : all).map(({ issues }) => new Set(issues.map(issueKey)));
  return new Set([...(each[0] ?? [])].filter((key) => each.every((keys) => keys.has(key))));
}

function mostSevere(cases: readonly RowCase[]): Issue {
  const { issue, report } = cases.reduce((a, b) => (isMoreSevere(b.issue, a.issue) ? b : a));
  const label = labelOf(report)!;
  const others = namesOf(cases, label);
  const message = `${withLabel(label, issue.message)}${likewise(others)}`;
  return { ...issue, row: report.row, names: [label, ...others], message };
}

function namesOf(cases: readonly RowCase[], besides: string | undefined): string[] {
  return [...new Set(cases.map((each) => labelOf(each.report)!))].filter((each) => each !== besides);
}

/** Who else has it. */
function likewise(names: readonly string[]): string {
  return names.length === 0 ? '' : ` Likewise ${listedQuoted(names, mostNames)}.`;
}

/** Avoids repeating a name that the message begins with. */
export function withLabel(label: string, message: string): string {
  return message.startsWith(`“${label}”`) ? message : `“${label}”: ${message}`;
}

function isMoreSevere(a: Issue, b: Issue): boolean {
  if (a.severity !== b.severity) return severityRank[a.severity] > severityRank[b.severity];
  return (a.width ?? Infinity) < (b.width ?? Infinity);
}

/** Further names are given as a count. */
export const mostNames = 5;
