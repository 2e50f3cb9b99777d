/** Fixes that are known to work: each was applied to the text and the tag computed anew before it is offered. */

import type { ComputeOptions, Engine, Report } from '../engine.ts';
import type { Fix, Issue, TextEdit } from '../issue.ts';
import { remediesFor } from './remedies.ts';

const mmPerInch = 25.4;

/**
 * For each remedy the least change after which the issue is gone and no other of its severity or above has come.
 * @param report The report of the very text that the edits are for.
 * @throws the signal's reason once that is aborted.
 */
export async function findFixes(engine: Engine, report: Report, issue: Issue, options: ComputeOptions): Promise<Fix[]> {
  const fixes: Fix[] = [];
  const { source, tag } = report;
  for (const remedy of remediesFor(issue, report)) {
    const { path, key } = remedy;
    for (const value of remedy.values) {
      const text = typeof value === 'string' ? value : written(value, tag?.units ?? 'mm');
      const edit = source.setKey(path, key, text);
      if (!edit) break;
      const after = await engine.compute(applied(source.text, [edit]), options);
      if (!solves(issue, report, after)) continue;
      fixes.push({ title: remedy.title(text), edits: [edit] });
      break;
    }
  }
  return fixes;
}

/** A length as it is put into a spec: in the spec's own unit, to a hundredth of a millimetre. */
function written(mm: number, units: 'mm' | 'in'): string {
  if (units === 'in') return `${Number((mm / mmPerInch).toFixed(4))} in`;
  // Away from nothing, so that rounding never takes back what is needed.
  const hundredths = mm < 0 ? Math.floor(mm * 100 - 1e-6) : Math.ceil(mm * 100 - 1e-6);
  return `${hundredths / 100} mm`;
}

export function applied(text: string, edits: readonly TextEdit[]): string {
  const ordered = [...edits].sort((a, b) => b.range.start - a.range.start);
  return ordered.reduce(
    (result, { range, text: insert }) => result.slice(0, range.start) + insert + result.slice(range.end),
    text,
  );
}

const weight = { info: 0, warning: 1, error: 2 } as const;

function solves(issue: Issue, before: Report, after: Report): boolean {
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
