/** The order of glued pieces, for pieces of the model and of the tag. */

interface Glued {
  readonly id: string;
  readonly glueTo?: string;
}

/** The pieces below a piece, from the one it is glued onto to the bottom one; none if it is not glued. */
export function piecesBelow<P extends Glued>({ glueTo }: P, pieces: readonly P[]): readonly P[] {
  const chain: P[] = [];
  let next = glueTo;
  while (next !== undefined) {
    const under = pieces.find(({ id }) => id === next);
    if (!under || chain.includes(under)) break;
    chain.push(under);
    next = under.glueTo;
  }
  return chain;
}

/** The bottom one of the pieces that are glued together. */
export function bottomPieceOf<P extends Glued>(piece: P, pieces: readonly P[]): P {
  return piecesBelow(piece, pieces).at(-1) ?? piece;
}
