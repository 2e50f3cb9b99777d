/** A margin at a side is kept from the outline there, which may bend away from the box round it. */

import { transform, translation } from '../../geometry/affine.ts';
import { difference, offset } from '../../geometry/clipper.ts';
import { area, ringArea } from '../../geometry/measure.ts';
import { simplified } from '../../geometry/simplify.ts';
import type { Point, Region } from '../../geometry/types.ts';
import type { MadeShape } from '../made-shape.ts';

/** Tolerance of outlines and of the place, in mm. */
const toleranceMm = 0.005;

/** Places tried on the way to the middle. */
const steps = 32;

/** What is beyond the margin by less than this, in mm², is rounding. */
const roundingMm2 = 1e-5;

/**
 * The first place on the way from `asked` to `middle` at which the shape keeps `margin` from the target's outline;
 * `asked` if there is none, as where it is too wide, or placed on letters.
 */
export function movedWithin(made: MadeShape, target: MadeShape, margin: number, asked: Point, middle: Point): Point {
  if (target.lettering) return asked;
  const room = offset(simplified(outers(target.region), toleranceMm), toleranceMm - margin);
  const own = simplified(outers(made.region), toleranceMm);
  const at = (share: number): Point => ({
    x: asked.x + share * (middle.x - asked.x),
    y: asked.y + share * (middle.y - asked.y),
  });
  const isWithin = (share: number): boolean => {
    const { x, y } = at(share);
    return area(difference(transform(own, translation(x, y)), [room])) < roundingMm2;
  };
  if (isWithin(0)) return asked;
  let far = 1;
  while (far <= steps && !isWithin(far / steps)) far++;
  if (far > steps) return asked;
  let [near, found] = [(far - 1) / steps, far / steps];
  const way = Math.hypot(middle.x - asked.x, middle.y - asked.y);
  while ((found - near) * way > toleranceMm) {
    const half = (near + found) / 2;
    if (isWithin(half)) found = half;
    else near = half;
  }
  return at(found);
}

function outers(region: Region): Region {
  return region.filter((ring) => ringArea(ring) > 0);
}
