/** Whether a half turn leaves an outline as it is. */

import { EdgeIndex } from '../geometry/edge-index.ts';
import { boundsOf, distanceToSegment, ringArea } from '../geometry/measure.ts';
import type { Bounds, Region } from '../geometry/types.ts';

/** Outlines that differ by less than this, in mm, are equal: the grid of regions. */
const sameMm = 1e-5;

/** Tells of a part's region whether it is the same upside down. `boxes`: of all the parts that lie together. */
export function upsideDownAlike(boxes: readonly Bounds[]): (region: Region) => boolean {
  // No part lies in a hole narrower than the narrowest part, so such holes do not matter.
  const narrowest = Math.min(...boxes.map(shorterSide).filter((side) => side > 0));
  return (region) => isAlikeUpsideDown(region, narrowest);
}

/** Whether a half turn about the middle of its box leaves the outer outline, and holes that could hold a part. */
function isAlikeUpsideDown(region: Region, narrowest: number): boolean {
  const { minX, minY, maxX, maxY } = boundsOf(region)!;
  const counts = region.filter((ring) => ringArea(ring) > 0 || shorterSide(boundsOf([ring])) >= narrowest);
  const edges = new EdgeIndex(counts);
  return counts.flat().every(({ x, y }) => {
    const point = { x: minX + maxX - x, y: minY + maxY - y };
    return edges.near(point, sameMm).some(([from, to]) => distanceToSegment(point, from, to) <= sameMm);
  });
}

function shorterSide(box: Bounds | undefined): number {
  return box ? Math.min(box.maxX - box.minX, box.maxY - box.minY) : 0;
}
