/** What is left of a sheet and good for more: outlines that hold together, each a rectangle where that is nearly all of it. */

import { difference, intersection, normalise, offset } from '../geometry/clipper.ts';
import { translation, transform } from '../geometry/affine.ts';
import { largestRectangle } from '../geometry/largest-rectangle.ts';
import { area, boundsOf } from '../geometry/measure.ts';
import { partsOf } from '../geometry/parts.ts';
import { simplified } from '../geometry/simplify.ts';
import type { Bounds, Point, Region, Ring } from '../geometry/types.ts';
import { leastOffcutMm } from '../nesting/leftover.ts';
import { cutFromSheet } from './layout.ts';
import type { JobSheet } from './layout.ts';

/** Smaller ones are not worth keeping, in mm² (our own judgement). */
export const leastOffcutMm2 = 3000;

/** So much of an offcut in one rectangle is the whole of it (our own judgement). */
const nearlyAll = 0.93;

/** An outline may be so much within what is really left, in mm: a few corners are enough for a sheet of wood. */
const withinMm = 1;

export interface Leftover {
  /** In mm, its box at the origin. */
  readonly region: Region;
  /** Where the lower left corner of its box lies on the sheet. */
  readonly at: Point;
  readonly isRectangle: boolean;
}

/** Material nearer to a cut than the gap is not counted on. The largest first. */
export function leftoversOf(sheet: JobSheet): Leftover[] {
  const free = difference(sheet.outline, [offset(cutFromSheet(sheet), sheet.gap)]);
  // What is narrower than is worth keeping goes, and what hangs on by no more than that comes apart.
  const wide = intersection(offset(offset(free, -leastOffcutMm / 2, 'miter'), leastOffcutMm / 2, 'miter'), free);
  return partsOf(wide)
    .filter((part) => area(part) >= leastOffcutMm2)
    .map(plain)
    .filter(({ region }) => area(region) >= leastOffcutMm2)
    .sort((a, b) => area(b.region) - area(a.region));
}

function plain(part: Region): Leftover {
  const rectangle = largestRectangle(part);
  if (rectangle && areaOf(rectangle) >= nearlyAll * area(part))
    return { region: [corners(shrunk(rectangle))], at: { x: rectangle.minX, y: rectangle.minY }, isRectangle: true };
  // First inwards, so that fewer corners never reach out of it; tenths of a millimetre are fine enough to write.
  const inner = simplified(offset(part, -withinMm / 2, 'miter'), withinMm / 2 - 0.15);
  const [region = []] = partsOf(normalise(inner.map(tenths), 'evenodd')).sort((a, b) => area(b) - area(a));
  const { minX: x, minY: y } = boundsOf(region) ?? { minX: 0, minY: 0 };
  return { region: transform(region, translation(-x, -y)), at: { x, y }, isRectangle: false };
}

function areaOf({ minX, minY, maxX, maxY }: Bounds): number {
  return (maxX - minX) * (maxY - minY);
}

/** To tenths of a millimetre, never larger. */
function shrunk({ minX, minY, maxX, maxY }: Bounds): Bounds {
  const down = (value: number) => Math.floor(value * 10 + 1e-6) / 10;
  return { minX: 0, minY: 0, maxX: down(maxX - minX), maxY: down(maxY - minY) };
}

function tenths(ring: Ring): Ring {
  return ring.map(({ x, y }) => ({ x: Math.round(x * 10) / 10, y: Math.round(y * 10) / 10 }));
}

function corners({ minX, minY, maxX, maxY }: Bounds): Ring {
  return [
    { x: minX, y: minY },
    { x: maxX, y: minY },
    { x: maxX, y: maxY },
    { x: minX, y: maxY },
  ];
}
