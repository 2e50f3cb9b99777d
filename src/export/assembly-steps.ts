/** How the pieces of a tag become the tag: each with its number, in the order in which they are put together. */

import { difference, offset } from '../geometry/clipper.ts';
import { area } from '../geometry/measure.ts';
import { partsOf } from '../geometry/parts.ts';
import type { Piece, Tag } from '../tag/tag.ts';
import { assembliesOf } from './assemblies.ts';
import { counted } from '../core/units.ts';

export interface AssemblyStep {
  /** From 1. */
  readonly number: number;
  readonly piece: Piece;
  /** As a sentence. */
  readonly what: string;
}

/** Nothing for pieces that are not glued to any other. */
export function assemblySteps(tag: Tag): AssemblyStep[] {
  const layered = assembliesOf(tag.pieces).filter(({ layers }) => layers.length > 1);
  return layered
    .flatMap(({ layers }) => layers.flat())
    .map((piece, index) => ({ number: index + 1, piece, what: whatToDo(piece, tag) }));
}

function whatToDo(piece: Piece, tag: Tag): string {
  const under = tag.pieces.find(({ id }) => id === piece.glueTo);
  if (!under) return `Lay “${piece.title}” down with its face up.`;
  const parts = partsOf(piece.region).length;
  const what = parts > 1 ? `the ${counted(parts, 'part')} of “${piece.title}”` : `“${piece.title}”`;
  return `Glue ${what} onto “${under.title}”${hasLinesFor(piece, under) ? ', over the scored lines' : ''}.`;
}

/** Score lines that the piece hides show where it goes. */
function hasLinesFor(piece: Piece, under: Piece): boolean {
  const scored = under.marks.filter(({ operation }) => operation === 'score').flatMap(({ region }) => [...region]);
  return area(difference(scored, [offset(piece.region, 0.05)])) < 0.05 * area(scored);
}
