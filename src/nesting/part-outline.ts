/** Outline used for a part in the search: few points that cover the part and half of the gap around it. */

import { offset } from '../geometry/clipper.ts';
import { boundsOf, boxRing } from '../geometry/measure.ts';
import { keptPacked } from '../geometry/packed-regions.ts';
import type { Bounds, Region } from '../geometry/types.ts';
import { simplifyOutward } from './simplify-outward.ts';

/**
 * Tolerances in mm by which the outline may exceed the true one: for removing points, and for chords around corners.
 * Two parts face each other with one outline each, so they may be kept further apart than the gap by twice the sum,
 * 0.05 mm.
 */
const simpleMm = 0.015;
const cornerMm = 0.01;

/**
 * With more corners than this the search takes too long; it then uses a coarser outline, with these tolerances in mm.
 */
const enoughCorners = 80;
const coarseMm = [0.1, 0.2, 0.4, 0.8, 1.2];
/** Limit on the coarse tolerance as a share of a small part's size. */
const coarseShare = 0.02;

/** Bits for the index of a corner, so that an edge and a corner of the other outline fit into one number. */
export const cornerBits = 15;
export const maxCorners = (1 << cornerBits) - 1;

export interface PartOutline {
  /** Two parts are a gap apart if these do not overlap: each extends half a gap beyond its part. */
  readonly region: Region;
  /** Bounds of the part itself, for the margins of the sheet; its lower left corner is the origin. */
  readonly bounds: Bounds;
}

/**
 * Rounding of coordinates, in steps per mm, once the part is at the origin, so that equal parts are identical wherever
 * they are drawn. It is a divisor of the grid of regions.
 */
const stepsPerMm = 1e7;

/** Outline of a part moved to the origin; `undefined` for one without extent. */
export function outlineOf(region: Region, gap: number): PartOutline | undefined {
  const drawn = boundsOf(region);
  if (!drawn || drawn.minX === drawn.maxX || drawn.minY === drawn.maxY) return undefined;
  const moved = (at: number, by: number) => Math.round((at - by) * stepsPerMm) / stepsPerMm;
  const atOrigin = region.map((ring) => ring.map(({ x, y }) => ({ x: moved(x, drawn.minX), y: moved(y, drawn.minY) })));
  const bounds = { minX: 0, minY: 0, maxX: moved(drawn.maxX, drawn.minX), maxY: moved(drawn.maxY, drawn.minY) };
  const simple = simplifyOutward(atOrigin, simpleMm);
  return { region: gap > 0 ? offset(simple, gap / 2, 'tangent', cornerMm) : simple, bounds };
}

/** An outline that covers this one with few enough corners for the search; the same if it already has few. */
export function simplifiedOutline(
  { region, bounds }: PartOutline,
  enough = enoughCorners,
  share = coarseShare,
): PartOutline {
  const size = Math.min(bounds.maxX - bounds.minX, bounds.maxY - bounds.minY);
  let coarse = region;
  for (const tolerance of coarseMm) {
    if (cornersOf(coarse) <= enough || tolerance > size * share) break;
    coarse = simplifyOutward(region, tolerance);
  }
  return { region: cornersOf(coarse) > maxCorners ? [boxRing(boundsOf(region)!)] : coarse, bounds };
}

/** The same with its corners as plain numbers: of hundreds of shapes, few are looked at again. */
export function packedOutline({ region, bounds }: PartOutline): PartOutline {
  const kept = keptPacked(region);
  return {
    get region() {
      return kept.region;
    },
    bounds,
  };
}

function cornersOf(region: Region): number {
  return region.reduce((sum, ring) => sum + ring.length, 0);
}
