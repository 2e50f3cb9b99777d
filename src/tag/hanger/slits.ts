/**
 * Fills the hairline slits and pinholes that a ring leaves beside the letter it is joined to, such as above the foot of
 * an L, or in the bay of a backing: the beam does not separate them, and soot fills them.
 */

import { unionNear } from '../../geometry/change-within.ts';
import { clippedToBox } from '../../geometry/clip-to-box.ts';
import { difference, intersection, normalise, offset, union } from '../../geometry/clipper.ts';
import { area, boundsOf, ringArea, widened } from '../../geometry/measure.ts';
import { partsOf } from '../../geometry/parts.ts';
import { simplified } from '../../geometry/simplify.ts';
import type { Region } from '../../geometry/types.ts';

/**
 * Slits up to this width are filled, in mm: beside letters nearly twice a usual kerf, and in the bays of a backing, which nobody reads, as wide as a narrow
 * web. Our own judgement.
 */
export const slitsMm = { letters: 0.3, backing: 3 } as const;

/**
 * Holes up to this width between a ring and a letter, in mm, are filled too: they serve no purpose. Our own judgement.
 */
const pinholeMm = 1;

/** Smaller areas are the corners that any ring has where it meets an edge, in mm². */
const leastArea = 0.05;

/** Overlap of the fillings, so that no seam is left, and tolerance of their round corners, in mm. */
const lapMm = 0.02;

/** The lug with the narrow gaps between it and the body filled. */
export function withoutSlits(lug: Region, body: Region, slitMm: number = slitsMm.letters): Region {
  const box = widened(boundsOf(lug)!, 2 * Math.max(pinholeMm, slitMm));
  const near = normalise(clippedToBox(body, box));
  const whole = union([near, lug]);
  const coarse = simplified(whole, lapMm / 2);
  const closed = offset(offset(coarse, slitMm / 2, 'round', lapMm), -slitMm / 2, 'round', lapMm);
  const slits = partsOf(clippedToBox(difference(closed, [whole]), box)).filter((part) => area(part) > leastArea);
  const pinholes = whole
    .filter((ring) => ringArea(ring) < 0)
    .map((ring): Region => [[...ring].reverse()])
    .filter((hole) => offset(hole, -pinholeMm / 2, 'round', lapMm).length === 0);
  const between = [...slits, ...pinholes]
    .map((part) => offset(part, lapMm, 'miter'))
    .filter((part) => intersection(part, lug).length > 0 && intersection(part, near).length > 0);
  if (between.length === 0) return lug;
  // Where the ring only comes near, filling would make a thin bridge beside a hole instead.
  const joined = unionNear(body, [lug]);
  const holes = holesIn(joined);
  const filled = between.filter((part) => holesIn(unionNear(joined, [part])) <= holes);
  return filled.length > 0 ? union([lug, ...filled]) : lug;
}

function holesIn(region: Region): number {
  return region.filter((ring) => ringArea(ring) < 0).length;
}
