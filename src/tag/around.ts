/** The outline at a distance from a shape, as a backing follows its lettering. */

import { normalise, offset } from '../geometry/clipper.ts';
import type { Corners } from '../geometry/clipper.ts';
import { ringArea } from '../geometry/measure.ts';
import { partsOf } from '../geometry/parts.ts';
import { simplified } from '../geometry/simplify.ts';
import type { Region } from '../geometry/types.ts';

export interface Way {
  readonly by: number;
  readonly corners: Corners;
  /** Otherwise it has no holes at all: neither those of the shape nor those that bays leave as they close. */
  readonly keepHoles: boolean;
  /** Width below which bays and slits are closed, in mm. */
  readonly bays: number;
}

/** Points that matter less than this are left out before each offset, which takes a quarter off their time. */
const sourceToleranceMm = 0.005;
const nextToleranceMm = 0.002;

/**
 * Growing by a disc, and then by another, is growing by one disc as large as both. Within the first 2 mm letters close their
 * bays and lose most of what would have to be untangled at the full distance; under twice that, nothing is gained.
 */
const firstMm = 2;
const farMm = 2 * firstMm;

export function around(region: Region, { by, corners, keepHoles, bays }: Way): Region {
  const source = simplified(keepHoles ? region : withoutHoles(region), sourceToleranceMm);
  // Whatever a disc of this radius cannot enter from outside is closed: grown by the radius, then thinned by it.
  const radius = bays / 2;
  let grown: Region;
  if (corners === 'round') grown = closed(grownFar(source, by + radius), radius);
  else {
    const followed = offset(source, by, corners);
    grown = radius > 0 ? closed(offset(simplified(followed, sourceToleranceMm), radius), radius) : followed;
  }
  return keepHoles ? grown : withoutHoles(grown);
}

/** How many times as wide bays may be closed for lines to have one backing; wider, and the outline follows the words no longer. */
const widenings = [1, 2, 4, 8];

/** Twice what joins them at all, or lines hang on each other by a waist. */
const beyondJoining = 2;

/** As `around`; bays are closed until all of it is one part, where one of these widths does that. */
export function aroundTogether(region: Region, way: Way): Region {
  const bays = Math.max(way.bays, way.by);
  const closing = (times: number): Region => around(region, { ...way, bays: times * bays });
  const joining = bays > 0 ? widenings.find((times) => partsOf(closing(times)).length === 1) : undefined;
  return joining === undefined ? around(region, way) : closing(beyondJoining * joining);
}

function grownFar(region: Region, by: number): Region {
  if (by <= farMm) return offset(region, by);
  return offset(simplified(offset(region, firstMm), nextToleranceMm), by - firstMm);
}

function closed(wide: Region, radius: number): Region {
  return radius > 0 ? offset(simplified(wide, sourceToleranceMm), -radius) : wide;
}

function withoutHoles(region: Region): Region {
  return normalise(region.filter((ring) => ringArea(ring) > 0));
}
