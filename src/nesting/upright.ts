/** Parts that a half turn leaves as they are lie upright: whoever unloads the sheet reads them at once. */

import { EdgeIndex } from '../geometry/edge-index.ts';
import { boundsOf, distanceToSegment, ringArea } from '../geometry/measure.ts';
import type { Region } from '../geometry/types.ts';
import type { Turn } from './orientation.ts';
import type { PlacedPart } from './partial-layout.ts';
import type { NestShape } from './shapes.ts';

/** Outlines that differ by less than this, in mm, are equal: the grid of regions. */
const sameMm = 1e-5;

/**
 * Turns upright every part whose outer outline is the same upside down. `regions` and `shapes`: of all parts, fixed ones
 * included. `quarters`: turn of the sheet that was filled.
 */
export function uprighting(
  regions: readonly Region[],
  shapes: readonly (NestShape | undefined)[],
  quarters: 0 | 1,
): (laid: readonly PlacedPart[]) => PlacedPart[] {
  // No part lies in a hole narrower than the narrowest part, so such holes do not matter.
  const narrowest = Math.min(...regions.filter((_, part) => shapes[part]).map(shorterSide));
  const known = new Map<NestShape, boolean>();
  const upright = (each: PlacedPart): PlacedPart => {
    const shape = shapes[each.part]!;
    if ((each.orientation.turn - quarters + 4) % 4 < 2) return each;
    const isSame = known.get(shape) ?? isSameUpsideDown(regions[each.part]!, narrowest);
    known.set(shape, isSame);
    return isSame ? { ...each, orientation: shape.orientation(((each.orientation.turn + 2) % 4) as Turn) } : each;
  };
  return (laid) => laid.map(upright);
}

/** Whether a half turn about the middle of its box leaves the outer outline, and holes that could hold a part. */
function isSameUpsideDown(region: Region, narrowest: number): boolean {
  const { minX, minY, maxX, maxY } = boundsOf(region)!;
  const counts = region.filter((ring) => ringArea(ring) > 0 || shorterSide([ring]) >= narrowest);
  const edges = new EdgeIndex(counts);
  return counts.flat().every(({ x, y }) => {
    const point = { x: minX + maxX - x, y: minY + maxY - y };
    return edges.near(point, sameMm).some(([from, to]) => distanceToSegment(point, from, to) <= sameMm);
  });
}

function shorterSide(region: Region): number {
  const { minX, minY, maxX, maxY } = boundsOf(region)!;
  return Math.min(maxX - minX, maxY - minY);
}
