/** Shapes that are drawn but would not be cut: those that no piece uses yet, and those made with a stand-in. */

import type { YamlPath } from '../core/issue.ts';
import type { Shape } from '../spec/model/shape-model.ts';
import type { TagModel } from '../spec/model/model.ts';
import { shapesOf } from './load.ts';
import type { Ghost, Mark, Piece, Source, Tag } from './tag.ts';

/** Named shapes that no piece uses, directly or as a source or target of other shapes. */
export function unusedShapes(model: TagModel, { made }: Pick<Tag, 'made'>): Ghost[] {
  const used = new Set<Shape>();
  for (const piece of model.pieces) for (const shape of shapesOf(piece)) used.add(shape);
  return [...model.shapes].flatMap(([name, shape]): Ghost[] => {
    const region = made.get(shape)?.region ?? [];
    return used.has(shape) || region.length === 0 ? [] : [{ path: shape.path, name, region, why: 'unused' }];
  });
}

/** Everything on the tag made with stand-ins that is not on the real tag. */
export function lackingShapes(tag: Tag, whole: Tag): Ghost[] {
  return whole.pieces.flatMap((piece): Ghost[] => {
    const real = tag.pieces.find(({ id }) => id === piece.id);
    const made = new Set(real && drawnParts(real).map(({ shape }) => shape.path.join('/')));
    return drawnParts(piece)
      .filter(({ shape }) => !made.has(shape.path.join('/')))
      .map(({ shape: { path }, region }) => ({ path, name: nameFromPath(path), region, why: 'lacking' }));
  });
}

function drawnParts({ sources, marks }: Piece): readonly (Source | Mark)[] {
  return [...sources, ...marks].filter(({ region }) => region.length > 0);
}

function nameFromPath(path: YamlPath): string {
  const last = path.at(-1);
  return typeof last === 'string' ? last : 'shape';
}
