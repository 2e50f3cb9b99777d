/** Areas: the shapes that others are fitted into or placed on, as the page shows them during work on either. Pure. */

import type { Shape } from '../spec/model/shape-model.ts';
import type { Area, Piece } from '../tag/tag.ts';
import type { SceneArea } from '../protocol/scene.ts';
import { pathData } from './path-data.ts';
import { ids } from './scene-ids.ts';
import type { SourceOf } from './scene-ids.ts';

/** One area for each shape of a piece that is fitted into another or placed on it. */
export function areasOf(piece: Piece, sourceOf: SourceOf): SceneArea[] {
  const { id, sources, marks } = piece;
  const nth = { body: 0, cut: 0 };
  const put: { readonly area?: Area; readonly shape: Shape; readonly holds: string }[] = [
    ...sources.map(({ use, ...rest }) => {
      const index = nth[use]++;
      return { ...rest, holds: use === 'body' ? ids.shape(id, index) : ids.cut(id, index) };
    }),
    ...marks.map((mark, index) => ({ ...mark, holds: ids.mark(id, index) })),
  ];
  return put.flatMap(({ area, shape, holds }): SceneArea[] => {
    const target = targetOf(shape);
    if (!area || !target || area.target.length === 0) return [];
    return [
      {
        id: ids.area(holds),
        label: labelOf(shape, target),
        data: pathData(area.target),
        ...(area.room && { room: pathData(area.room) }),
        holds: [holds],
        source: sourceOf(target.path),
      },
    ];
  });
}

/** The shape this one is fitted into or placed on, if any. */
export function targetOf({ modifiers: { fit, place } }: Shape): Shape | undefined {
  return (fit ?? place)?.shape;
}

function labelOf(shape: Shape, target: Shape): string {
  const name = shape.name === undefined ? 'This' : `“${shape.name}”`;
  const where = target.name === undefined ? 'it' : `“${target.name}”`;
  return shape.modifiers.fit ? `${name} fits into ${where}` : `${name} is placed on ${where}`;
}
