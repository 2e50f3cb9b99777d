/** Finds fixes that work: each is applied to the text, and the tag computed again, before it is offered. */

import { reportOf, reportsOf } from '../engine/batch.ts';
import type { ComputeOptions, Engine, Judged, Report } from '../engine/engine.ts';
import { withEdits, causeOf } from '../core/issue.ts';
import type { Fix, Issue } from '../core/issue.ts';
import { labelOf } from '../spec/batch.ts';
import type { Candidate, Case, Remedy } from './candidate.ts';
import { effectOf } from './effect.ts';
import { lookChange } from './look.ts';
import type { LookChange } from './look.ts';
import { isNoWorse, solves } from './no-worse.ts';
import { readsAsWell } from './reads-as-well.ts';
import { remediesFor } from './remedies.ts';
import { setAside } from './set-aside.ts';
import { staysPut } from './stays-put.ts';
import { slipFixes } from './slips.ts';
import { stockOf } from '../tag/by-stock.ts';

export { withEdits } from '../core/issue.ts';

/**
 * Share of the lettering beyond which a change makes another tag: such a fix is offered but never applied
 * automatically, nor may any fix change that much on a tag of a batch that does not need it (our own judgement).
 */
export const keptLookShare = 0.15;

/**
 * Fixes that change less than this share keep the look; among them, the remedy that a maker would try first comes
 * first.
 */
export const sameLookShare = 0.12;

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
  if (fixes.every(({ look }) => look > keptLookShare)) fixes.push(...(await trials.settingAside()));
  return fixes.sort((a, b) => Math.max(a.look, sameLookShare) - Math.max(b.look, sameLookShare));
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

/** `undefined` if there is no tag to try changes on. */
async function trialsOf(
  engine: Engine,
  shown: Report,
  issue: Issue,
  options: ComputeOptions,
): Promise<Trials | undefined> {
  const report = await reportOf(engine, shown, issue, options);
  const own = report === shown ? issue : report.issues.find((each) => isSame(each, issue));
  const { model, tag } = report;
  if (!own || !model || !tag) return undefined;
  const piece = tag.pieces.find(({ id }) => id === own.piece);
  // A piece is judged by the stock that it is cut from.
  const cut = piece ? { ...tag, stock: stockOf(piece, tag) } : tag;
  return new Trials(engine, { issue: own, report, model, tag: cut, piece }, options);
}

/** Messages are not compared, because in a batch they say more. */
function isSame(own: Issue, other: Issue): boolean {
  return causeOf(own) === causeOf(other) && own.width === other.width;
}

/** Tries changes on the tag that has the problem and, if they work, on the other tags of its batch. */
class Trials {
  readonly #engine: Engine;
  readonly #at: Case;
  readonly #options: ComputeOptions;
  /** Computed once something works. */
  #known: Promise<readonly Report[]> | undefined;

  constructor(engine: Engine, at: Case, options: ComputeOptions) {
    this.#engine = engine;
    this.#at = at;
    this.#options = { ...options, row: at.report.row };
  }

  /** For each remedy, the first of its changes that works. */
  async *working(): AsyncGenerator<Fix> {
    for (const remedy of remediesFor(this.#at)) {
      const fix = await this.#firstThatWorks(remedy);
      if (fix) yield fix;
    }
  }

  async #firstThatWorks({ words, candidates }: Remedy): Promise<Fix | undefined> {
    const { report, issue } = this.#at;
    for (const candidate of candidates) {
      const isEnough = (found: Judged) => !solves(issue, report, found);
      const after = await this.#engine.compute(withEdits(report.source.text, candidate.edits), {
        ...this.#options,
        isEnough,
      });
      if (!solves(issue, report, after) || !readsAsWell(report, after) || !staysPut(report, after)) continue;
      if (!(await this.#sparesOthers(after))) continue;
      return toFix(words, candidate, lookChange(report, after), effectOf(issue, report, after));
    }
    return undefined;
  }

  /** Whether a change made for one tag keeps the others as sound as before, and looking the same. */
  async #sparesOthers({ source: { text } }: Report): Promise<boolean> {
    for (const was of await this.#others()) {
      const isEnough = (found: Judged) => !isNoWorse(was, found);
      const is = await this.#engine.compute(text, { ...this.#options, row: was.row, isEnough });
      if (!isNoWorse(was, is) || !readsAsWell(was, is) || !staysPut(was, is)) return false;
      if (!this.#needsIt(was) && lookChange(was, is).share > keptLookShare) return false;
    }
    return true;
  }

  /** The other tags of the batch, before any change. */
  #others(): Promise<readonly Report[]> {
    const { report } = this.#at;
    this.#known ??= reportsOf(this.#engine, report, this.#options).then((all) =>
      all.filter(({ row }) => row !== report.row),
    );
    return this.#known;
  }

  #needsIt({ issues }: Report): boolean {
    return issues.some((other) => causeOf(other) === causeOf(this.#at.issue));
  }

  /**
   * A fix that takes the row off its list, unless all the others have the problem too: they stay exactly as they are.
   */
  async settingAside(): Promise<Fix[]> {
    const { report } = this.#at;
    const others = await this.#others();
    const edit = report.batch && setAside(report.source, report.batch.rows, report.row);
    if (!edit || others.every((other) => this.#needsIt(other))) return [];
    const title = `Set “${labelOf(report)!}” aside as a separate tag: the others stay as they are`;
    return [{ title, edits: [edit], look: 1 }];
  }
}

function toFix(words: string, { description, edits }: Candidate, look: LookChange, effect: readonly string[]): Fix {
  // A title that speaks of the letters need not say again whose look it is.
  const looks = look.words.map((each) => (/\bletters\b/.test(words) ? each.replace(/^letters /, '') : each));
  const effects = [...effect, ...looks];
  return {
    title: `${words}: ${description}${effects.length > 0 ? ` (${effects.join(', ')})` : ''}`,
    edits,
    look: look.share + look.hangers,
  };
}
