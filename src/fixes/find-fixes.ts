/** Fixes that are known to work: each was applied to the text and the tag computed again before it is offered. */

import { reportOf, reportsOf } from '../batch.ts';
import type { ComputeOptions, Engine, Report } from '../engine.ts';
import { causeOf } from '../issue.ts';
import type { Fix, Issue, TextEdit } from '../issue.ts';
import type { Candidate, Case, Remedy } from './candidate.ts';
import { effectOf } from './effect.ts';
import { lookChange } from './look.ts';
import type { LookChange } from './look.ts';
import { isNoWorse, solves } from './no-worse.ts';
import { remediesFor } from './remedies.ts';

/**
 * A fix that changes more of the lettering than this share of it makes another tag: it is offered, but never taken unasked, and
 * none changes so much of a tag of a batch that does not need it (our own judgement).
 */
export const keptLookShare = 0.15;

/**
 * For each remedy the least change that solves the problem and makes nothing worse; what changes the look least comes first.
 * @param report The report of the very text that the edits are for.
 * @throws the signal's reason once that is aborted.
 */
export async function findFixes(engine: Engine, report: Report, issue: Issue, options: ComputeOptions): Promise<Fix[]> {
  const fixes: Fix[] = [];
  for await (const fix of workingFixes(engine, report, issue, options)) fixes.push(fix);
  return fixes.sort((a, b) => a.look - b.look);
}

/** The same one by one, in the order of the remedies: whoever needs only one can stop. */
export async function* workingFixes(
  engine: Engine,
  report: Report,
  issue: Issue,
  options: ComputeOptions,
): AsyncGenerator<Fix> {
  const at = await caseOf(engine, report, issue, options);
  if (!at) return;
  const trials = new Trials(engine, at, options);
  for (const remedy of remediesFor(at)) {
    const fix = await trials.firstThatWorks(remedy);
    if (fix) yield fix;
  }
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

/** Tries changes on the tag that has the problem and, where they work, on the other tags of its batch. */
class Trials {
  readonly #engine: Engine;
  readonly #at: Case;
  readonly #options: ComputeOptions;
  /** The other tags of the batch before any change: asked for once something works. */
  #others: Promise<readonly Report[]> | undefined;

  constructor(engine: Engine, at: Case, options: ComputeOptions) {
    this.#engine = engine;
    this.#at = at;
    this.#options = { ...options, row: at.report.row };
  }

  async firstThatWorks({ words, candidates }: Remedy): Promise<Fix | undefined> {
    const { report, issue } = this.#at;
    for (const candidate of candidates) {
      const after = await this.#engine.compute(applied(report.source.text, candidate.edits), this.#options);
      if (!solves(issue, report, after)) continue;
      const look = lookChange(report, after);
      if (!(await this.#sparesOthers(after))) continue;
      return toFix(words, candidate, look, effectOf(issue, report, after));
    }
    return undefined;
  }

  /** Whether a change for the sake of one tag leaves the others as sound as they were, and looking as they did. */
  async #sparesOthers({ source: { text } }: Report): Promise<boolean> {
    const { report, issue } = this.#at;
    this.#others ??= reportsOf(this.#engine, report, this.#options);
    for (const was of await this.#others) {
      if (was.row === report.row) continue;
      const is = await this.#engine.compute(text, { ...this.#options, row: was.row });
      if (!isNoWorse(was, is)) return false;
      const look = lookChange(was, is);
      const needsIt = was.issues.some((other) => causeOf(other) === causeOf(issue));
      if (!needsIt && look.share > keptLookShare) return false;
    }
    return true;
  }
}

function toFix(words: string, { told, edits }: Candidate, look: LookChange, effect: readonly string[]): Fix {
  const effects = [...effect, ...look.words];
  return {
    title: `${words}: ${told}${effects.length > 0 ? ` (${effects.join(', ')})` : ''}`,
    edits,
    look: look.share,
  };
}

export function applied(text: string, edits: readonly TextEdit[]): string {
  const ordered = [...edits].sort((a, b) => b.range.start - a.range.start);
  return ordered.reduce(
    (result, { range, text: insert }) => result.slice(0, range.start) + insert + result.slice(range.end),
    text,
  );
}
