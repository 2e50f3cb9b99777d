/** Finds fixes that work: each is applied to the text, and the tag computed again, before it is offered. */

import { reportOf, reportsOf } from '../engine/batch.ts';
import type { ComputeOptions, Engine, Judged, Report } from '../engine/engine.ts';
import { withEdits, causeOf } from '../core/issue.ts';
import type { Fix, Issue } from '../core/issue.ts';
import type { IssueCode } from '../core/issue-kinds.ts';
import { labelOf } from '../spec/batch.ts';
import { listedQuoted } from '../core/names.ts';
import type { Candidate, Case, Remedy } from './candidate.ts';
import { effectOf } from './effect.ts';
import { lookChange } from './look.ts';
import type { LookChange } from './look.ts';
import { movedHanger } from './moved-hangers.ts';
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
 * Share of its own size by which a hanger may move on a tag of a batch that does not need the fix: less where the
 * problem is only an info (our own judgement).
 */
const keptPlaceShare = { info: 0.05, warning: 0.25, error: 0.25 } as const;

/** Whether a fix may be made unasked: it keeps the look, and no tag without the problem hangs elsewhere. */
export function isGentle({ look, rehangs, isChoice }: Fix): boolean {
  return look <= keptLookShare && rehangs === undefined && !isChoice;
}

/** Problems of all tags of a batch together, which no tag has by itself. */
const ofWholeBatch: ReadonlySet<IssueCode> = new Set(['uneven-sizes']);

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
  if (!fixes.some(isGentle)) fixes.push(...(await trials.settingAside()));
  return fixes.sort((a, b) => rankOf(a) - rankOf(b));
}

function rankOf({ look, rehangs }: Fix): number {
  return Math.max(look, sameLookShare) + (rehangs ? keptLookShare : 0);
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
  const isOwn = report === shown || ofWholeBatch.has(issue.code);
  const own = isOwn ? issue : report.issues.find((each) => isSame(each, issue));
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

  async #firstThatWorks({ words, candidates, isChoice }: Remedy): Promise<Fix | undefined> {
    const { report, issue } = this.#at;
    for (const candidate of candidates) {
      const isEnough = (found: Judged) => !solves(issue, report, found);
      const after = await this.#engine.compute(withEdits(report.source.text, candidate.edits), {
        ...this.#options,
        isEnough,
      });
      if (!solves(issue, report, after) || !readsAsWell(report, after) || !staysPut(report, after)) continue;
      const rehung = await this.#rehungOthers(after);
      if (!rehung) continue;
      const fix = toFix(words, candidate, lookChange(report, after), effectOf(issue, report, after), rehung);
      return isChoice ? { ...fix, isChoice } : fix;
    }
    return undefined;
  }

  /**
   * The other tags that would hang from another place without need; `undefined` unless all stay as sound as before, and
   * look the same where they have no such problem.
   */
  async #rehungOthers({ source: { text } }: Report): Promise<Rehung[] | undefined> {
    const rehung: Rehung[] = [];
    for (const was of await this.#others()) {
      const isEnough = (found: Judged) => !isNoWorse(was, found);
      const is = await this.#engine.compute(text, { ...this.#options, row: was.row, isEnough });
      if (!isNoWorse(was, is) || !readsAsWell(was, is) || !staysPut(was, is)) return undefined;
      if (this.#needsIt(was)) continue;
      if (lookChange(was, is).share > keptLookShare) return undefined;
      const hanger = movedHanger(was, is, keptPlaceShare[this.#at.issue.severity]);
      if (hanger) rehung.push({ label: labelOf(was)!, kind: hanger.kind });
    }
    return rehung;
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
    if (ofWholeBatch.has(this.#at.issue.code)) return true;
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

/** A tag that hangs from another place, and by what. */
interface Rehung {
  readonly label: string;
  readonly kind: string;
}

/** More names are given as a count. */
const mostNames = 3;

function toFix(
  words: string,
  { description, edits }: Candidate,
  look: LookChange,
  effect: readonly string[],
  rehung: readonly Rehung[],
): Fix {
  // A title that speaks of the letters need not say again whose look it is.
  const looks = look.words.map((each) => (/\bletters\b/.test(words) ? each.replace(/^letters /, '') : each));
  const names = rehung.map(({ label }) => label);
  const others = rehung.length === 0 ? [] : [`moves the ${rehung[0]!.kind} of ${listedQuoted(names, mostNames)} too`];
  const effects = [...effect, ...looks, ...others];
  return {
    title: `${words}: ${description}${effects.length > 0 ? ` (${effects.join(', ')})` : ''}`,
    edits,
    look: look.share + look.hangers,
    ...(rehung.length > 0 && { rehangs: names }),
  };
}
