/** Applies many fixes in turn, each tried on the text that the previous ones left. */

import { checkBatch } from '../engine/batch.ts';
import type { ComputeOptions, Engine, Report } from '../engine/engine.ts';
import { causeOf } from '../core/issue.ts';
import { listedQuoted } from '../core/names.ts';
import { labelOf } from '../spec/batch/batch.ts';
import type { Fix, Issue } from '../core/issue.ts';
import type { IssueCode } from '../core/issue-kinds.ts';
import { whyNone, withEdits, workingFixes } from './find-fixes.ts';
import { isGentle, keptLookShare, sameLookShare } from './gentle.ts';
import { lookChange } from './look.ts';
import { isSlip } from './slips.ts';

/** A spec needs a handful; the limit stops fixes that undo each other. */
const mostFixes = 60;

/** Share of a tag that all fixes together may change (our own judgement). */
export const mostInAll = 0.25;

/** A remaining problem and the reason it was not fixed. */
export interface LeftProblem {
  readonly issue: Issue;
  readonly why: string;
}

export interface FixAllResult {
  readonly text: string;
  /** Titles of the fixes, in the order applied; in a batch with the tags that each was for, and the others it changed. */
  readonly made: readonly string[];
  readonly left: readonly LeftProblem[];
  /** Report of the fixed text. */
  readonly report: Report;
}

/**
 * Fixes everything that can be fixed while the look of each tag changes by at most `keptLookShare` for each fix and
 * `mostInAll` in total, always by the fix that changes it least.
 * @param only Only problems of this kind.
 * @throws the signal's reason once that is aborted.
 */
export async function fixAll(
  engine: Engine,
  text: string,
  options: ComputeOptions,
  only?: IssueCode,
): Promise<FixAllResult> {
  const made: string[] = [];
  const whyLeft = new Map<string, string>();
  const compute = async (spec: string) => checkBatch(engine, await engine.compute(spec, options), options);
  let before = await compute(text);
  let now = before;
  while (made.length < mostFixes) {
    const next = now.report.issues.find((issue) => isWanted(issue, only) && !whyLeft.has(problemKey(issue)));
    if (!next) break;
    if (next.code === 'hangs-askew' && now.report.issues.some(({ code }) => code === 'loose-part')) {
      whyLeft.set(problemKey(next), notJoined);
      continue;
    }
    const { least: fix, choice } = await leastFix(engine, now.report, next, options);
    const isMeant = fix !== undefined && !fix.isChoice && !fix.redraws;
    const after = isMeant ? await compute(withEdits(now.report.source.text, fix.edits)) : undefined;
    const isSmall = () =>
      after && changeOf(now.all, after.all) <= keptLookShare && changeOf(before.all, after.all) <= mostInAll;
    if (isMeant && after && fix.look === 0 && isSlip(next)) {
      made.push(fix.title);
      // The look is compared from here on: before a slip is corrected, the tag is not the one that was meant, nor are there as many.
      before = after;
      now = after;
    } else if (isMeant && after && !fix.rehangs && isSmall()) {
      made.push(`${fix.title}${whoseFix(next, now.all, after.all)}`);
      now = after;
    } else {
      // A problem that could not be fixed is not tried again unless it changes.
      const meant = choice ?? fix;
      const why = meant ? `${whyNot(meant)} ${meant.title}.` : await whyNone(engine, now.report, next, options);
      whyLeft.set(problemKey(next), why ?? notFixed);
    }
  }
  const left = now.report.issues
    .filter((issue) => isWanted(issue, only))
    .map((issue) => ({ issue, why: whyLeft.get(problemKey(issue)) ?? notFixed }));
  return { text: now.report.source.text, made, left, report: now.report };
}

const notFixed = 'No automatic fix found.';
const notJoined = 'It cannot be balanced while a part is loose: join that first.';
const tooMuch = 'Even the mildest fix changes the look too much to apply automatically:';
const rehanging = 'Even the mildest fix would make tags without this problem hang differently:';
const redrawing = 'It gives letters another shape, so look at it first:';
const choice = 'It is for you to decide:';

function whyNot({ look, rehangs, isChoice, redraws }: Fix): string {
  if (isChoice) return choice;
  return rehangs ? rehanging : redraws && look <= keptLookShare ? redrawing : tooMuch;
}

function isWanted({ code }: Issue, only: IssueCode | undefined): boolean {
  return only === undefined || code === only;
}

/** Change of the tag that changes most. */
function changeOf(before: readonly Report[], after: readonly Report[]): number {
  return Math.max(...before.map((was, row) => lookChange(was, after[row]!).share));
}

/** More names are given as a count. */
const mostNames = 3;

/** Share of the look below which a tag counts as unchanged. */
const unseenShare = 0.005;

/** In a batch, the tags that had the problem and the others that change with them; empty if all had it. */
function whoseFix(issue: Issue, before: readonly Report[], after: readonly Report[]): string {
  const hadIt = ({ issues }: Report) => issues.some((each) => causeOf(each) === causeOf(issue));
  const others = before.filter((report) => !hadIt(report));
  if (others.length === 0) return '';
  const changed = others.filter((was) => {
    const { share, hangers } = lookChange(was, after[was.row]!);
    return share + hangers > unseenShare;
  });
  const along =
    changed.length === 0 ? '' : `; ${namesOf(changed)} ${changed.length === 1 ? 'changes' : 'change'} with it`;
  return `, for ${namesOf(before.filter(hadIt))}${along}`;
}

function namesOf(reports: readonly Report[]): string {
  return listedQuoted(
    reports.map((report) => labelOf(report)!),
    mostNames,
  );
}

interface LeastFix {
  readonly least?: Fix | undefined;
  /** The first that keeps the look but is for the writer to choose. */
  readonly choice?: Fix | undefined;
}

/** Fixes that leave other tags as they hang come first, of those the tidy ones, then those that change the look least. */
async function leastFix(engine: Engine, report: Report, issue: Issue, options: ComputeOptions): Promise<LeastFix> {
  let least: Fix | undefined;
  let choice: Fix | undefined;
  for await (const fix of workingFixes(engine, report, issue, options)) {
    if (fix.look <= sameLookShare && isGentle(fix) && !fix.isUntidy) return { least: fix };
    if (fix.isChoice && fix.look <= keptLookShare) choice ??= fix;
    if (!least || (reluctance(fix) === reluctance(least) ? fix.look < least.look : reluctance(fix) < reluctance(least)))
      least = fix;
  }
  return { least, choice };
}

/** How little a fix is one to be made unasked. */
function reluctance(fix: Fix): number {
  return isGentle(fix) ? (fix.isUntidy ? 1 : 0) : fix.isChoice ? 3 : 2;
}

function problemKey(issue: Issue): string {
  return JSON.stringify([causeOf(issue), issue.message]);
}
