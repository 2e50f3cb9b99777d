/** Many fixes one after the other, each tried on the text that the ones before it left. */

import { checkBatch } from '../engine/batch.ts';
import type { ComputeOptions, Engine, Report } from '../engine/engine.ts';
import { causeOf } from '../core/issue.ts';
import type { Fix, Issue } from '../core/issue.ts';
import type { IssueCode } from '../core/issue-kinds.ts';
import { applied, keptLookShare, sameLookShare, workingFixes } from './find-fixes.ts';
import { lookChange } from './look.ts';
import { isSlip } from './slips.ts';

/** A spec needs a handful; this only keeps fixes that undo each other from going on for ever. */
const mostFixes = 60;

/** All fixes together may change a tag by this share (our own judgement). */
export const mostInAll = 0.25;

/** A problem that is still there, and why. */
export interface LeftProblem {
  readonly issue: Issue;
  readonly why: string;
}

export interface FixedText {
  readonly text: string;
  /** The titles of the fixes, in the order in which they were made. */
  readonly made: readonly string[];
  readonly left: readonly LeftProblem[];
  /** Of the text as it is now. */
  readonly report: Report;
}

/**
 * Fixes what can be fixed while the look of every tag changes by no more than `keptLookShare` each time and `mostInAll`
 * together, always by what changes it least.
 * @param only Only problems of this kind.
 * @throws the signal's reason once that is aborted.
 */
export async function fixAll(
  engine: Engine,
  text: string,
  options: ComputeOptions,
  only?: IssueCode,
): Promise<FixedText> {
  const made: string[] = [];
  const whyLeft = new Map<string, string>();
  const compute = async (spec: string) => checkBatch(engine, await engine.compute(spec, options), options);
  let before = await compute(text);
  let now = before;
  while (made.length < mostFixes) {
    const next = now.report.issues.find((issue) => isWanted(issue, only) && !whyLeft.has(keyOf(issue)));
    if (!next) break;
    const fix = await leastFix(engine, now.report, next, options);
    const after = fix && (await compute(applied(now.report.source.text, fix.edits)));
    const isGentle =
      after && changeOf(now.all, after.all) <= keptLookShare && changeOf(before.all, after.all) <= mostInAll;
    if (after && fix.look === 0 && isSlip(next)) {
      made.push(fix.title);
      // The tag that was meant is only seen now.
      before = after;
      now = after;
    } else if (isGentle) {
      made.push(fix.title);
      now = after;
    } else {
      // What could not be fixed once will not be later either, unless it has changed.
      whyLeft.set(keyOf(next), fix ? `${tooMuch} ${fix.title}.` : notFixed);
    }
  }
  const left = now.report.issues
    .filter((issue) => isWanted(issue, only))
    .map((issue) => ({ issue, why: whyLeft.get(keyOf(issue)) ?? notFixed }));
  return { text: now.report.source.text, made, left, report: now.report };
}

const notFixed = 'No automatic fix found.';
const tooMuch = 'Even the mildest fix changes the look too much to apply automatically:';

function isWanted({ code }: Issue, only: IssueCode | undefined): boolean {
  return only === undefined || code === only;
}

/** Of the tag that changes most. */
function changeOf(before: readonly Report[], after: readonly Report[]): number {
  return Math.max(...before.map((was, row) => lookChange(was, after[row]!).share));
}

async function leastFix(
  engine: Engine,
  report: Report,
  issue: Issue,
  options: ComputeOptions,
): Promise<Fix | undefined> {
  let least: Fix | undefined;
  for await (const fix of workingFixes(engine, report, issue, options)) {
    if (fix.look <= sameLookShare) return fix;
    if (!least || fix.look < least.look) least = fix;
  }
  return least;
}

function keyOf(issue: Issue): string {
  return JSON.stringify([causeOf(issue), issue.message]);
}
