/** Marks that have come too near to neighbouring letters are placed again, taking those into account. */

import { boundsOf } from '../../geometry/measure.ts';
import type { Bounds, Point, Region } from '../../geometry/types.ts';
import type { LetterBody } from './bodies.ts';
import { gapTo, placeMarks } from './marks.ts';
import type { MarkNeighbours, PlacedMark } from './marks.ts';
import type { Measures } from './measures.ts';
import { shares } from './shares.ts';

/** Distance in letters at which a letter may still crowd a mark: an arm may reach over several. */
const lookAround = 3;

/** Anything further from a mark than this, in x-heights, is not met wherever the mark is placed. */
const farShare = 0.8;

/** The marks of each letter of a line, once all letters have their final places; those that hold their letter stay. */
export function uncrowded(
  bodies: readonly LetterBody[],
  positions: readonly Point[],
  heldByMark: ReadonlySet<number>,
  measures: Measures,
): (readonly PlacedMark[])[] {
  const { xHeight } = measures;
  return bodies.map((body, index) => {
    if (body.marks.length === 0 || heldByMark.has(index)) return body.marks;
    const near = widenedBounds(
      body.marks.flatMap(({ region }) => [...region]),
      farShare * xHeight,
    );
    const beside = bodies.flatMap((other, k) => {
      if (k === index || Math.abs(k - index) > lookAround) return [];
      const at = { x: positions[k]!.x - positions[index]!.x, y: positions[k]!.y - positions[index]!.y };
      return neighboursOf(other, at).filter(({ box }) => meets(box, at, near));
    });
    const gap = gapTo(beside, { rows: body.markRows, columns: body.markColumns }, { x: 0, y: 0 });
    if (gap >= shares.markGap * xHeight) return body.marks;
    return placeMarks(body.base, body.grownMarks, measures, beside);
  });
}

function neighboursOf(body: LetterBody, at: Point): (MarkNeighbours & { readonly box: Bounds })[] {
  const base = { rows: body.rows, columns: body.columns, at, box: boundsOf(body.base)! };
  if (body.marks.length === 0) return [base];
  const box = boundsOf(body.marks.flatMap(({ region }) => [...region]))!;
  return [base, { rows: body.markRows, columns: body.markColumns, at, box }];
}

function widenedBounds(region: Region, by: number): Bounds {
  const { minX, minY, maxX, maxY } = boundsOf(region)!;
  return { minX: minX - by, minY: minY - by, maxX: maxX + by, maxY: maxY + by };
}

function meets(box: Bounds, { x, y }: Point, other: Bounds): boolean {
  return (
    box.minX + x < other.maxX && box.maxX + x > other.minX && box.minY + y < other.maxY && box.maxY + y > other.minY
  );
}
