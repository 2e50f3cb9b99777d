/** Finds fixes that work: each is applied to the text, and the tag computed again, before it is offered. */

import { reportOf } from '../engine/batch.ts';
import type { ComputeOptions, Engine, Report } from '../engine/engine.ts';
import { causeOf } from '../core/issue.ts';
import type { Fix, Issue } from '../core/issue.ts';
import type { Case } from './candidate.ts';
import { inTheWay } from './in-the-way.ts';
import { slipFixes } from './slips.ts';
import { isGentle, rankOf } from './gentle.ts';
import { ofWholeBatch } from './suits.ts';
import { Trials } from './trials.ts';
import { stockOf } from '../tag/by-stock.ts';

export { withEdits } from '../core/issue.ts';

/**
 * For each remedy, the least change that solves the problem and makes nothing worse; the least change of look comes
 * first.
 * @param report The report of the very text that the edits are for.
 * @throws the signal's reason once that is aborted.
 */
export async function findFixes(engine: Engine, report: Report, issue: Issue, options: ComputeOptions): Promise<Fix[]> {
  const fixes = await slipFixes(engine, report, issue, options);
  const trials = await trialsOf(engine, report, issue, options);
  if (!trials) return fixes;
  for await (const fix of trials.working()) fixes.push(fix);
  // To leave a name out mends nothing of it, however much another way changes.
  const last = fixes.some(isGentle) ? [] : await trials.settingAside();
  return [...fixes.sort((a, b) => rankOf(a) - rankOf(b)), ...last];
}

/** The same one by one, in the order of the remedies, so that a caller who needs one can stop early. */
export async function* workingFixes(
  engine: Engine,
  report: Report,
  issue: Issue,
  options: ComputeOptions,
): AsyncGenerator<Fix> {
  const [only, ...others] = await slipFixes(engine, report, issue, options);
  // With several suggestions, only the writer knows which was meant.
  if (only && others.length === 0) yield only;
  const trials = await trialsOf(engine, report, issue, options);
  if (trials) yield* trials.working();
}

/** Why there is none, where a change would do for most tags of a batch; see `in-the-way.ts`. */
export async function whyNone(
  engine: Engine,
  report: Report,
  issue: Issue,
  options: ComputeOptions,
): Promise<string | undefined> {
  const at = await caseOf(engine, report, issue, options);
  return at && inTheWay(engine, at, options);
}

async function trialsOf(
  engine: Engine,
  report: Report,
  issue: Issue,
  options: ComputeOptions,
): Promise<Trials | undefined> {
  const at = await caseOf(engine, report, issue, options);
  return at && new Trials(engine, at, options);
}

/** `undefined` if there is no tag to try changes on. */
async function caseOf(engine: Engine, shown: Report, issue: Issue, options: ComputeOptions): Promise<Case | undefined> {
  const report = await reportOf(engine, shown, issue, options);
  const isOwn = report === shown || ofWholeBatch.has(issue.code);
  const own = isOwn ? issue : report.issues.find((each) => isSame(each, issue));
  const { model, tag } = report;
  if (!own || !model || !tag) return undefined;
  const piece = tag.pieces.find(({ id }) => id === own.piece);
  // A piece is judged by the stock that it is cut from.
  const cut = piece ? { ...tag, stock: stockOf(piece, tag) } : tag;
  return { issue: own, report, model, tag: cut, piece };
}

/** Messages are not compared, because in a batch they say more. */
function isSame(own: Issue, other: Issue): boolean {
  return causeOf(own) === causeOf(other) && own.width === other.width;
}
