/**
 * Rows of boxes leave teeth between the ends of rows that differ in height. Where parts that drop and slide to the left
 * leave a wider piece of the sheet, they do.
 */

import { union } from '../geometry/clipper.ts';
import { area, boxRing, perimeter } from '../geometry/measure.ts';
import { groupedBy } from '../core/grouped.ts';
import { compactLayout } from './compaction.ts';
import type { BinSize } from './layout.ts';
import { wideLeftover } from './leftover.ts';
import type { PlacedPart } from './partial-layout.ts';
import type { NestShape } from './shapes.ts';
import type { WorkBudget } from './work-budget.ts';

/** How much wider what is left must be for parts to leave their rows (our own judgement). */
const worthLeaving = 1.1;

/** Less than this, in mm, makes no tooth. */
const leastMoveMm = 2;

/** Each sheet by itself; none of the parts lies higher or further right than before. */
export async function drawnTogether(
  laid: readonly PlacedPart[],
  shapes: readonly (NestShape | undefined)[],
  room: BinSize,
  budget: WorkBudget,
): Promise<readonly PlacedPart[]> {
  const closer = groupedBy(await compactLayout(laid, [], shapes, budget), ({ sheet }) => sheet);
  return [...groupedBy(laid, ({ sheet }) => sheet)].flatMap(([sheet, rows]) => {
    const drawn = closer.get(sheet)!;
    const isMoved = drawn.some(({ x, y }, i) => Math.hypot(x - rows[i]!.x, y - rows[i]!.y) > leastMoveMm);
    return isMoved && leftWidth(drawn, room) > worthLeaving * leftWidth(rows, room) ? drawn : rows;
  });
}

/** How wide what is left of a sheet is on the whole: its area by its outline, parts taken as their boxes. */
function leftWidth(laid: readonly PlacedPart[], { width, height, gap }: BinSize): number {
  const boxes = laid.map(({ x, y, orientation: o }) => [
    boxRing({ minX: x, minY: y, maxX: x + o.width, maxY: y + o.height }),
  ]);
  const left = wideLeftover([boxRing({ minX: 0, minY: 0, maxX: width, maxY: height })], union(boxes), gap);
  return left.length > 0 ? area(left) / perimeter(left) : 0;
}
