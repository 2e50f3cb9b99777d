/** A push by hand, as it is written into a spec. */

import type { Point } from '../../geometry/types.ts';
import { written } from '../candidate.ts';

/** A step below this is none, in mm. */
const leastMm = 0.005;

export function nudgeText({ x, y }: Point, units: 'mm' | 'in'): string {
  const steps = [
    ...(Math.abs(y) < leastMm ? [] : [`${y > 0 ? 'up' : 'down'}: ${written(Math.abs(y), units)}`]),
    ...(Math.abs(x) < leastMm ? [] : [`${x > 0 ? 'right' : 'left'}: ${written(Math.abs(x), units)}`]),
  ];
  return steps.length === 0 ? '{up: 0}' : `{${steps.join(', ')}}`;
}
