/** Lettering so near to an edge or to another mark that it looks like a slip, though neither touches the other. */

import { EdgeIndex } from '../geometry/edge-index.ts';
import { distanceToSegment } from '../geometry/measure.ts';
import type { Point, Region } from '../geometry/types.ts';
import { clearance } from './clearance.ts';
import { perRegionPair } from './per-region-pair.ts';

/** Gaps below this, in mm, are hardly wider than the beam's spot and look like a slip (our own judgement). */
export const nearMm = 0.3;

/** The gap between the outlines of two regions, in mm, and the place of it; `undefined` if it is wide enough. */
export const narrowGap = perRegionPair((letters, other): { width: number; point: Point } | undefined => {
  const width = clearance(letters, other, nearMm);
  return width < nearMm ? { width, point: nearestCorner(letters, other) } : undefined;
});

/** The corner of the letters that is nearest to the other outline; good enough to point at. */
function nearestCorner(letters: Region, other: Region): Point {
  const edges = new EdgeIndex(other);
  let [best, least] = [letters[0]![0]!, Infinity];
  for (const point of letters.flat()) {
    for (const [from, to] of edges.near(point, 2 * nearMm)) {
      const away = distanceToSegment(point, from, to);
      if (away < least) [best, least] = [point, away];
    }
  }
  return best;
}
