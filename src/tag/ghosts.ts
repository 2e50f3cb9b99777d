/** Shapes that are drawn although nothing of them would be cut: those that no piece uses yet, and those made with a stand-in. */

import type { YamlPath } from '../core/issue.ts';
import type { Shape, TagModel } from '../spec/model.ts';
import { shapesOf } from './load.ts';
import type { Ghost, Mark, Piece, Source, Tag } from './tag.ts';

/** Shapes with a name that no piece is made of, and nothing that a piece is made of is made from or placed on. */
export function unusedShapes(model: TagModel, { made }: Pick<Tag, 'made'>): Ghost[] {
  const used = new Set<Shape>();
  for (const piece of model.pieces) for (const shape of shapesOf(piece)) used.add(shape);
  return [...model.shapes].flatMap(([name, shape]): Ghost[] => {
    const region = made.get(shape)?.region ?? [];
    return used.has(shape) || region.length === 0 ? [] : [{ path: shape.path, name, region, why: 'unused' }];
  });
}

/** What is on the tag that was made with stand-ins, and not on the tag. */
export function lackingShapes(tag: Tag, whole: Tag): Ghost[] {
  return whole.pieces.flatMap((piece): Ghost[] => {
    const real = tag.pieces.find(({ id }) => id === piece.id);
    const made = new Set(real && drawnParts(real).map(({ shape }) => shape.path.join('/')));
    return drawnParts(piece)
      .filter(({ shape }) => !made.has(shape.path.join('/')))
      .map(({ shape: { path }, region }) => ({ path, name: nameOf(path), region, why: 'lacking' }));
  });
}

function drawnParts({ sources, marks }: Piece): readonly (Source | Mark)[] {
  return [...sources, ...marks].filter(({ region }) => region.length > 0);
}

function nameOf(path: YamlPath): string {
  const last = path.at(-1);
  return typeof last === 'string' ? last : 'shape';
}
