/** What each tag and each piece of a job costs and takes: its share of the job's material cost and machine time, rounded so that all add up. */

import { estimateOfPiece, estimateOfTag } from '../export/job/known-estimates.ts';
import type { Cost } from '../toolpath/estimate.ts';
import type { JobPiece } from './orders/job-piece.ts';
import type { LaidOutJob } from './job.ts';
import { costsOfJob, estimateOfJob } from './totals.ts';
import type { JobTag } from './orders/work.ts';
import { groupedBy } from '../core/grouped.ts';

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
  const taken = secondsOf(job);
  const seconds =
    time && 'seconds' in time
      ? wholeShares(
          time.seconds,
          tags.map((tag) => taken.get(tag) ?? 0),
        )
      : undefined;
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
function secondsOf({ layout }: Job): Map<JobTag, number> {
  const taken = new Map<JobTag, number>();
  for (const piece of laidOf(layout)) taken.set(piece.of, (taken.get(piece.of) ?? 0) + secondsOfPiece(piece));
  return taken;
}

/** The share of a tag, divided among its pieces in the same way. */
export function sharesOfPieces(job: Job): (piece: JobPiece) => Share {
  const laid = new Set(laidOf(job.layout));
  const byTag = groupedBy([...laid, ...job.layout.left.map(({ of }) => of)], (piece) => piece.of);
  const ofTags = sharesOf(job);
  const shares = new Map<JobPiece, Share>();
  for (const [tag, pieces] of byTag) {
    const { cost, seconds } = ofTags([tag]);
    const cents = cost && wholeShares(100 * cost.amount, pieces.map(costOfPiece));
    const times =
      seconds === undefined
        ? undefined
        : wholeShares(
            seconds,
            pieces.map((piece) => (laid.has(piece) ? secondsOfPiece(piece) : 0)),
          );
    for (const [index, piece] of pieces.entries())
      shares.set(piece, {
        ...(cents ? { cost: { ...cost, amount: cents[index]! / 100 } } : {}),
        ...(times ? { seconds: times[index]! } : {}),
      });
  }
  return (piece) => shares.get(piece) ?? {};
}

function laidOf({ sheets }: Job['layout']): JobPiece[] {
  return sheets.flatMap(({ pieces }) => pieces.map(({ of }) => of));
}

function costOfPiece({ of, piece }: JobPiece): number {
  return estimateOfPiece(of.tag, piece)?.cost?.amount ?? 0;
}

function secondsOfPiece({ of, piece }: JobPiece): number {
  const time = estimateOfPiece(of.tag, piece)?.time;
  return time && 'seconds' in time ? time.seconds : 0;
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
