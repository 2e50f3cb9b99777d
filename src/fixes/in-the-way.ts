/** Says what keeps a change from being offered that helps most tags of a batch: which others it would spoil, and the way out. */

import { reportsOf, rowCount } from '../engine/batch.ts';
import type { ComputeOptions, Engine, Report } from '../engine/engine.ts';
import { withEdits } from '../core/issue.ts';
import type { Issue } from '../core/issue.ts';
import { groupedBy } from '../core/grouped.ts';
import { issueKinds } from '../core/issue-kinds.ts';
import { listed, listedQuoted } from '../core/names.ts';
import { labelOf } from '../spec/batch/batch.ts';
import type { Candidate, Case } from './candidate.ts';
import { newOrWorse } from './no-worse.ts';
import { readsAsWell } from './reads-as-well.ts';
import { remediesFor } from './remedies.ts';
import { largerLetters } from './larger-letters.ts';
import { needsFix, suits } from './suits.ts';

/** More names are given as a count, and all of them in the end. */
const mostNames = 3;

/** Reasons that are given with their figures. */
const mostReasons = 2;

/** Larger batches are not gone through once more. Our own judgement. */
const mostTags = 100;

/** A tag that would be spoilt: by a new or worse problem, because its letters close up, or because it would look different. */
interface Spoilt {
  readonly name: string;
  readonly was: Report;
  readonly by: Issue | 'letters' | 'look';
}

/** Such as “grow 0.45 mm” would do for 28 of 30 names, but spoils 2, with which and how; `undefined` where no change helps most of several tags. */
export async function inTheWay(engine: Engine, at: Case, options: ComputeOptions): Promise<string | undefined> {
  const { report, issue } = at;
  if (rowCount(report) === 1 || rowCount(report) > mostTags || issue.severity === 'info') return undefined;
  const tried = await firstThatHelps(engine, at, options);
  if (!tried) return undefined;
  const before = (await reportsOf(engine, report, options)).filter((each) => each.tag);
  let [needing, helped] = [0, 0];
  const spoilt: Spoilt[] = [];
  for (const was of before) {
    const is = await engine.compute(withEdits(report.source.text, tried.edits), { ...options, row: was.row });
    const isHelped = needsFix(issue, was) && !needsFix(issue, is);
    if (needsFix(issue, was)) needing++;
    if (isHelped) helped++;
    if (!suits(issue, was, is)) spoilt.push({ name: labelOf(was)!, was, by: spoiltBy(was, is) });
  }
  if (needing === 1 || helped <= needing / 2 || spoilt.length === 0) return undefined;
  const closed = spoilt.filter(({ by }) => by === 'letters').map(({ was }) => was);
  const open = before.filter((was) => spoilt.every((each) => each.was !== was));
  const larger = closed.length > 0 ? await largerLetters(engine, at, tried, [...closed, ...open], options) : undefined;
  return inWords(tried, { needing, helped, spoilt, larger });
}

function spoiltBy(was: Report, is: Report): Spoilt['by'] {
  return newOrWorse(was, is) ?? (readsAsWell(was, is) ? 'look' : 'letters');
}

/** The mildest change that rids the tag of the problem, whatever else it does. */
async function firstThatHelps(engine: Engine, at: Case, options: ComputeOptions): Promise<Candidate | undefined> {
  const { report, issue } = at;
  for (const { candidates, isChoice } of remediesFor(at)) {
    if (isChoice) continue;
    for (const candidate of candidates) {
      const text = withEdits(report.source.text, candidate.edits);
      const enough = { first: issue.code, of: (found: Pick<Report, 'issues'>) => needsFix(issue, found) };
      const after = await engine.compute(text, { ...options, row: report.row, enough });
      if (after.tag && !needsFix(issue, after)) return candidate;
    }
  }
  return undefined;
}

const plainly = { letters: 'letters close up or run together', look: 'it would look different' } as const;

function inWords(
  { description }: Candidate,
  {
    needing,
    helped,
    spoilt,
    larger,
  }: { needing: number; helped: number; spoilt: readonly Spoilt[]; larger: string | undefined },
): string {
  const all = [...groupedBy(spoilt, ({ by }) => (typeof by === 'string' ? by : by.code)).values()].sort(
    (a, b) => b.length - a.length,
  );
  const named = (group: readonly Spoilt[]) =>
    listedQuoted(
      group.map(({ name }) => name),
      mostNames,
    );
  const groups = all.map((group, index) => {
    const [{ name, by }, ...others] = group as [Spoilt, ...Spoilt[]];
    if (typeof by === 'string') return `${named(group)}: ${plainly[by]}.`;
    if (index >= mostReasons) return `${named(group)}: ${inSentence(issueKinds[by.code].summary)}`;
    const likewise = others.length === 0 ? '' : ` Likewise ${named(others)}.`;
    return `“${name}”: ${by.message}${likewise}`;
  });
  const isShortened = groups.some((each) => / and \d+ more[.:]/.test(each));
  const names = isShortened ? ` All ${spoilt.length}: ${listedQuoted(spoilt.map(({ name }) => name))}.` : '';
  const hangs = spoilt.some(({ by }) => typeof by !== 'string' && isOnHanger(by));
  const outs = [
    ...(larger === undefined ? [] : [larger]),
    ...(hangs ? ['another place for the hanger'] : []),
    spoilt.length === 1
      ? 'leaving that name out of the batch'
      : `leaving those ${spoilt.length} out of the batch, to be made by themselves`,
  ];
  return `“${description}” would do for ${helped} of ${needing} names, but spoils ${spoilt.length}. The way out: ${listed(outs, Infinity, 'or')}. ${groups.join(' ')}${names}`;
}

function inSentence(words: string): string {
  return `${words.charAt(0).toLowerCase()}${words.slice(1)}`;
}

function isOnHanger({ path }: Issue): boolean {
  return path.includes('hanger');
}
