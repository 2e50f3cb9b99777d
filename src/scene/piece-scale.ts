/** How much larger the shapes of a piece are drawn than they are written. Pure. */

import { boundsOf } from '../geometry/measure.ts';
import type { TagModel } from '../spec/model.ts';
import type { Tag } from '../tag/tag.ts';

/** Of each piece by its id; 1 unless the whole of it, or of what it is glued on, is given a size. */
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
