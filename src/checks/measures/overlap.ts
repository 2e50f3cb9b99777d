/** Overlaps of two regions by more than a hair. */

import { difference, intersection } from '../../geometry/clipper.ts';
import { area, boundsOf, perimeter } from '../../geometry/measure.ts';
import { partsOf } from '../../geometry/parts.ts';
import { poleOf } from '../../geometry/pole.ts';
import { simplified } from '../../geometry/simplify.ts';
import type { Point, Region } from '../../geometry/types.ts';
import { distanceTo } from './blame.ts';
import { perRegion } from './per-region.ts';
import { perRegionPair } from './per-region-pair.ts';

/**
 * An overlap is a hair if no disc of this diameter, in mm, fits into it: outlines that touch or follow each other (our
 * own judgement).
 */
export const hairMm = 0.2;

/** Overlaps of less than this in all, in mm², are not noticed (our own judgement). */
export const seenMm2 = 0.5;

/** A region is swallowed by another if more than this share lies inside it; the rest is its edge. */
export const swallowedShare = 0.98;

/** Tolerance for simplifying outlines, in mm, which saves more than half of the time. */
const toleranceMm = 0.01;

/** Precision of the search for the largest disc in an overlap, in mm. */
const precisionMm = 0.01;

/** A connected part of an overlap. */
export interface Overlap {
  readonly region: Region;
  /** In mm². */
  readonly area: number;
}

/** The parts that two regions share, the largest first; none if together they are no more than a hair. */
export const overlapsOf = perRegionPair((a, b): readonly Overlap[] => beyondAHair(sharedBy(a, b)));

const sharedBy = perRegionPair((a, b): Region =>
  doBoxesMeet(a, b) ? intersection(outlinesNear(a, b), outlinesNear(b, a)) : [],
);

/** The least length and depth, in mm, of a touch that shows (our own judgement). */
const touch = { length: 1, depth: 0.05 } as const;

/** The parts that two regions share and that show where letters are among them: deeper than a hair, or long. */
export const touchesOf = perRegionPair((a, b): readonly Overlap[] => touchesIn(sharedBy(a, b)));

export const touchesIn = perRegion((shared): readonly Overlap[] =>
  partsOf(shared)
    .map((region) => ({ region, area: area(region) }))
    .filter((part) => {
      const length = touchLength(part);
      return (length >= touch.length && part.area >= touch.depth * length) || isBeyondAHair(part);
    }),
);

/** Length of a long and narrow part, in mm: half its perimeter. */
export function touchLength({ region }: Overlap): number {
  return perimeter(region) / 2;
}

/** The part of a region that others leave uncovered; cached as long as the regions are the same objects. */
export function uncovered(region: Region, covers: readonly Region[]): Region {
  return covers.reduce((rest, cover) => (doBoxesMeet(rest, cover) ? less(rest, cover) : rest), region);
}

const less = perRegionPair((region, cover) => difference(region, [cover]));

/** The parts of a region that are deeper than a hair, the largest first; none if they are too small to notice. */
export const beyondAHair = perRegion((region): readonly Overlap[] => {
  const deep = partsOf(region)
    .map((part) => ({ region: part, area: area(part) }))
    .filter(isBeyondAHair);
  return areaOfAll(deep) > seenMm2 ? deep : [];
});

function isBeyondAHair(part: Overlap): boolean {
  // Otherwise too small for a disc as wide as a hair.
  return part.area >= (Math.PI / 4) * hairMm ** 2 && isDeep(part.region, part.area);
}

/**
 * Whether a part is deeper than a hair. The largest disc in a shape without holes has at least the radius area /
 * perimeter, since its inner parallel curves are no longer than its outline; so most need not be searched.
 */
function isDeep(part: Region, areaMm2: number): boolean {
  if (part.length === 1 && (2 * areaMm2) / perimeter(part) > hairMm) return true;
  const point = poleOf(part, precisionMm);
  return point !== undefined && 2 * (distanceTo(part, point) + precisionMm / 2) > hairMm;
}

/** The centre of the largest disc that fits into a part of an overlap. */
export function overlapCentre({ region }: Overlap): Point {
  return middleIn(region);
}

const middleIn = perRegion((region): Point => poleOf(region, precisionMm) ?? region[0]![0]!);

export function areaOfAll(overlaps: readonly Overlap[]): number {
  return overlaps.reduce((sum, overlap) => sum + overlap.area, 0);
}

export function doBoxesMeet(a: Region, b: Region): boolean {
  const [one, other] = [boxOf(a), boxOf(b)];
  if (!one || !other) return false;
  return one.minX < other.maxX && other.minX < one.maxX && one.minY < other.maxY && other.minY < one.maxY;
}

const boxOf = perRegion((region) => boundsOf(region));
const coarsenedWithin = perRegion(simplified);

/** The outlines of a region that come near another, simplified. */
function outlinesNear(region: Region, other: Region): Region {
  return coarsenedWithin(region, toleranceMm).filter((ring) => doBoxesMeet([ring], other));
}
