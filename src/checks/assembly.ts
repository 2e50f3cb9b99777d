/** Pieces that are glued to each other hang, and are tied, as one. */

import { area, centroid } from '../geometry/measure.ts';
import type { Point } from '../geometry/types.ts';
import { below, bottomOf } from '../tag/glued.ts';
import type { Piece } from '../tag/tag.ts';

/** The piece at the bottom, and everything that is glued on it, in the order of the spec. */
export function assemblyOf(piece: Piece, pieces: readonly Piece[]): readonly Piece[] {
  const bottom = bottomOf(piece, pieces);
  return pieces.filter((other) => bottomOf(other, pieces) === bottom);
}

/** What lies over a piece: all that is glued on it, and on that. */
export function gluedOver(piece: Piece, pieces: readonly Piece[]): readonly Piece[] {
  return pieces.filter((other) => below(other, pieces).includes(piece));
}

/** The centre of mass of pieces of one material and thickness, glued to each other; `undefined` where there is none. */
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
