/** Letters that are cut away, by a shape subtracted from their text or by a cut through their piece. */

import { difference, intersection } from '../../geometry/clipper.ts';
import { area } from '../../geometry/measure.ts';
import { simplified } from '../../geometry/simplify.ts';
import type { Region } from '../../geometry/types.ts';
import type { Letter, Lettering } from '../../tag/lettering/letters.ts';
import { perRegionPair } from './per-region-pair.ts';

/** A text as it was made, and the region it had to stay within. */
export interface Remainder {
  readonly shape: Region;
  readonly region: Region;
  readonly cuts: readonly Region[];
}

/** A letter that lacks more than this share is no longer that letter. Our own judgement. */
const missingShare = 0.4;

/** Tolerance for simplifying outlines, in x-heights. */
const toleranceShare = 0.01;

/** The letters that are mostly missing. */
export function cutAway({ letters, xHeight }: Lettering, { shape, region, cuts }: Remainder): Letter[] {
  const missing = [
    ...(shape === region ? [] : outside(shape, region)),
    ...cuts.flatMap((cut) => [...inside(shape, cut)]),
  ];
  if (missing.length === 0) return [];
  const coarse = simplified(missing, toleranceShare * xHeight);
  return letters.filter(({ region: ink }) => area(intersection(ink, coarse)) > missingShare * area(ink));
}

const outside = perRegionPair((shape, region) => difference(shape, [region]));

const inside = perRegionPair(intersection);
