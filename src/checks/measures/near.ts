/** Lettering so near to an edge or to another mark that it looks like a mistake, though neither touches the other. */

import { EdgeIndex } from '../../geometry/edge-index.ts';
import { distanceToSegment } from '../../geometry/measure.ts';
import type { Point, Region } from '../../geometry/types.ts';
import { mm } from '../../core/figures.ts';
import { clearance } from './clearance.ts';
import { perRegion } from './per-region.ts';
import { perRegionPair } from './per-region-pair.ts';

/** Gaps below this, in mm, look like a mistake (our own judgement). */
export const nearMm = 0.5;

/** Narrower gaps, in mm, look like none. */
const seenGapMm = 0.05;

/** Start of a sentence on a gap of this width, in mm. */
export const roomLeft = (width: number): string => (width < seenGapMm ? 'No room' : `Only ${mm(width)}`);

interface Gap {
  readonly width: number;
  /** A corner of either outline at the gap. */
  readonly point: Point;
}

/**
 * The narrowest gap between two outlines, 0 if they cross; `undefined` if it is wide enough. That of outlines that do not
 * cross is at a corner of one of them.
 */
export const narrowGap = perRegionPair((letters, other): Gap | undefined => {
  const [one, two] = [nearestCorner(letters, edgesOf(other)), nearestCorner(other, edgesOf(letters))];
  const gap = one.width <= two.width ? one : two;
  if (gap.width >= nearMm) return undefined;
  // Slower, but it knows outlines that cross; seldom needed.
  return { ...gap, width: clearance(letters, other, nearMm) };
});

const edgesOf = perRegion((region) => new EdgeIndex(region));

function nearestCorner(region: Region, edges: EdgeIndex): Gap {
  let gap: Gap = { width: Infinity, point: { x: 0, y: 0 } };
  for (const ring of region)
    for (const point of ring)
      for (const [from, to] of edges.near(point, nearMm)) {
        const width = distanceToSegment(point, from, to);
        if (width < gap.width) gap = { width, point };
      }
  return gap;
}
