/** Many fixes one after the other, each tried on the text that the ones before it left. */

import { checkBatch } from '../batch.ts';
import type { ComputeOptions, Engine, Report } from '../engine.ts';
import type { Issue } from '../issue.ts';
import type { IssueCode } from '../issue-kinds.ts';
import { applied, findFixes } from './find-fixes.ts';

/** A spec needs a handful; this only keeps fixes that undo each other from going on for ever. */
const mostFixes = 60;

export interface FixedText {
  readonly text: string;
  /** The titles of the fixes, in the order in which they were made. */
  readonly made: readonly string[];
  /** Of the text as it is now. */
  readonly report: Report;
}

/**
 * Mends what can be mended, always by the fix that changes least.
 * @param only Only issues of this kind.
 * @throws the signal's reason once that is aborted.
 */
export async function fixAll(
  engine: Engine,
  text: string,
  options: ComputeOptions,
  only?: IssueCode,
): Promise<FixedText> {
  const made: string[] = [];
  const given = new Set<string>();
  let report = await computed(engine, text, options);
  while (made.length < mostFixes) {
    const step = await nextFix(engine, report, options, given, only);
    if (!step) break;
    made.push(step.title);
    report = step.report;
  }
  return { text: report.source.text, made, report };
}

/** With what is wrong with any tag of a batch. */
async function computed(engine: Engine, text: string, options: ComputeOptions): Promise<Report> {
  return (await checkBatch(engine, await engine.compute(text, options), options)).report;
}

async function nextFix(
  engine: Engine,
  report: Report,
  options: ComputeOptions,
  given: Set<string>,
  only: IssueCode | undefined,
): Promise<{ title: string; report: Report } | undefined> {
  for (const issue of report.issues) {
    if (only !== undefined && issue.code !== only) continue;
    const key = keyOf(issue);
    // What could not be mended once will not be later either, unless it has changed.
    if (given.has(key)) continue;
    const [fix] = await findFixes(engine, report, issue, options, 1);
    if (fix) {
      return { title: fix.title, report: await computed(engine, applied(report.source.text, fix.edits), options) };
    }
    given.add(key);
  }
  return undefined;
}

function keyOf({ code, path, message }: Issue): string {
  return JSON.stringify([code, path, message]);
}
