/** Second joints of a ring, beside the one that holds it, that are too thin and break. */

import { clippedToBox } from '../../geometry/clip-to-box.ts';
import { difference, normalise, union } from '../../geometry/clipper.ts';
import { EdgeIndex } from '../../geometry/edge-index.ts';
import { boundsOf, distance, widened } from '../../geometry/measure.ts';
import { findNecks } from '../../geometry/necks.ts';
import type { Point, Region } from '../../geometry/types.ts';
import { circle } from '../shapes/plates.ts';
import { jointLengths } from './ring.ts';
import type { RingSize } from './ring.ts';
import { withoutSlits } from './slits.ts';

/** As much worse joined a ring may be elsewhere, in shares of a fully joined one. */
export const weakJointCost = 0.3;

/** An end of a neck is on the ring if it lies this near to its outline, in mm. */
const onRingMm = 0.05;

/** Whether a ring is also joined, beside its main joint, by less than `web`. */
export function hasWeakJoint(centre: Point, { hole, wall }: RingSize, body: Region, web: number): boolean {
  const radius = hole + wall;
  const lug = [circle(centre, radius)];
  const near = normalise(clippedToBox(body, widened(boundsOf(lug)!, 2 * web)));
  const [, ...others] = jointLengths(centre, radius, new EdgeIndex(near));
  if (others.every((other) => other >= wall)) return false;
  const made = difference(union([near, withoutSlits(lug, near)]), [[circle(centre, hole)]]);
  return findNecks(made, web).some(({ ends }) =>
    ends.some((end) => Math.abs(distance(end, centre) - radius) < onRingMm),
  );
}
