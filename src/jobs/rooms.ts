/** Rooms for the pieces of a stock: whole sheets and rectangles within offcuts, in order of use. */

import { difference, offset } from '../geometry/clipper.ts';
import { largestRectangle } from '../geometry/largest-rectangle.ts';
import { area, boundsArea, boundsOf } from '../geometry/measure.ts';
import type { Bounds, Point, Region } from '../geometry/types.ts';
import { leastOffcutMm } from '../nesting/leftover.ts';
import type { PartToNest, SheetRoom } from '../nesting/nest.ts';
import type { Laying, SheetSource } from './model.ts';
import { freeOffcuts } from './offcuts.ts';
import type { Offcut, OffcutFile } from './offcuts.ts';

export interface Room {
  readonly room: SheetRoom;
  readonly turn: Laying['turn'];
  /** Number of such sheets, and the number of the first, counted over all sheets of the stock; 0 for offcuts. */
  readonly most: number;
  readonly first: number;
  /** Width kept free along the edges of the sheet or of the surrounding offcut, in mm. */
  readonly margin: number;
  /** Its place on the offcut. */
  readonly at: Point;
  readonly offcut?: { readonly file: string; readonly offcut: Offcut };
}

export const turnsOf = { never: 'none', half: 'half', quarter: 'quarter' } as const satisfies Record<
  Laying['turn'],
  PartToNest['turns']
>;

/** Limit on rectangles from one offcut; what is left after that is narrow. */
const mostRectangles = 4;

/** `kerf`: width that the beam takes between two pieces, in mm. */
export function roomsOf(
  sources: readonly SheetSource[],
  offcuts: ReadonlyMap<string, OffcutFile>,
  { job, kerf }: { readonly job: string; readonly kerf: number },
): Room[] {
  let next = 1;
  return sources.flatMap((source): Room[] => {
    const { margin, turn } = source;
    const gap = source.gap + kerf;
    if (source.kind === 'sheets') {
      const { width, height, count } = source;
      const first = next;
      next += count;
      return [{ room: { width, height, margin, gap }, turn, most: count, first, margin, at: { x: 0, y: 0 } }];
    }
    const file = offcuts.get(source.file);
    return (file ? freeOffcuts(file, job) : []).flatMap((offcut) =>
      rectanglesIn(offcut.region, margin, gap).map(({ minX, minY, maxX, maxY }) => ({
        room: { width: maxX - minX, height: maxY - minY, margin: 0, gap },
        turn,
        most: 1,
        first: 0,
        margin,
        at: { x: minX, y: minY },
        offcut: { file: source.file, offcut },
      })),
    );
  });
}

export function roomOutline({ room: { width, height }, offcut }: Room): Region {
  return offcut?.offcut.region ?? [corners({ minX: 0, minY: 0, maxX: width, maxY: height })];
}

/** The largest rectangle, then repeatedly the largest in what is left, down to the least that is worth cutting. */
function rectanglesIn(region: Region, margin: number, gap: number): Bounds[] {
  const box = boundsOf(region);
  if (!box) return [];
  const isRectangle = area(region) > boundsArea(box) * (1 - 1e-6);
  if (isRectangle) {
    const inner = { minX: margin, minY: margin, maxX: box.maxX - margin, maxY: box.maxY - margin };
    return isWorthIt(inner) ? [inner] : [];
  }
  const found: Bounds[] = [];
  let free = offset(region, -margin);
  while (found.length < mostRectangles) {
    const next = largestRectangle(free);
    if (!next || !isWorthIt(next)) break;
    found.push(next);
    free = difference(free, [offset([corners(next)], gap)]);
  }
  return found;
}

function isWorthIt({ minX, minY, maxX, maxY }: Bounds): boolean {
  return Math.min(maxX - minX, maxY - minY) >= leastOffcutMm;
}

function corners({ minX, minY, maxX, maxY }: Bounds): Point[] {
  return [
    { x: minX, y: minY },
    { x: maxX, y: minY },
    { x: maxX, y: maxY },
    { x: minX, y: maxY },
  ];
}

/** Tolerance in mm for a piece that just fits, whose sheet may lose this much by rounding. */
const slackMm = 1e-5;

/** Whether a piece alone fits into a room, in one of its allowed orientations. */
export function fits(region: Region, { room, turn }: Room): boolean {
  const box = boundsOf(region);
  if (!box) return false;
  const [across, up] = [box.maxX - box.minX, box.maxY - box.minY];
  const free = { width: room.width - 2 * room.margin + slackMm, height: room.height - 2 * room.margin + slackMm };
  const upright = across <= free.width && up <= free.height;
  return upright || (turn === 'quarter' && up <= free.width && across <= free.height);
}
