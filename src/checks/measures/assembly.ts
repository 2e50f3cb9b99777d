/** Pieces that are glued together, which hang and are tied as one. */

import { area, centroid } from '../../geometry/measure.ts';
import type { Point } from '../../geometry/types.ts';
import { piecesBelow, bottomPieceOf } from '../../tag/pieces-below.ts';
import type { Piece } from '../../tag/tag.ts';

/** The piece at the bottom, and everything glued onto it, in the order of the spec. */
export function assemblyOf(piece: Piece, pieces: readonly Piece[]): readonly Piece[] {
  const bottom = bottomPieceOf(piece, pieces);
  return pieces.filter((other) => bottomPieceOf(other, pieces) === bottom);
}

/** The pieces above a piece: all that are glued onto it, directly or via others. */
export function gluedOver(piece: Piece, pieces: readonly Piece[]): readonly Piece[] {
  return pieces.filter((other) => piecesBelow(other, pieces).includes(piece));
}

/** The centre of mass of glued pieces, taken as one material and thickness; `undefined` without area. */
export function balanceOf(pieces: readonly Piece[]): Point | undefined {
  let [sum, x, y] = [0, 0, 0];
  for (const { region } of pieces) {
    const own = area(region);
    const centre = centroid(region);
    if (!centre) continue;
    sum += own;
    x += own * centre.x;
    y += own * centre.y;
  }
  return sum > 0 ? { x: x / sum, y: y / sum } : undefined;
}
