/** Points along an outline, close enough together that nothing worth reporting lies between them. */

import { distance } from '../../geometry/measure.ts';
import type { Point, Ring } from '../../geometry/types.ts';

/** Longest distance between points on an edge, in mm. */
const stepMm = 1;

/**
 * One point for each step of each edge, in the order of the ring.
 * @param share Position within the step: at 0 every corner is included; at 0.5 every point lies on a single edge.
 */
export function pointsAlong(ring: Ring, share: 0 | 0.5): Point[] {
  return ring.flatMap((from, index) => {
    const to = ring[(index + 1) % ring.length]!;
    const steps = Math.max(1, Math.ceil(distance(to, from) / stepMm));
    return Array.from({ length: steps }, (_, step) => ({
      x: from.x + ((to.x - from.x) * (step + share)) / steps,
      y: from.y + ((to.y - from.y) * (step + share)) / steps,
    }));
  });
}
