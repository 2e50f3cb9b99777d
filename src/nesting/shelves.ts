/**
 * Shelf layout: parts by their bounding boxes, side by side in rows; each goes on the first row with room for it, the
 * tallest first (first fit by decreasing height; Coffman, Garey, Johnson and Tarjan 1980). It takes hardly any time,
 * and gives an upper bound on the number of sheets.
 */

import { fitMm } from './bin.ts';
import type { BinSize } from './layout.ts';
import type { Orientation } from './orientation.ts';
import type { PartToPlace, PlacedPart } from './partial-layout.ts';

interface Shelf {
  readonly sheet: number;
  readonly y: number;
  readonly height: number;
  used: number;
}

/** Every part must have an orientation that fits into the room. */
export function onShelves(candidates: readonly PartToPlace[], room: BinSize): PlacedPart[] {
  const shelves: Shelf[] = [];
  const filledTo: number[] = [];
  const gap = gapOf(candidates);
  const flat = candidates.map(({ part, orientations }) => ({ part, orientation: flattest(orientations) }));
  flat.sort((a, b) => b.orientation.height - a.orientation.height || a.part - b.part);
  return flat.map(({ part, orientation }): PlacedPart => {
    const { width, height } = orientation;
    let shelf = shelves.find(({ height: h, used }) => height <= h + fitMm && used + width <= room.width + fitMm);
    if (!shelf) {
      let sheet = filledTo.findIndex((to) => to + height <= room.height + fitMm);
      if (sheet < 0) sheet = filledTo.push(0) - 1;
      shelf = { sheet, y: filledTo[sheet]!, height, used: 0 };
      filledTo[sheet]! += height + gap;
      shelves.push(shelf);
    }
    const x = Math.min(shelf.used, Math.max(0, room.width - width));
    shelf.used += width + gap;
    return { part, orientation, sheet: shelf.sheet, x, y: Math.min(shelf.y, Math.max(0, room.height - height)) };
  });
}

/**
 * Gap between boxes so that outlines do not overlap: outlines extend half the gap beyond their parts, and slightly more
 * if they are coarse.
 */
function gapOf(candidates: readonly PartToPlace[]): number {
  let reach = 0;
  for (const { orientations } of candidates) {
    for (const { bounds, width, height } of orientations) {
      reach = Math.max(reach, -bounds.minX, -bounds.minY, bounds.maxX - width, bounds.maxY - height);
    }
  }
  return 2 * reach;
}

function flattest(orientations: readonly Orientation[]): Orientation {
  return orientations.reduce((best, each) => (each.height < best.height ? each : best));
}
