/** What goes to the machine: each piece's paths by operation, pieces side by side, kerf allowed for. */

import { transform, translation } from '../geometry/affine.ts';
import { offset } from '../geometry/clipper.ts';
import { boundsOf, ringArea } from '../geometry/measure.ts';
import type { Bounds, Region } from '../geometry/types.ts';
import { operations } from '../tag/tag.ts';
import type { Operation, Piece, Tag } from '../tag/tag.ts';

/** Between pieces of a tag that are laid out side by side, in mm. */
const gapMm = 5;

export interface CutPlan {
  /** In the order in which a sheet is worked, each with one entry a piece that has it. */
  readonly steps: readonly {
    readonly operation: Operation;
    readonly paths: readonly { readonly piece: string; readonly rings: Region }[];
  }[];
  readonly bounds: Bounds;
}

/**
 * The tag's pieces side by side, y up, the lower left corner of all paths at the origin. Cut lines run half a kerf outside
 * the finished outline and, being a growth, half a kerf inside every opening, so that what the beam leaves has the finished
 * size. `undefined` for a tag without material.
 */
export function planCuts({ pieces, stock }: Tag): CutPlan | undefined {
  const paths: Record<Operation, { piece: string; rings: Region }[]> = {
    engrave: [],
    score: [],
    'cut-inner': [],
    'cut-outer': [],
  };
  let x = 0;
  let height = 0;
  for (const piece of pieces) {
    const lines = linesOf(piece, stock.kerf);
    // Marks may run beyond the edge; they are written where they are, and the page holds them.
    const bounds = boundsOf(operations.flatMap((operation) => [...lines[operation]]));
    if (!bounds) continue;
    const move = translation(x - bounds.minX, -bounds.minY);
    for (const operation of operations) {
      if (lines[operation].length > 0)
        paths[operation].push({ piece: piece.id, rings: transform(lines[operation], move) });
    }
    x += bounds.maxX - bounds.minX + gapMm;
    height = Math.max(height, bounds.maxY - bounds.minY);
  }
  if (x === 0) return undefined;
  const steps = operations
    .map((operation) => ({ operation, paths: paths[operation] }))
    .filter((step) => step.paths.length > 0);
  return { steps, bounds: { minX: 0, minY: 0, maxX: x - gapMm, maxY: height } };
}

function linesOf({ region, marks }: Piece, kerf: number): Record<Operation, Region> {
  const cut = offset(region, kerf / 2);
  const marked = (operation: 'engrave' | 'score') =>
    marks.filter((mark) => mark.operation === operation).flatMap((mark) => [...mark.region]);
  return {
    engrave: marked('engrave'),
    score: marked('score'),
    'cut-inner': cut.filter((ring) => ringArea(ring) < 0),
    'cut-outer': cut.filter((ring) => ringArea(ring) > 0),
  };
}
