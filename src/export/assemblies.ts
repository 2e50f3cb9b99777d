/** Pieces of a tag that are seen together once it is made: one, and those glued on it. */

import { boundsOf } from '../geometry/measure.ts';
import type { Bounds } from '../geometry/types.ts';
import { below, bottomOf } from '../tag/glued.ts';
import type { Piece } from '../tag/tag.ts';

export interface Assembly {
  /** From the back to the front: pieces that lie equally high, side by side on those before them. */
  readonly layers: readonly (readonly Piece[])[];
  readonly bounds: Bounds;
}

/** Every piece after what it is glued on; each heap with what lies on it. */
export function assembliesOf(pieces: readonly Piece[]): Assembly[] {
  return pieces
    .filter((piece) => below(piece, pieces).length === 0)
    .flatMap((base) => {
      const members = pieces.filter((piece) => bottomOf(piece, pieces) === base);
      const bounds = boundsOf(members.flatMap(({ region }) => region));
      const layers: Piece[][] = [];
      for (const piece of members) (layers[below(piece, pieces).length] ??= []).push(piece);
      return bounds ? [{ layers, bounds }] : [];
    });
}
