/** Finds what moves with a shape: whatever is made from it, placed on it or fitted into it. Pure. */

import type { ShapeEntry, PieceModel } from '../spec/model/model.ts';
import type { Shape } from '../spec/model/shape-model.ts';
import { bottomPieceOf } from '../tag/pieces-below.ts';
import { entriesOf } from './entries.ts';

/** Whether `shape` moves when `other` does. */
export function dependsOn(shape: Shape, other: Shape): boolean {
  if (shape === other) return true;
  const { generator, modifiers } = shape;
  const sources = [
    ...('shapes' in generator ? generator.shapes : []),
    ...('shape' in generator ? [generator.shape] : []),
    ...(modifiers.place ? [modifiers.place.shape] : []),
    ...(modifiers.fit ? [modifiers.fit.shape] : []),
  ];
  return sources.some((each) => dependsOn(each, other));
}

/**
 * Whether moving these entries leaves every tag unchanged, apart from its place on the sheet: that is so if all or none
 * of the shapes move in each set of pieces glued together. Hangers always move with their piece.
 */
export function movesWhole(pieces: readonly PieceModel[], moves: (entry: ShapeEntry) => boolean): boolean {
  const together = new Map<PieceModel, boolean[]>();
  for (const piece of pieces) {
    const bottom = bottomPieceOf(piece, pieces);
    together.set(bottom, [...(together.get(bottom) ?? []), ...entriesOf(piece).map(moves)]);
  }
  return [...together.values()].every((moved) => moved.every((each) => each === moved[0]));
}
