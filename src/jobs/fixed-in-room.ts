/** Fixed pieces in a room: what lies on its sheets already, and which sheet numbers that leaves for the others. */

import { transform, translation } from '../geometry/affine.ts';
import { boundsOf } from '../geometry/measure.ts';
import type { Bounds, Region } from '../geometry/types.ts';
import type { Room } from './rooms.ts';

/** A fixed piece, on the sheet with this number or on this offcut. */
export interface FixedInRoom {
  readonly room: Room;
  /** Number of the sheet, or of the offcut. */
  readonly number: number;
  /** Area enclosed by the beam, in coordinates of the whole sheet or offcut. */
  readonly region: Region;
  readonly order: string;
}

/** Fixed regions on one sheet, in the room's own coordinates, and their orders. */
export interface FixedContents {
  readonly regions: readonly Region[];
  readonly orders: ReadonlySet<string>;
}

/** By sheet number, ascending. */
export function fixedIn(
  { room, offcut, at, first, most }: Room,
  fixed: readonly FixedInRoom[],
): Map<number, FixedContents> {
  const box = { minX: -room.gap, minY: -room.gap, maxX: room.width + room.gap, maxY: room.height + room.gap };
  const own = fixed.filter((each) =>
    offcut ? each.room.offcut?.offcut === offcut.offcut : each.number >= first && each.number < first + most,
  );
  const found = new Map<number, FixedContents>();
  for (const { number, region, order } of [...own].sort((a, b) => a.number - b.number)) {
    const here = transform(region, translation(-at.x, -at.y));
    // An offcut has several rooms.
    if (!touches(here, box)) continue;
    const { regions = [], orders = [] } = found.get(number) ?? {};
    found.set(number, { regions: [...regions, here], orders: new Set([...orders, order]) });
  }
  return found;
}

function touches(region: Region, { minX, minY, maxX, maxY }: Bounds): boolean {
  const box = boundsOf(region);
  return box !== undefined && box.minX < maxX && box.maxX > minX && box.minY < maxY && box.maxY > minY;
}

/** Sheets with fixed pieces keep their numbers; the others take the remaining ones. */
export function sheetNumbers({ offcut, first }: Room, fixed: readonly number[], count: number): number[] {
  if (offcut) return Array.from({ length: count }, () => 0);
  const numbers = [...fixed];
  for (let number = first; numbers.length < count; number += 1) if (!fixed.includes(number)) numbers.push(number);
  return numbers;
}
