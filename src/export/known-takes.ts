/** Caches the estimates of a tag and of each of its pieces: planning takes longer than making the tag. */

import { byStock } from '../tag/by-stock.ts';
import { estimateJob, sumEstimates } from '../toolpath/estimate.ts';
import type { JobEstimate } from '../toolpath/estimate.ts';
import type { Piece, Tag } from '../tag/tag.ts';
import { planCuts } from '../toolpath/cut-plan.ts';

/** By piece ids. */
const known = new WeakMap<Tag, Map<string, JobEstimate | undefined>>();

/** `undefined` if there is nothing to work. */
export function takesOfTag(tag: Tag): JobEstimate | undefined {
  return takesOfPieces(tag, tag.pieces);
}

export function takesOfPiece(tag: Tag, piece: Piece): JobEstimate | undefined {
  return takesOfPieces(tag, [piece]);
}

function takesOfPieces(tag: Tag, pieces: readonly Piece[]): JobEstimate | undefined {
  const takes = known.get(tag) ?? new Map<string, JobEstimate | undefined>();
  known.set(tag, takes);
  // Ids contain no line breaks.
  const key = pieces.map(({ id }) => id).join('\n');
  if (!takes.has(key)) {
    const work = { ...tag, pieces };
    const each = byStock(work).flatMap((part) => {
      const plan = planCuts(part);
      return plan ? [estimateJob(part, plan)] : [];
    });
    const [first, ...others] = each;
    takes.set(key, first && sumEstimates([first, ...others]));
  }
  return takes.get(key);
}
