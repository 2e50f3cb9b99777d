/** Caches the estimates of a tag and of each of its pieces: planning takes longer than making the tag. */

import { byStock } from '../../tag/by-stock.ts';
import { estimateJob, sumEstimates } from '../../toolpath/estimate.ts';
import type { JobEstimate } from '../../toolpath/estimate.ts';
import type { Piece, Tag } from '../../tag/tag.ts';
import { planCuts } from '../../toolpath/cut-plan.ts';

/** By piece ids. */
const cache = new WeakMap<Tag, Map<string, JobEstimate | undefined>>();

/** `undefined` if there is nothing to work. */
export function estimateOfTag(tag: Tag): JobEstimate | undefined {
  return estimateOfPieces(tag, tag.pieces);
}

export function estimateOfPiece(tag: Tag, piece: Piece): JobEstimate | undefined {
  return estimateOfPieces(tag, [piece]);
}

function estimateOfPieces(tag: Tag, pieces: readonly Piece[]): JobEstimate | undefined {
  const estimates = cache.get(tag) ?? new Map<string, JobEstimate | undefined>();
  cache.set(tag, estimates);
  // Ids contain no line breaks.
  const key = pieces.map(({ id }) => id).join('\n');
  if (!estimates.has(key)) {
    const work = { ...tag, pieces };
    const each = byStock(work).flatMap((part) => {
      const plan = planCuts(part);
      return plan ? [estimateJob(part, plan)] : [];
    });
    const [first, ...others] = each;
    estimates.set(key, first && sumEstimates([first, ...others]));
  }
  return estimates.get(key);
}
