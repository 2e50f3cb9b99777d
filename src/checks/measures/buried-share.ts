/** Lettering that is lost in what it is united with, such as a name inside its own plate. */

import { difference, intersection, offset } from '../../geometry/clipper.ts';
import { area } from '../../geometry/measure.ts';
import { simplified } from '../../geometry/simplify.ts';
import type { Region } from '../../geometry/types.ts';
import type { Lettering } from '../../tag/lettering/letters.ts';
import type { Ground } from './lettering-on.ts';
import { perRegionPair } from './per-region-pair.ts';

/** Width of the seam examined round the letters, and its tolerance, in x-heights. */
const seamShare = 0.12;
const toleranceShare = 0.01;

/**
 * Share of the letters' surroundings that is made as they are: above the first they can hardly be seen, above the second
 * not at all. Our own judgement.
 */
export const buried = { half: 0.5, wholly: 0.75 } as const;

/** Share of the seam round the letters that is made in the same way as they are: 1 if nothing of them can be seen. */
export function buriedShare(lettering: Lettering, { shape, region, isOpening }: Ground): number {
  const covered = seamCovered(shape, region)(lettering.xHeight);
  return isOpening ? 1 - covered : covered;
}

/** One result per pair of regions, as the x-height only changes with the shape. */
const seamCovered = perRegionPair((shape, region) => {
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
