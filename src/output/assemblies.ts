/** Pieces of a tag that are seen together once it is made: one, and those glued on it. */

import { boundsOf } from '../geometry/measure.ts';
import type { Bounds } from '../geometry/types.ts';
import type { Piece } from '../tag/tag.ts';

export interface Assembly {
  /** From the back to the front: pieces that lie equally high, side by side on those before them. */
  readonly layers: readonly (readonly Piece[])[];
  readonly bounds: Bounds;
}

/** Every piece after what it is glued on; each heap with what lies on it. */
export function assembliesOf(pieces: readonly Piece[]): Assembly[] {
  const under = (piece: Piece) => pieces.find(({ id }) => id === piece.glueTo);
  const chainOf = (piece: Piece): Piece[] => {
    const chain = [piece];
    for (let below = under(piece); below && !chain.includes(below); below = under(below)) chain.push(below);
    return chain;
  };
  const chains = new Map(pieces.map((piece) => [piece, chainOf(piece)]));
  return pieces
    .filter((piece) => chains.get(piece)!.length === 1)
    .flatMap((base) => {
      const members = pieces.filter((piece) => chains.get(piece)!.at(-1) === base);
      const bounds = boundsOf(members.flatMap(({ region }) => region));
      const layers: Piece[][] = [];
      for (const piece of members) (layers[chains.get(piece)!.length - 1] ??= []).push(piece);
      return bounds ? [{ layers, bounds }] : [];
    });
}
