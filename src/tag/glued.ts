/** Which piece is glued on which: of pieces as they are asked for, and as they are made. */

interface Glued {
  readonly id: string;
  readonly glueTo?: string;
}

/** What a piece is glued on, from the one directly below it to the one at the bottom; none for a piece that is not glued on. */
export function below<P extends Glued>({ glueTo }: P, pieces: readonly P[]): readonly P[] {
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

/** The piece at the back of those that are glued on one another. */
export function bottomOf<P extends Glued>(piece: P, pieces: readonly P[]): P {
  return below(piece, pieces).at(-1) ?? piece;
}
