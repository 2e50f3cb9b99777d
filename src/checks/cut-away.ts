/** Letters that are cut away: by a shape taken out of their text, or by a cut through their piece. */

import { difference, intersection } from '../geometry/clipper.ts';
import { area } from '../geometry/measure.ts';
import { simplified } from '../geometry/simplify.ts';
import type { Region } from '../geometry/types.ts';
import type { Letter, Lettering } from '../tag/letters.ts';
import { remembered } from './remembered.ts';

/** What a text was made as, and what it had to stay within. */
export interface Remainder {
  readonly shape: Region;
  readonly region: Region;
  /** Cuts through it. */
  readonly cuts: readonly Region[];
}

/** A letter of which more than this share is missing is no longer that letter. Our own judgement. */
const missingShare = 0.4;

/** Points that matter less than this are left out, in x-heights. */
const toleranceShare = 0.01;

/** The letters that are missing for the most part. */
export function cutAway({ letters, xHeight }: Lettering, { shape, region, cuts }: Remainder): Letter[] {
  const missing = [
    ...(shape === region ? [] : outside(shape, region)),
    ...cuts.flatMap((cut) => [...inside(shape, cut)]),
  ];
  if (missing.length === 0) return [];
  const coarse = simplified(missing, toleranceShare * xHeight);
  return letters.filter(({ region: ink }) => area(intersection(ink, coarse)) > missingShare * area(ink));
}

const outside = remembered((shape, region) => difference(shape, [region]));

const inside = remembered(intersection);
