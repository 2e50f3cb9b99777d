/** Fixes that are known to work: each was applied to the text and the tag computed anew before it is offered. */

import { reportOf, reportsOf } from '../batch.ts';
import type { ComputeOptions, Engine, Report } from '../engine.ts';
import { causeOf, severityRank } from '../issue.ts';
import type { Fix, Issue, TextEdit } from '../issue.ts';
import type { Candidate, Case, Remedy } from './candidate.ts';
import { effectOf } from './effect.ts';
import { remediesFor } from './remedies.ts';

/**
 * For each remedy the least change after which the issue is gone and no other of its severity or above has come.
 * @param report The report of the very text that the edits are for.
 * @param most Stop once this many are found.
 * @throws the signal's reason once that is aborted.
 */
export async function findFixes(
  engine: Engine,
  report: Report,
  issue: Issue,
  options: ComputeOptions,
  most = Infinity,
): Promise<Fix[]> {
  const at = await caseOf(engine, report, issue, options);
  if (!at) return [];
  const fixes: Fix[] = [];
  // As they are before any change: asked for once something works.
  let known: Promise<readonly Report[]> | undefined;
  const rows = () => (known ??= reportsOf(engine, at.report, options));
  for (const remedy of remediesFor(at)) {
    if (fixes.length >= most) break;
    const found = await firstThatWorks(remedy, at, rows, engine, { ...options, row: at.report.row });
    if (!found) continue;
    const { candidate, after } = found;
    const effect = effectOf(at.issue, at.report, after);
    const title = `${remedy.words}: ${candidate.told}${effect.length > 0 ? ` (${effect.join(', ')})` : ''}`;
    fixes.push({ title, edits: candidate.edits });
  }
  return fixes;
}

/** `undefined` where there is no tag that a change could be tried on. */
async function caseOf(engine: Engine, shown: Report, issue: Issue, options: ComputeOptions): Promise<Case | undefined> {
  const report = await reportOf(engine, shown, issue, options);
  const own = report === shown ? issue : report.issues.find((each) => isSame(each, issue));
  const { model, tag } = report;
  if (!own || !model || !tag) return undefined;
  return { issue: own, report, model, tag, piece: tag.pieces.find(({ id }) => id === own.piece) };
}

/** In a batch the message says more. */
function isSame(own: Issue, told: Issue): boolean {
  return causeOf(own) === causeOf(told) && own.width === told.width;
}

async function firstThatWorks(
  { candidates }: Remedy,
  at: Case,
  rows: () => Promise<readonly Report[]>,
  engine: Engine,
  options: ComputeOptions,
): Promise<{ candidate: Candidate; after: Report } | undefined> {
  const { report, issue } = at;
  for (const candidate of candidates) {
    const after = await engine.compute(applied(report.source.text, candidate.edits), options);
    if (solves(issue, report, after) && (await harmsNoRow(at, after, await rows(), engine, options)))
      return { candidate, after };
  }
  return undefined;
}

/** Whether a change for the sake of one tag of a batch leaves the others as sound as they were. */
async function harmsNoRow(
  { issue, report }: Case,
  after: Report,
  before: readonly Report[],
  engine: Engine,
  options: ComputeOptions,
): Promise<boolean> {
  for (const was of before) {
    if (was.row === report.row) continue;
    const is = await engine.compute(after.source.text, { ...options, row: was.row });
    if (!isNoWorse(issue, was, is)) return false;
  }
  return true;
}

export function applied(text: string, edits: readonly TextEdit[]): string {
  const ordered = [...edits].sort((a, b) => b.range.start - a.range.start);
  return ordered.reduce(
    (result, { range, text: insert }) => result.slice(0, range.start) + insert + result.slice(range.end),
    text,
  );
}

/** Whether the issue is gone from `after`, and nothing as serious has come. */
export function solves(issue: Issue, before: Report, after: Report): boolean {
  if (!after.tag) return false;
  const countBefore = counts(before.issues);
  const countAfter = counts(after.issues);
  const own = causeOf(issue);
  // Several findings of a kind at one line are solved together or one by one; one fewer counts.
  if ((countAfter.get(own) ?? 0) >= countBefore.get(own)!) return false;
  return isNoWorse(issue, before, after);
}

/** Whether nothing has come that is as serious as the issue. */
function isNoWorse(issue: Issue, before: Report, after: Report): boolean {
  const countBefore = counts(before.issues);
  const countAfter = counts(after.issues);
  const serious = after.issues.filter((other) => severityRank[other.severity] >= severityRank[issue.severity]);
  return serious.every((other) => countAfter.get(causeOf(other))! <= (countBefore.get(causeOf(other)) ?? 0));
}

function counts(issues: readonly Issue[]): Map<string, number> {
  const result = new Map<string, number>();
  for (const issue of issues) result.set(causeOf(issue), (result.get(causeOf(issue)) ?? 0) + 1);
  return result;
}
