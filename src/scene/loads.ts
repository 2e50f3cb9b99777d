/** Estimated loads of a tag's hangers, in the words that the page shows. */

import { describeLoad } from '../strength/describe-load.ts';
import { estimateLoad } from '../strength/load.ts';
import { stockOf } from '../tag/by-stock.ts';
import type { Tag } from '../tag/tag.ts';
import type { PieceLoad } from '../protocol/preview.ts';

/** One for each piece that has a hanger. */
export function loadsOf(tag: Tag): PieceLoad[] {
  return tag.pieces.flatMap((piece) => {
    const estimate = estimateLoad(piece, stockOf(piece, tag));
    return estimate ? [{ piece: piece.id, ...describeLoad(estimate, tag.units) }] : [];
  });
}
