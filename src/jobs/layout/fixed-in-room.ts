/** Fixed pieces in a room: what lies on its sheets already, and which sheet numbers that leaves for the others. */

import { intersection, offset } from '../../geometry/clipper.ts';
import { area } from '../../geometry/measure.ts';
import type { Region } from '../../geometry/types.ts';
import type { Room } from './rooms.ts';

/** Tolerances for places rounded to 0.01 mm: overlaps in mm², and missing distance in mm. */
export const leastOverlap = 0.01;
export const nearMm = 0.03;

/** Whether they overlap, or leave less than the gap between them. */
export function areNear(one: Region, other: Region, gap: number): boolean {
  const grown = gap > nearMm ? offset(one, gap - nearMm) : one;
  return area(intersection(grown, other)) > leastOverlap;
}

/** A fixed piece, on the sheet with this number or on this offcut. */
export interface FixedInRoom {
  readonly room: Room;
  /** Number of the sheet, or of the offcut. */
  readonly number: number;
  /** Area enclosed by the beam, in coordinates of the whole sheet or offcut. */
  readonly region: Region;
  readonly order: string;
  readonly rush: boolean;
}

/** Fixed regions on one sheet, their orders, and whether any of those is a rush. */
export interface FixedContents {
  readonly regions: readonly Region[];
  readonly orders: ReadonlySet<string>;
  readonly isRushed: boolean;
}

/** By sheet number, ascending. What is missing of an offcut counts as fixed. */
export function fixedIn(
  { offcut, first, most, missing }: Room,
  fixed: readonly FixedInRoom[],
): Map<number, FixedContents> {
  const own = fixed.filter((each) =>
    offcut ? each.room.offcut?.offcut === offcut.offcut : each.number >= first && each.number < first + most,
  );
  const found = new Map<number, FixedContents>();
  if (offcut && missing.length > 0)
    found.set(offcut.offcut.id, { regions: missing, orders: new Set(), isRushed: false });
  for (const { number, region, order, rush } of [...own].sort((a, b) => a.number - b.number)) {
    const { regions = [], orders = [], isRushed = false } = found.get(number) ?? {};
    found.set(number, {
      regions: [...regions, region],
      orders: new Set([...orders, order]),
      isRushed: isRushed || rush,
    });
  }
  return found;
}

/** Sheets with fixed pieces keep their numbers; the others take the remaining ones. */
export function sheetNumbers({ offcut, first }: Room, fixed: readonly number[], count: number): number[] {
  if (offcut) return Array.from({ length: count }, () => 0);
  const numbers = [...fixed];
  for (let number = first; numbers.length < count; number += 1) if (!fixed.includes(number)) numbers.push(number);
  return numbers;
}
