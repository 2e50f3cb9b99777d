/** The direction of the grain on a piece. */

import { oncePer } from '../core/once-per.ts';
import type { Shape } from '../spec/model/shape-model.ts';
import { stockOf } from './by-stock.ts';
import type { Piece, Tag } from './tag.ts';

type Direction = 'left-right' | 'up-down';

/** Whether the grain runs up and down: as the look of the stock says, or else along the piece's stick, which snaps if cut across the grain. */
export function isGrainUpright(piece: Piece, tag: Pick<Tag, 'stock'>): boolean {
  const { look } = stockOf(piece, tag);
  if (look?.grain !== undefined) return look.grain === 'up-down';
  return piece.sources.some(({ use, shape }) => use === 'body' && stickDirection(shape) === 'up-down');
}

/** The direction of the grain once the sheet is laid the other way for the piece. */
export function otherGrain(piece: Piece, tag: Pick<Tag, 'stock'>): Direction {
  return isGrainUpright(piece, tag) ? 'left-right' : 'up-down';
}

/** `undefined` if there is no stick in the shape. Shapes share what they are made of, and are asked once each. */
const stickDirection = oncePer(({ generator, modifiers: { rotate = 0 } }: Shape): Direction | undefined => {
  const direction = directionWithin(generator);
  const isTurned = Math.abs(Math.sin((rotate * Math.PI) / 180)) > Math.SQRT1_2;
  return isTurned && direction ? turned[direction] : direction;
});

const turned = { 'left-right': 'up-down', 'up-down': 'left-right' } as const;

function directionWithin(generator: Shape['generator']): Direction | undefined {
  switch (generator.kind) {
    case 'stick':
      return generator.towards === 'up' || generator.towards === 'down' ? 'up-down' : 'left-right';
    case 'from':
      return stickDirection(generator.shape);
    case 'union':
      return generator.shapes.map(stickDirection).find((direction) => direction !== undefined);
    default:
      return undefined;
  }
}
