/** Leftovers of a sheet that are worth keeping: one outline each, made a rectangle if that is nearly all of it. */

import { normalise, offset } from '../../geometry/clipper.ts';
import { translation, transform } from '../../geometry/affine.ts';
import { largestRectangle } from '../../geometry/largest-rectangle.ts';
import { area, boundsArea, boundsOf, boxRing } from '../../geometry/measure.ts';
import { partsOf } from '../../geometry/parts.ts';
import { simplified } from '../../geometry/simplify.ts';
import type { Bounds, Point, Region, Ring } from '../../geometry/types.ts';
import { wideLeftover } from '../../nesting/leftover.ts';
import { cutFromSheet } from '../layout/layout.ts';
import type { JobSheet } from '../layout/layout.ts';

/** Smaller ones are not worth keeping, in mm² (our own judgement). */
export const leastOffcutMm2 = 3000;

/** Share from which the largest rectangle stands for the whole leftover (our own judgement). */
const nearlyAll = 0.93;

/**
 * How far an outline may lie inside the true leftover, in mm: the first that makes do with few corners, else the last. Along a
 * row of letters the true one is all teeth, which nobody measures on the wood (our own judgement).
 */
const withinMm = [1, 2, 4];
const fewCorners = 24;

export interface Leftover {
  /** In mm, with its box at the origin. */
  readonly region: Region;
  /** Lower left corner of its box on the sheet. */
  readonly at: Point;
  readonly isRectangle: boolean;
}

/** Largest first. Material closer to a cut than the gap is not counted. */
export function leftoversOf(sheet: JobSheet): Leftover[] {
  return partsOf(wideLeftover(sheet.outline, cutFromSheet(sheet), sheet.gap))
    .filter((part) => area(part) >= leastOffcutMm2)
    .map(leftoverOf)
    .filter(({ region }) => area(region) >= leastOffcutMm2)
    .sort((a, b) => area(b.region) - area(a.region));
}

function leftoverOf(part: Region): Leftover {
  const rectangle = largestRectangle(part);
  if (rectangle && boundsArea(rectangle) >= nearlyAll * area(part))
    return { region: [boxRing(shrunk(rectangle))], at: { x: rectangle.minX, y: rectangle.minY }, isRectangle: true };
  const outlines = withinMm.map((within) => simpler(part, within));
  const region = outlines.find((each) => corners(each) <= fewCorners) ?? outlines.at(-1)!;
  const { minX: x, minY: y } = boundsOf(region) ?? { minX: 0, minY: 0 };
  return { region: transform(region, translation(-x, -y)), at: { x, y }, isRectangle: false };
}

function simpler(part: Region, withinMm: number): Region {
  // Inset first, so that simplifying never leads outside; tenths of a millimetre are precise enough to write down.
  const inner = simplified(offset(part, -withinMm / 2, 'miter'), withinMm / 2 - 0.15);
  const [region = []] = partsOf(normalise(inner.map(tenths), 'evenodd')).sort((a, b) => area(b) - area(a));
  return region;
}

function corners(region: Region): number {
  return region.reduce((sum, ring) => sum + ring.length, 0);
}

/** Rounds down to tenths of a millimetre. */
function shrunk({ minX, minY, maxX, maxY }: Bounds): Bounds {
  const down = (value: number) => Math.floor(value * 10 + 1e-6) / 10;
  return { minX: 0, minY: 0, maxX: down(maxX - minX), maxY: down(maxY - minY) };
}

function tenths(ring: Ring): Ring {
  return ring.map(({ x, y }) => ({ x: Math.round(x * 10) / 10, y: Math.round(y * 10) / 10 }));
}
