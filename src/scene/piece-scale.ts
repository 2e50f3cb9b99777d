/** Scale at which the shapes of a piece are drawn. Pure. */

import { boundsOf } from '../geometry/measure.ts';
import type { TagModel } from '../spec/model/model.ts';
import type { Tag } from '../tag/tag.ts';

/** Scale by piece id; 1 unless the whole piece, or the one it is glued to, is given a size. */
export function pieceScales(tag: Tag, model: TagModel): Map<string, number> {
  return new Map(
    tag.pieces.map(({ id, sources }) => {
      const shape = model.pieces.find((piece) => piece.id === id)?.body[0]?.shape;
      const made = shape && boundsOf(tag.made.get(shape)?.region ?? []);
      const drawn = boundsOf(sources[0]?.region ?? []);
      return [id, made && drawn ? (drawn.maxX - drawn.minX) / (made.maxX - made.minX) : 1];
    }),
  );
}
