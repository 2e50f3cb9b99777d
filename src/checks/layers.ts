/** Which piece is glued on which, and what lies in one layer. */

import type { Piece } from '../tag/tag.ts';

/** What a piece is glued on, from the one directly below it to the one at the bottom; none for a piece that is not glued on. */
export function below({ glueTo }: Piece, pieces: readonly Piece[]): readonly Piece[] {
  const chain: Piece[] = [];
  let next = glueTo;
  while (next !== undefined) {
    const under = pieces.find(({ id }) => id === next);
    if (!under || chain.includes(under)) break;
    chain.push(under);
    next = under.glueTo;
  }
  return chain;
}

/** Whether two pieces lie as high as each other over the same bottom piece. */
export function areLevel(a: Piece, b: Piece, pieces: readonly Piece[]): boolean {
  const [underA, underB] = [below(a, pieces), below(b, pieces)];
  return underA.length > 0 && underA.length === underB.length && underA.at(-1) === underB.at(-1);
}
