/** Pieces in the same layer. */

import { below } from '../tag/glued.ts';
import type { Piece } from '../tag/tag.ts';

/** Whether two pieces are at the same height above the same bottom piece. */
export function areLevel(a: Piece, b: Piece, pieces: readonly Piece[]): boolean {
  const [underA, underB] = [below(a, pieces), below(b, pieces)];
  return underA.length > 0 && underA.length === underB.length && underA.at(-1) === underB.at(-1);
}
