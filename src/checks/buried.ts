/** Lettering that is lost in what it is united with: a name inside its own plate. */

import { difference, intersection, offset } from '../geometry/clipper.ts';
import { area } from '../geometry/measure.ts';
import { simplified } from '../geometry/simplify.ts';
import type { Region } from '../geometry/types.ts';
import type { Lettering } from '../tag/letters.ts';
import type { Ground } from './lettering-on.ts';
import { remembered } from './remembered.ts';

/** How wide a seam round the letters is looked at, and how exactly, in x-heights. */
const seamShare = 0.12;
const toleranceShare = 0.01;

/** The share of the seam round the letters that is as they are themselves: 1 where nothing of them is to be seen. */
export function buried(lettering: Lettering, { shape, region, isOpening }: Ground): number {
  const covered = seamCovered(shape, region)(lettering.xHeight);
  return isOpening ? 1 - covered : covered;
}

/** By x-height, which is the same for as long as the shape is. */
const seamCovered = remembered((shape, region) => {
  let known: number | undefined;
  return (xHeight: number) => (known ??= shareOfSeam(shape, region, xHeight));
});

function shareOfSeam(shape: Region, region: Region, xHeight: number): number {
  const tolerance = toleranceShare * xHeight;
  const coarse = simplified(shape, tolerance);
  const seam = difference(offset(coarse, seamShare * xHeight, 'round', tolerance), [coarse]);
  const whole = area(seam);
  return whole > 0 ? area(intersection(seam, simplified(region, tolerance))) / whole : 0;
}
