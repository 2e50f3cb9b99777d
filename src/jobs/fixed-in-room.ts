/** What lies already on the sheets of a room, and which numbers that leaves to the others. */

import { transform, translation } from '../geometry/affine.ts';
import { boundsOf } from '../geometry/measure.ts';
import type { Bounds, Region } from '../geometry/types.ts';
import type { Room } from './rooms.ts';

/** What lies already on a sheet, by that sheet's number; on an offcut, by the offcut itself. */
export interface FixedInRoom {
  readonly room: Room;
  /** Of the sheet; of an offcut its own. */
  readonly number: number;
  /** What the beam encloses, on the whole sheet or offcut. */
  readonly region: Region;
  readonly order: string;
}

/** What lies on one sheet already, in the room's own coordinates; and whose it is. */
export interface Settled {
  readonly regions: readonly Region[];
  readonly orders: ReadonlySet<string>;
}

/** By the numbers of the sheets, ascending. */
export function fixedIn({ room, offcut, at, first, most }: Room, fixed: readonly FixedInRoom[]): Map<number, Settled> {
  const box = { minX: -room.gap, minY: -room.gap, maxX: room.width + room.gap, maxY: room.height + room.gap };
  const own = fixed.filter((each) =>
    offcut ? each.room.offcut?.offcut === offcut.offcut : each.number >= first && each.number < first + most,
  );
  const found = new Map<number, Settled>();
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

/** Sheets on which something is fixed keep their numbers; the others have those that are left. */
export function numbered({ offcut, first }: Room, fixed: readonly number[], count: number): number[] {
  if (offcut) return Array.from({ length: count }, () => 0);
  const numbers = [...fixed];
  for (let number = first; numbers.length < count; number += 1) if (!fixed.includes(number)) numbers.push(number);
  return numbers;
}
