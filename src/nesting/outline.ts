/** What stands for a part while it looks for its place: a few points that cover the part and half the gap round it. */

import { offset } from '../geometry/clipper.ts';
import { boundsOf } from '../geometry/measure.ts';
import type { Bounds, Region, Ring } from '../geometry/types.ts';
import { simplifyOutward } from './simplify-outward.ts';

/**
 * How far outside of the true line the outline may be, in mm: what fewer points and what chords round corners may give away.
 * Two parts face each other with an outline each, so they may be kept further apart than the gap by twice the sum, 0.05 mm.
 */
const simpleMm = 0.015;
const cornerMm = 0.01;

/** With more corners than this a search takes too long; it then makes do with an outline that strays further, up to so many mm. */
const enoughCorners = 80;
const coarseMm = [0.1, 0.2, 0.4, 0.8, 1.2];
/** Small parts are not to be made larger by more than this share of their size. */
const coarseShare = 0.02;

/** Corners are counted in so many bits, for an edge and a corner of the other outline to go into one number. */
export const cornerBits = 15;
export const maxCorners = (1 << cornerBits) - 1;

export interface PartOutline {
  /** Two parts are a gap apart where these do not overlap: each reaches half a gap beyond its part. */
  readonly region: Region;
  /** Of the part itself, which is what the margins of the sheet are for; its lower left corner is the origin. */
  readonly bounds: Bounds;
}

/**
 * Coordinates are rounded to this many to the mm once the part is at the origin, so that the same part is the same wherever it is
 * drawn. It divides the grid that regions are on.
 */
const stepsPerMm = 1e7;

/** Of a part moved to the origin; `undefined` for one that has no extent. */
export function outlineOf(region: Region, gap: number): PartOutline | undefined {
  const drawn = boundsOf(region);
  if (!drawn || drawn.minX === drawn.maxX || drawn.minY === drawn.maxY) return undefined;
  const moved = (at: number, by: number) => Math.round((at - by) * stepsPerMm) / stepsPerMm;
  const atOrigin = region.map((ring) => ring.map(({ x, y }) => ({ x: moved(x, drawn.minX), y: moved(y, drawn.minY) })));
  const bounds = { minX: 0, minY: 0, maxX: moved(drawn.maxX, drawn.minX), maxY: moved(drawn.maxY, drawn.minY) };
  const simple = simplifyOutward(atOrigin, simpleMm);
  return { region: gap > 0 ? offset(simple, gap / 2, 'tangent', cornerMm) : simple, bounds };
}

/** One with few enough corners to search with that covers it; the same if that has few. */
export function coarser({ region, bounds }: PartOutline, enough = enoughCorners, share = coarseShare): PartOutline {
  const size = Math.min(bounds.maxX - bounds.minX, bounds.maxY - bounds.minY);
  let coarse = region;
  for (const tolerance of coarseMm) {
    if (cornersOf(coarse) <= enough || tolerance > size * share) break;
    coarse = simplifyOutward(region, tolerance);
  }
  return { region: cornersOf(coarse) > maxCorners ? [boxRound(region)] : coarse, bounds };
}

function boxRound(region: Region): Ring {
  const { minX, minY, maxX, maxY } = boundsOf(region)!;
  return [
    { x: minX, y: minY },
    { x: maxX, y: minY },
    { x: maxX, y: maxY },
    { x: minX, y: maxY },
  ];
}

function cornersOf(region: Region): number {
  return region.reduce((sum, ring) => sum + ring.length, 0);
}
