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
import { withFewCorners } from './few-corners.ts';

/** Smaller ones are not worth keeping, in mm² (our own judgement). */
export const leastOffcutMm2 = 3000;

/** Share from which the largest rectangle stands for the whole leftover (our own judgement). */
const nearlyAll = 0.93;

/** How far the outline that corners are taken from lies inside the true leftover at the most, in mm: so far, its figures can be rounded. */
const withinMm = 0.5;

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
  const region = rounded(withFewCorners(simpler(part)));
  const box = boundsOf(region) ?? { minX: 0, minY: 0, maxX: 0, maxY: 0 };
  const { minX: x, minY: y } = box;
  const isRectangle = region[0]?.length === 4 && area(region) > boundsArea(box) * (1 - 1e-9);
  return { region: transform(region, translation(-x, -y)), at: { x, y }, isRectangle };
}

function simpler(part: Region): Region {
  // Inset first, so that neither simplifying nor rounding leads outside.
  return largestOf(simplified(offset(part, -withinMm / 2, 'miter'), withinMm / 2 - 0.15));
}

/** To tenths of a millimetre, which are precise enough to write down. */
function rounded(region: Region): Region {
  return largestOf(region.map(tenths));
}

function largestOf(rings: Region): Region {
  const [largest = []] = partsOf(normalise(rings, 'evenodd')).sort((a, b) => area(b) - area(a));
  return largest;
}

/** Rounds down to tenths of a millimetre. */
function shrunk({ minX, minY, maxX, maxY }: Bounds): Bounds {
  const down = (value: number) => Math.floor(value * 10 + 1e-6) / 10;
  return { minX: 0, minY: 0, maxX: down(maxX - minX), maxY: down(maxY - minY) };
}

/** By way of finer steps, so that both ends of a level edge go the same way. */
function tenths(ring: Ring): Ring {
  const toTenth = (mm: number) => Math.round(Math.round(mm * 1e3) / 1e2) / 10;
  return ring.map(({ x, y }) => ({ x: toTenth(x), y: toTenth(y) }));
}
