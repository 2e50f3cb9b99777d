/** Fixes that are known to work: each was applied to the text and the tag computed anew before it is offered. */

import type { ComputeOptions, Engine, Report } from '../engine.ts';
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
  const { model, tag } = report;
  if (!model || !tag) return [];
  const at: Case = { issue, report, model, tag, piece: tag.pieces.find(({ id }) => id === issue.piece) };
  const fixes: Fix[] = [];
  for (const remedy of remediesFor(at)) {
    if (fixes.length >= most) break;
    const found = await firstThatWorks(remedy, at, engine, options);
    if (!found) continue;
    const { candidate, after } = found;
    const effect = effectOf(issue, report, after);
    const title = `${remedy.words}: ${candidate.told}${effect.length > 0 ? ` (${effect.join(', ')})` : ''}`;
    fixes.push({ title, edits: candidate.edits });
  }
  return fixes;
}

async function firstThatWorks(
  { candidates }: Remedy,
  { report, issue }: Case,
  engine: Engine,
  options: ComputeOptions,
): Promise<{ candidate: Candidate; after: Report } | undefined> {
  for (const candidate of candidates) {
    const after = await engine.compute(applied(report.source.text, candidate.edits), options);
    if (solves(issue, report, after)) return { candidate, after };
  }
  return undefined;
}

export function applied(text: string, edits: readonly TextEdit[]): string {
  const ordered = [...edits].sort((a, b) => b.range.start - a.range.start);
  return ordered.reduce(
    (result, { range, text: insert }) => result.slice(0, range.start) + insert + result.slice(range.end),
    text,
  );
}

const weight = { info: 0, warning: 1, error: 2 } as const;

/** Whether the issue is gone from `after`, and nothing as serious has come. */
export function solves(issue: Issue, before: Report, after: Report): boolean {
  if (!after.tag) return false;
  const countBefore = counts(before.issues);
  const countAfter = counts(after.issues);
  const own = keyOf(issue);
  // Several findings of a kind at one line are solved together or one by one; one fewer counts.
  if ((countAfter.get(own) ?? 0) >= countBefore.get(own)!) return false;
  const serious = after.issues.filter((other) => weight[other.severity] >= weight[issue.severity]);
  return serious.every((other) => countAfter.get(keyOf(other))! <= (countBefore.get(keyOf(other)) ?? 0));
}

function keyOf({ code, piece, path }: Issue): string {
  return JSON.stringify([code, piece, path]);
}

function counts(issues: readonly Issue[]): Map<string, number> {
  const result = new Map<string, number>();
  for (const issue of issues) result.set(keyOf(issue), (result.get(keyOf(issue)) ?? 0) + 1);
  return result;
}
