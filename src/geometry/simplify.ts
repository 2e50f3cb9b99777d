/** Outlines with fewer points. The only file that knows simplify-js. */

import simplify from 'simplify-js';
import type { Region, Ring } from './types.ts';

/** No point of the old outline is further than `tolerance` mm from the new one (Douglas and Peucker 1973). */
export function simplified(region: Region, tolerance: number): Region {
  return region.map((ring) => simplifiedRing(ring, tolerance)).filter((ring) => ring.length > 2);
}

function simplifiedRing(ring: Ring, tolerance: number): Ring {
  // Closed by hand: the method is for open lines, and keeps both ends.
  return simplify([...ring, ring[0]!], tolerance, true).slice(0, -1);
}
