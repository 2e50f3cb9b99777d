/** What a layout uses of each sheet, and what is left. */

import { transform } from '../geometry/affine.ts';
import { area, boundsOf } from '../geometry/measure.ts';
import type { Bounds } from '../geometry/types.ts';
import type { Layout, PartToNest, SheetRoom } from './layout.ts';

/** How a sheet is used. */
export interface SheetUse {
  /** The smallest box round all parts on it, in mm from its lower left corner. */
  readonly used: Bounds;
  /**
   * The largest rectangle that a straight cut from edge to edge leaves whole, margins included, a gap away from the parts;
   * `undefined` where it is narrower than `leastOffcutMm`.
   */
  readonly offcut: Bounds | undefined;
  /** mm² of the parts on it. */
  readonly area: number;
  /** That area as a share of what the offcut does not leave of the sheet, from 0 to 1. */
  readonly utilisation: number;
}

/** Narrower ones are not worth keeping (rule of thumb, no source). */
export const leastOffcutMm = 20;

/** Each sheet of a layout, in their order. */
export function sheetUses(parts: readonly PartToNest[], room: SheetRoom, { placements, sheets }: Layout): SheetUse[] {
  return Array.from({ length: sheets }, (_, sheet): SheetUse => {
    const regions = placements
      .filter((placement) => placement.sheet === sheet)
      .map(({ part, transform: map }) => transform(parts[part]!.region, map));
    // There is no sheet without a part.
    const used = boundsOf(regions.flat())!;
    const offcut = offcutOf(used, room);
    const taken = regions.reduce((sum, region) => sum + area(region), 0);
    const left = offcut ? (offcut.maxX - offcut.minX) * (offcut.maxY - offcut.minY) : 0;
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
