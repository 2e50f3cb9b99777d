/** Pieces in the same layer. */

import { piecesBelow } from '../../tag/pieces-below.ts';
import type { Piece } from '../../tag/tag.ts';

/** Whether two pieces are at the same height above the same bottom piece. */
export function areLevel(a: Piece, b: Piece, pieces: readonly Piece[]): boolean {
  const [underA, underB] = [piecesBelow(a, pieces), piecesBelow(b, pieces)];
  return underA.length > 0 && underA.length === underB.length && underA.at(-1) === underB.at(-1);
}
