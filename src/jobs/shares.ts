/** What each tag of a job costs and takes: its share of the job's material cost and machine time, rounded so that all add up. */

import { estimateOfPiece, estimateOfTag } from '../export/known-estimates.ts';
import type { Cost } from '../toolpath/estimate.ts';
import type { LaidOutJob } from './job.ts';
import { costsOfJob, estimateOfJob } from './totals.ts';
import type { JobTag } from './work.ts';

export interface Share {
  /** Absent if the price of a stock is unknown. */
  readonly cost?: Cost;
  /** Absent if a speed is unknown. */
  readonly seconds?: number;
}

type Job = Pick<LaidOutJob, 'layout' | 'pieces'>;

/** Of some tags together. */
export type SharesOf = (tags: readonly JobTag[]) => Share;

export function sharesOf(job: Job): SharesOf {
  const { tags } = job.pieces;
  const { material } = costsOfJob(job);
  const cents = material && wholeShares(100 * Number(material.amount.toFixed(2)), tags.map(costOf));
  const time = estimateOfJob(job)?.time;
  const seconds = time && 'seconds' in time ? wholeShares(time.seconds, tags.map(secondsOf(job))) : undefined;
  const index = new Map(tags.map((tag, at) => [tag, at]));
  return (some) => {
    const sum = (shares: readonly number[]) => some.reduce((all, tag) => all + shares[index.get(tag)!]!, 0);
    return {
      ...(cents ? { cost: { ...material, amount: sum(cents) / 100 } } : {}),
      ...(seconds ? { seconds: sum(seconds) } : {}),
    };
  };
}

function costOf({ tag, copies }: JobTag): number {
  return copies * (estimateOfTag(tag)?.cost?.amount ?? 0);
}

/** What the pieces that are on a sheet take by themselves; the ways between them are shared alike. */
function secondsOf({ layout }: Job): (tag: JobTag) => number {
  const taken = new Map<JobTag, number>();
  for (const { of } of layout.sheets.flatMap(({ pieces }) => pieces)) {
    const time = estimateOfPiece(of.of.tag, of.piece)?.time;
    taken.set(of.of, (taken.get(of.of) ?? 0) + (time && 'seconds' in time ? time.seconds : 0));
  }
  return (tag) => taken.get(tag) ?? 0;
}

/**
 * Whole numbers in proportion to `parts` that add up to the rounded total: rounded down, and what is missing goes to
 * those that lost most (the method of largest remainders).
 */
export function wholeShares(total: number, parts: readonly number[]): number[] {
  const all = parts.reduce((sum, part) => sum + part, 0);
  if (all === 0) return parts.map(() => 0);
  const exact = parts.map((part) => (total * part) / all);
  const shares = exact.map(Math.floor);
  const missing = Math.round(total) - shares.reduce((sum, share) => sum + share, 0);
  const losing = exact.map((share, index) => ({ index, lost: share - Math.floor(share) }));
  for (const { index } of losing.sort((a, b) => b.lost - a.lost || a.index - b.index).slice(0, missing))
    shares[index]! += 1;
  return shares;
}
