/** Tries changes on the tag that has the problem and, if they work, on the other tags of its batch. */

import { reportsOf } from '../engine/batch.ts';
import type { ComputeOptions, Engine, Judged, Report } from '../engine/engine.ts';
import { withEdits } from '../core/issue.ts';
import type { Fix, Issue, TextEdit } from '../core/issue.ts';
import { labelOf, mostSetAside } from '../spec/batch/batch.ts';
import { listedQuoted } from '../core/names.ts';
import type { Candidate, Case, Remedy } from './candidate.ts';
import { effectOf } from './effect.ts';
import { keptLookShare, rankOf, sameLookShare } from './gentle.ts';
import { hangsByCorner } from './hangs-by-corner.ts';
import { lookChange } from './look.ts';
import type { LookChange } from './look.ts';
import { movedHanger } from './moved-hangers.ts';
import { isNoWorse, solves } from './no-worse.ts';
import { remediesFor } from './remedies.ts';
import { asideInWords, setAside } from './set-aside.ts';
import { isMovedAmongLetters, ringJumps } from './rings-read.ts';
import { withoutSizeSetters } from './size-setters.ts';
import { looksAsMeant, needsFix, ofWholeBatch, suits } from './suits.ts';
import { isTidy } from './tidy.ts';
import { isMadeTogether } from '../tag/build.ts';

/**
 * Share of its own size by which a hanger may move on a tag of a batch that does not need the fix: less where the
 * problem is only an info (our own judgement).
 */
const keptPlaceShare = { info: 0.05, warning: 0.25, error: 0.25 } as const;

/** Of a remedy, so many changes beyond the first that works are tried for one that is tidy. */
const mostTidier = 4;

/** A change of the text, and what it does to the tags of a batch. */
interface Tried {
  readonly candidate: Candidate;
  /** A tag with the problem that it solves, before and after. */
  readonly solved: { readonly was: Report; readonly is: Report };
  readonly rehung: readonly Rehung[];
  /** Tags that it makes worse. */
  readonly unsuited: readonly Report[];
  /** Tags with the problem that keep it, no worse. */
  readonly kept: readonly Report[];
  /** Tags that it rids of the problem. */
  readonly helped: number;
}

/** A tag that hangs from another place, and by what. */
interface Rehung {
  readonly was: Report;
  readonly kind: string;
}

export class Trials {
  readonly #engine: Engine;
  readonly #at: Case;
  readonly #options: ComputeOptions;
  /** Number of tags that a change need not help: they stay as they are. */
  readonly #mostOdd: number;
  /** Whether those that would be worse may be set aside: only for what cannot be made as it is. */
  readonly #setsAside: boolean;
  /** Rows that a change has made worse. */
  readonly #hard = new Set<number>();
  /** Computed once something works. */
  #known: Promise<readonly Report[]> | undefined;

  constructor(engine: Engine, at: Case, options: ComputeOptions) {
    const { report, issue } = at;
    this.#engine = engine;
    this.#at = at;
    this.#options = { ...options, row: report.row };
    this.#mostOdd = mostOddOf(issue, report.batch?.rows.length ?? 1);
    this.#setsAside = issue.severity === 'error' && canSetAside(at);
  }

  /**
   * For each remedy, the first of its changes that works; last of all, one that changes less but works for all but a few tags: those keep the
   * problem, or are set aside.
   */
  async *working(): AsyncGenerator<Fix> {
    let forMost: Fix | undefined;
    for (const remedy of remediesFor(this.#at)) {
      // No later one would come first.
      const mostOdd = forMost && forMost.look <= sameLookShare ? 0 : this.#mostOdd;
      const { forAll, forMost: tried } = await this.#firstThatWork(remedy, mostOdd);
      const fix = forAll && this.#fixOf(remedy, forAll);
      if (fix) yield fix;
      const other = tried && this.#fixOf(remedy, tried);
      if (other && (!forMost || rankOf(other) < rankOf(forMost))) forMost = other;
    }
    if (forMost) yield forMost;
  }

  /** The first change that suits all tags, or soon after it the first that is tidy as well, and of those before it the one that suits most. */
  async #firstThatWork(
    { candidates, isWorth }: Remedy,
    mostOdd: number,
  ): Promise<{ readonly forAll?: Tried; readonly forMost?: Tried | undefined }> {
    let forMost: Tried | undefined;
    let untidy: Tried | undefined;
    let further = 0;
    for (const candidate of candidates) {
      if (untidy && ++further > mostTidier) break;
      const most = forMost ? oddOf(forMost) - 1 : mostOdd;
      const tried = await this.#tried(candidate, most, isWorth);
      if (tried?.solved.was === this.#at.report && tried.unsuited.length === 0) {
        if (isTidy(tried.solved.was, tried.solved.is)) return { forAll: tried, forMost };
        untidy ??= tried;
      } else if (!untidy) forMost = tried ?? forMost;
    }
    return { ...(untidy ? { forAll: untidy } : {}), forMost };
  }

  /**
   * `undefined` unless the problem is solved, on the tag it was found on or on all but `mostOdd`, and all tags but so many stay as sound as
   * before, and look the same where they have no such problem.
   */
  async #tried(
    candidate: Candidate,
    mostOdd: number,
    isWorth: NonNullable<Remedy['isWorth']> = () => true,
  ): Promise<Tried | undefined> {
    const { report, issue } = this.#at;
    const text = withEdits(report.source.text, candidate.edits);
    const computed = (row: number, enough?: (found: Judged) => boolean): Promise<Report> =>
      this.#engine.compute(text, {
        ...this.#options,
        row,
        ...(enough && { enough: { first: issue.code, of: enough } }),
      });
    const after = await computed(report.row, (found) => !solves(issue, report, found));
    const isOwnSolved = solves(issue, report, after) && looksAsMeant(report, after) && isWorth(report, after);
    const isOfAll = ofWholeBatch.has(issue.code);
    if (!isOwnSolved && (mostOdd === 0 || isOfAll)) return undefined;
    let solved = isOwnSolved ? { was: report, is: after } : undefined;
    let helped = isOwnSolved ? 1 : 0;
    const rehung: Rehung[] = [];
    const [unsuited, kept]: [Report[], Report[]] = [[], []];
    const isTooOdd = (): boolean => unsuited.length + (isOwnSolved ? 0 : kept.length) > mostOdd;
    const isSpoilt = (): boolean => unsuited.length > (this.#setsAside ? mostOdd : 0);
    if (!isOwnSolved) (suits(issue, report, await computed(report.row)) ? kept : unsuited).push(report);
    if (isSpoilt()) return undefined;
    for (const was of this.#hardestFirst(await this.#others())) {
      const is = await computed(was.row, (found) => !isNoWorse(was, found));
      if (!suits(issue, was, is) || (this.#needsIt(was) && !this.#needsIt(is) && !isWorth(was, is))) {
        unsuited.push(was);
        this.#hard.add(was.row);
      } else if (!this.#needsIt(was)) {
        const hanger = movedHanger(was, is, keptPlaceShare[issue.severity]);
        if (hanger) rehung.push({ was, kind: hanger.kind });
      } else if (!isOfAll && this.#needsIt(is)) {
        kept.push(was);
        if (!isOwnSolved) this.#hard.add(was.row);
      } else {
        helped++;
        solved ??= { was, is };
      }
      if (isTooOdd() || isSpoilt()) return undefined;
    }
    rehung.sort((a, b) => a.was.row - b.was.row);
    unsuited.sort((a, b) => a.row - b.row);
    // A batch of two has no odd one.
    return solved && (isOwnSolved || helped > kept.length)
      ? { candidate, solved, rehung, unsuited, kept, helped }
      : undefined;
  }

  /** What has ruled out a change before is likely to rule out the next. */
  #hardestFirst(others: readonly Report[]): Report[] {
    const isHard = ({ row }: Report) => this.#hard.has(row);
    return [...others.filter(isHard), ...others.filter((each) => !isHard(each))];
  }

  /** The other tags of the batch, before any change. */
  #others(): Promise<readonly Report[]> {
    const { report } = this.#at;
    this.#known ??= reportsOf(this.#engine, report, this.#options).then((all) =>
      all.filter(({ row }) => row !== report.row),
    );
    return this.#known;
  }

  #needsIt(report: Pick<Report, 'issues'>): boolean {
    return needsFix(this.#at.issue, report);
  }

  /** `undefined` if tags would have to be set aside that cannot be. */
  #fixOf({ words, isChoice }: Remedy, tried: Tried): Fix | undefined {
    const { report, issue } = this.#at;
    const { candidate, solved, rehung, unsuited } = tried;
    const aside = unsuited.length === 0 ? [] : setAside(report.source, report.batch!.rows, rowsOf(unsuited));
    if (!aside || areCrossing(candidate.edits, aside)) return undefined;
    const labels = unsuited.map((each) => labelOf(each)!);
    const also =
      labels.length === 0
        ? ''
        : `, and leave ${asideInWords(labels)}, as it would not suit ${labels.length === 1 ? 'it' : 'them'}`;
    const isJump = ringJumps(solved.was, solved.is);
    const corner = hangsByCorner(solved.was, solved.is);
    const effect = [
      ...(solved.was === report ? effectOf(issue, report, solved.is) : []),
      ...(isJump ? ['moves the ring'] : []),
      ...corner,
    ];
    const described = { ...candidate, description: `${candidate.description}${forHowMany(tried)}` };
    // To hang straighter is worth no ring elsewhere among the letters, unless one chooses so.
    const isReadThere = issue.severity === 'info' && isMovedAmongLetters(solved.was, solved.is);
    const look = lookChange(solved.was, solved.is);
    // The same letters, hung from where nobody has looked; what is in parts hangs nowhere yet.
    const isUnasked = isJump && !look.redraws && look.share <= keptLookShare && issue.code !== 'loose-part';
    const fix = toFix(words, described, look, effect, rehung);
    return {
      ...fix,
      title: `${fix.title}${also}`,
      edits: [...candidate.edits, ...aside],
      ...(labels.length > 0 ? { aside: labels } : {}),
      ...(isTidy(solved.was, solved.is) ? {} : { isUntidy: true }),
      ...(isChoice || labels.length > 0 || isReadThere || isUnasked || corner.length > 0 ? { isChoice: true } : {}),
    };
  }

  /**
   * A fix that takes the row off its list, unless all the others have the problem too: they stay exactly as they are.
   */
  async settingAside(): Promise<Fix[]> {
    const { report, issue } = this.#at;
    // A slip of the hand is mended where it is.
    if (issue.code === 'odd-value') return [];
    const setters = withoutSizeSetters(this.#at);
    if (setters) return setters;
    const others = await this.#others();
    const edits = report.batch && setAside(report.source, report.batch.rows, [report.row]);
    if (!edits || others.every((other) => this.#needsIt(other))) return [];
    const aside = [labelOf(report)!];
    return [{ title: `Leave ${asideInWords(aside)}: the others stay as they are`, edits, look: 1, aside }];
  }
}

/** Of two, neither is the odd one, unless the other cannot be made. */
function mostOddOf({ severity }: Issue, tags: number): number {
  return severity === 'info' || (severity === 'warning' && tags < 3) ? 0 : mostSetAside(tags);
}

/** Not where all names have one size or one line: without one of them the others would be larger, or stand elsewhere. */
function canSetAside({ report: { source, batch, row }, model }: Case): boolean {
  return batch !== undefined && setAside(source, batch.rows, [row]) !== undefined && !isMadeTogether(model);
}

function oddOf({ unsuited, kept }: Tried): number {
  return unsuited.length + kept.length;
}

/** Such as “, for 28 of 30 names”; empty where no tag keeps the problem. */
function forHowMany({ helped, kept }: Tried): string {
  return kept.length === 0 ? '' : `, for ${helped} of ${helped + kept.length} names`;
}

/** Whether a cell would be changed in a row that is taken out. */
function areCrossing(some: readonly TextEdit[], others: readonly TextEdit[]): boolean {
  return some.some(({ range: a }) => others.some(({ range: b }) => a.start < b.end && b.start < a.end));
}

function rowsOf(reports: readonly Report[]): number[] {
  return reports.map(({ row }) => row);
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
  const names = rehung.map(({ was }) => labelOf(was)!);
  const others = rehung.length === 0 ? [] : [`moves the ${rehung[0]!.kind} of ${listedQuoted(names, mostNames)} too`];
  const effects = [...effect, ...looks, ...others];
  return {
    title: `${words}: ${description}${effects.length > 0 ? ` (${effects.join(', ')})` : ''}`,
    edits,
    look: look.share + look.hangers,
    ...(rehung.length > 0 && { rehangs: names }),
    ...(look.redraws && { redraws: true }),
  };
}
