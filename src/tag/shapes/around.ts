/** The outline at a distance from a shape, such as a backing round its lettering. */

import { normalise, offset } from '../../geometry/clipper.ts';
import type { Corners } from '../../geometry/clipper.ts';
import { ringArea } from '../../geometry/measure.ts';
import { partsOf } from '../../geometry/parts.ts';
import { simplified } from '../../geometry/simplify.ts';
import type { Region } from '../../geometry/types.ts';

export interface AroundOptions {
  readonly by: number;
  readonly corners: Corners;
  /** If false, there are no holes at all: neither those of the shape nor those that closing bays leave. */
  readonly keepHoles: boolean;
  /** Width below which bays and slits are closed, in mm. */
  readonly bays: number;
}

/** Tolerances for simplifying outlines before each offset, in mm, which saves a quarter of the time. */
const sourceToleranceMm = 0.005;
const nextToleranceMm = 0.002;

/**
 * Growing by a disc and then by another is the same as growing by one disc as large as both. Within the first 2 mm
 * letters close their bays and lose most of what would have to be untangled at the full distance; below twice that
 * there is nothing to gain.
 */
const firstMm = 2;
const farMm = 2 * firstMm;

export function around(region: Region, { by, corners, keepHoles, bays }: AroundOptions): Region {
  const source = simplified(keepHoles ? region : withoutHoles(region), sourceToleranceMm);
  // Anything that a disc of this radius cannot enter from outside is closed: grown by the radius, then thinned by it.
  const radius = bays / 2;
  let grown: Region;
  if (corners === 'round') grown = closed(grownFar(source, by + radius), radius);
  else {
    const followed = offset(source, by, corners);
    grown = radius > 0 ? closed(offset(simplified(followed, sourceToleranceMm), radius), radius) : followed;
  }
  return keepHoles ? grown : withoutHoles(grown);
}

/** Factors by which bays may widen so that lines share one backing; beyond, the outline no longer follows the words. */
const widenings = [1, 2, 4, 8];

/** Twice the least that joins the lines, which would leave them hanging together by a waist. */
const beyondJoining = 2;

/** Like `around`, but closes bays until everything is one part, if one of these widths does that. */
export function aroundTogether(region: Region, way: AroundOptions): Region {
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
