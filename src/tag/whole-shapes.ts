/** Body shapes that lie apart from the rest of their piece. */

import { intersection } from '../geometry/clipper.ts';
import { area, boundsOf, boxesOverlap } from '../geometry/measure.ts';
import type { Region } from '../geometry/types.ts';
import type { Piece, Source } from './tag.ts';

/** Rings and openings may take the rest of a shape. */
const wholeShare = 0.9;

/** The shapes that make this part of a piece, if it is of whole shapes and other parts are of others. */
export function wholeShapesOf(part: Region, { sources }: Piece): readonly Source[] {
  const bodies = sources.filter(({ use }) => use === 'body');
  const box = boundsOf(part);
  if (!box || bodies.length < 2) return [];
  const shares = bodies.map(({ region }) => {
    const own = boundsOf(region);
    return own && boxesOverlap(own, box) ? area(intersection(region, part)) / area(region) : 0;
  });
  const whole = bodies.filter((_, index) => shares[index]! > wholeShare);
  const isMixed = shares.some((share) => share > 1 - wholeShare && share <= wholeShare);
  return isMixed || whole.length === bodies.length ? [] : whole;
}
