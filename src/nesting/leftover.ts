/** The used part of each sheet of a layout, and the leftover. */

import { difference, intersection, offset } from '../geometry/clipper.ts';
import { transform } from '../geometry/affine.ts';
import { area, boundsArea, boundsOf } from '../geometry/measure.ts';
import type { Bounds, Region } from '../geometry/types.ts';
import type { Layout, PartToNest, SheetRoom } from './layout.ts';

export interface SheetUse {
  /** Bounding box of all parts on it, in mm from its lower left corner. */
  readonly used: Bounds;
  /**
   * The largest rectangle left whole by a straight cut from edge to edge, including margins, one gap away from the
   * parts; `undefined` if it is narrower than `leastOffcutMm`.
   */
  readonly offcut: Bounds | undefined;
  /** Area of the parts on it, in mm². */
  readonly area: number;
  /** That area as a share of the sheet less the offcut, from 0 to 1. */
  readonly utilisation: number;
}

/** Narrower ones are not worth keeping, in mm (rule of thumb, no source). */
export const leastOffcutMm = 20;

/** What is left of a sheet, without strips too narrow to keep: parts that only those joined are apart. */
export function wideLeftover(sheet: Region, cut: Region, gap: number): Region {
  const free = difference(sheet, [offset(cut, gap)]);
  return intersection(offset(offset(free, -leastOffcutMm / 2, 'miter'), leastOffcutMm / 2, 'miter'), free);
}

/** For each sheet of a layout, in order. */
export function sheetUses(parts: readonly PartToNest[], room: SheetRoom, { placements, sheets }: Layout): SheetUse[] {
  return Array.from({ length: sheets }, (_, sheet): SheetUse => {
    const regions = placements
      .filter((placement) => placement.sheet === sheet)
      .map(({ part, transform: map }) => transform(parts[part]!.region, map));
    // No sheet is without a part.
    const used = boundsOf(regions.flat())!;
    const offcut = offcutOf(used, room);
    const taken = regions.reduce((sum, region) => sum + area(region), 0);
    const left = offcut ? boundsArea(offcut) : 0;
    return { used, offcut, area: taken, utilisation: taken / (room.width * room.height - left) };
  });
}

function offcutOf(used: Bounds, { width, height, gap, keep }: SheetRoom): Bounds | undefined {
  const above = { minX: 0, minY: used.maxY + gap, maxX: width, maxY: height };
  const beside = { minX: used.maxX + gap, minY: 0, maxX: width, maxY: height };
  const up = above.maxY - above.minY;
  const across = beside.maxX - beside.minX;
  const isAbove = keep ? keep === 'width' : up * width >= across * height;
  if ((isAbove ? up : across) < leastOffcutMm) return undefined;
  return isAbove ? above : beside;
}
