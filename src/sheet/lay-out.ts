/**
 * Laying cut pieces out on sheets, by their true outlines. Each piece goes where it comes to lie lowest (`filling.ts`), which
 * is found level by level from where it would overlap what lies there (`meeting.ts`); in which order they come is what the search
 * is for (`search.ts`). No clock and no chance: the same parts are always laid out in the same way.
 */

import { chain, translation } from '../geometry/affine.ts';
import type { Affine } from '../geometry/types.ts';
import { fitsInto } from './bed.ts';
import type { Waiting } from './filling.ts';
import type { Layout, LayoutPart, LayoutRoom, Placement } from './layout.ts';
import { Meetings } from './meetings.ts';
import { Pace } from './pace.ts';
import type { Pose, Turn } from './pose.ts';
import type { Side } from './search.ts';
import { search } from './search.ts';
import type { Shape } from './shapes.ts';
import { shapesOf } from './shapes.ts';

export type { Layout, LayoutPart, LayoutRoom, Placement };

/** Edges that the search may look at. */
const effort = Number(globalThis.process?.env.EFFORT ?? 20_000_000);

/**
 * Lays out the parts on as few sheets as it finds, what is used of the last one pushed towards one side. Every part is inside
 * the sheet less its margin, and two on a sheet are the gap apart, to within a hundred-thousandth of a mm.
 * @throws RangeError if a length is not a finite number, or the margin or the gap is negative; and whatever `checkpoint`
 * throws to stop it. It is called every few milliseconds.
 */
export async function layOut(
  parts: readonly LayoutPart[],
  room: LayoutRoom,
  checkpoint: () => Promise<void>,
): Promise<Layout> {
  for (const length of [room.width, room.height, room.margin, room.gap]) {
    if (!(length >= 0 && length < Infinity)) throw new RangeError('A length of the sheet is not a number or negative.');
  }
  const shapes = await shapesOf(parts, room.gap, checkpoint);
  const inner = { width: room.width - 2 * room.margin, height: room.height - 2 * room.margin, gap: room.gap };
  const sides: Side[] = [];
  const poses = new Map<number, Pose>();
  const unplaced = new Set(parts.keys());
  for (const quarters of [0, 1] as const) {
    if (room.keep === (quarters === 0 ? 'height' : 'width')) continue;
    // A sheet that lies on its side is filled from the bottom as well, and so from the left of the one that stands.
    const sideways = quarters === 0 ? inner : { ...inner, width: inner.height, height: inner.width };
    const waiting = shapes.flatMap((shape, part): Waiting[] => {
      const fitting = shape ? posesOf(shape, quarters).filter((pose) => fitsInto(sideways, pose)) : [];
      for (const pose of fitting) poses.set(pose.id, pose);
      if (fitting.length > 0) unplaced.delete(part);
      return fitting.length > 0 ? [{ part, poses: fitting }] : [];
    });
    if (waiting.length > 0) sides.push({ room: sideways, waiting, either: room.keep === undefined });
  }
  const outside = [...unplaced].sort((a, b) => a - b);
  if (sides.length === 0) return { placements: [], unplaced: outside, sheets: 0 };
  const found = await search(sides, new Meetings(poses), new Pace(effort, checkpoint));
  const isSideways = found.side.room !== sides[0]!.room || room.keep === 'height';
  const back = isSideways ? { a: 0, b: -1, c: 1, d: 0, e: 0, f: inner.height } : translation(0, 0);
  const toSheet = chain(back, translation(room.margin, room.margin));
  const placements = found.filling.laid.map(({ part, sheet, pose, x, y }): Placement => {
    return { part, sheet, transform: tidy(chain(chain(pose.toOrigin, translation(x, y)), toSheet)) };
  });
  placements.sort((p, q) => p.part - q.part);
  return { placements, unplaced: outside, sheets: found.filling.beds.length };
}

function posesOf(shape: Shape, quarters: 0 | 1): Pose[] {
  return shape.turns.map((turn) => shape.pose(((turn + quarters) % 4) as Turn));
}

/** Without negative zeros, which no one wants to read in a file. */
function tidy({ a, b, c, d, e, f }: Affine): Affine {
  return { a: a + 0, b: b + 0, c: c + 0, d: d + 0, e: e + 0, f: f + 0 };
}
