/** What the hangers of a tag bear, in the words that the page shows. */

import { describeLoad } from '../strength/describe-load.ts';
import { estimateLoad } from '../strength/load.ts';
import type { Tag } from '../tag/tag.ts';
import type { PieceLoad } from '../protocol/preview.ts';

/** One for each piece that has a hanger. */
export function loadsOf({ pieces, stock }: Tag): PieceLoad[] {
  return pieces.flatMap((piece) => {
    const estimate = estimateLoad(piece, stock);
    return estimate ? [{ piece: piece.id, ...describeLoad(estimate) }] : [];
  });
}
