/** What a piece takes up on a sheet: found once for as long as the piece is kept, and held as plain numbers. */

import { keptPacked } from '../../geometry/packed-regions.ts';
import type { Region } from '../../geometry/types.ts';
import type { Piece, Tag } from '../../tag/tag.ts';
import { piecePaths, takenUp } from '../../toolpath/piece-paths.ts';

const known = new WeakMap<Piece, { readonly region: Region }>();

/** The one asked for last: copies come one after another, and so have the same object. */
let last: { readonly kept: { readonly region: Region }; readonly region: Region } | undefined;

/** Area enclosed by the beam, including marks beyond the edge. `tag`: the one that the piece is of. */
export function takenBy(piece: Piece, tag: Tag): Region {
  const found = known.get(piece) ?? keptPacked(takenUp(piece, piecePaths(piece, tag)));
  known.set(piece, found);
  if (last?.kept !== found) last = { kept: found, region: found.region };
  return last.region;
}
