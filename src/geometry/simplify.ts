/** Outlines with fewer points. The only file that imports simplify-js. */

import simplify from 'simplify-js';
import type { Line, Region, Ring } from './types.ts';

/**
 * The region with fewer points: no point of the old outline is further than `tolerance` mm from the new one (Douglas
 * and Peucker 1973).
 */
export function simplified(region: Region, tolerance: number): Region {
  return region.map((ring) => simplifiedRing(ring, tolerance)).filter((ring) => ring.length > 2);
}

function simplifiedRing(ring: Ring, tolerance: number): Ring {
  // Closed by repeating the first point: the method is for open lines, and keeps both ends.
  return simplify([...ring, ring[0]!], tolerance, true).slice(0, -1);
}

/** The same for an open line, which keeps its ends. */
export function simplifiedLine(line: Line, tolerance: number): Line {
  return simplify([...line], tolerance, true);
}
