/** Assemblies: pieces of a tag that end up together, a base and everything glued on it. */

import { boundsOf } from '../../geometry/measure.ts';
import type { Bounds } from '../../geometry/types.ts';
import { piecesBelow, bottomPieceOf } from '../../tag/pieces-below.ts';
import type { Piece } from '../../tag/tag.ts';

export interface Assembly {
  /** From back to front; each layer holds the pieces at the same height. */
  readonly layers: readonly (readonly Piece[])[];
  readonly bounds: Bounds;
}

/** One assembly for each piece that is not glued on another, with all its layers. */
export function assembliesOf(pieces: readonly Piece[]): Assembly[] {
  return pieces
    .filter((piece) => piecesBelow(piece, pieces).length === 0)
    .flatMap((base) => {
      const members = pieces.filter((piece) => bottomPieceOf(piece, pieces) === base);
      const bounds = boundsOf(members.flatMap(({ region }) => region));
      const layers: Piece[][] = [];
      for (const piece of members) (layers[piecesBelow(piece, pieces).length] ??= []).push(piece);
      return bounds ? [{ layers, bounds }] : [];
    });
}
