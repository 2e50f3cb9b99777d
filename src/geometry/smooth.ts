/** Lines without ripples. */

import type { Line } from './types.ts';

/**
 * The line with each point moved half of the way to the middle of its neighbours, `passes` times (binomial smoothing); its ends stay.
 * Ripples as short as two steps vanish; an arc of radius r, whose points are s apart, sinks by s²/4r in each pass.
 */
export function smoothedLine(line: Line, passes = 6): Line {
  let smooth = line;
  for (let pass = 0; pass < passes; pass += 1)
    smooth = smooth.map((point, index) => {
      const [before, after] = [smooth[index - 1], smooth[index + 1]];
      if (!before || !after) return point;
      return { x: (before.x + 2 * point.x + after.x) / 4, y: (before.y + 2 * point.y + after.y) / 4 };
    });
  return smooth;
}
