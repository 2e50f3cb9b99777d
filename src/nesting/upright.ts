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
 * The layout with every part upright whose outer outline is the same upside down. `quarters`: turn of the sheet that was
 * filled. `smallest`: shorter side of the smallest part in mm; no part lies in a hole narrower than that, so such holes
 * do not matter.
 */
export function uprightLayout(
  laid: readonly PlacedPart[],
  {
    regions,
    shapes,
    quarters,
    smallest,
  }: {
    readonly regions: readonly Region[];
    readonly shapes: readonly (NestShape | undefined)[];
    readonly quarters: 0 | 1;
    readonly smallest: number;
  },
): PlacedPart[] {
  const known = new Map<NestShape, boolean>();
  return laid.map((each) => {
    const shape = shapes[each.part]!;
    if ((each.orientation.turn - quarters + 4) % 4 < 2) return each;
    const isSame = known.get(shape) ?? isSameUpsideDown(regions[each.part]!, smallest);
    known.set(shape, isSame);
    return isSame ? { ...each, orientation: shape.orientation(((each.orientation.turn + 2) % 4) as Turn) } : each;
  });
}

/** Whether a half turn about the middle of its box leaves the outer outline, and holes that could hold a part. */
function isSameUpsideDown(region: Region, smallest: number): boolean {
  const { minX, minY, maxX, maxY } = boundsOf(region)!;
  const counts = region.filter((ring) => ringArea(ring) > 0 || couldHold(ring, smallest));
  const edges = new EdgeIndex(counts);
  return counts.flat().every(({ x, y }) => {
    const point = { x: minX + maxX - x, y: minY + maxY - y };
    return edges.near(point, sameMm).some(([from, to]) => distanceToSegment(point, from, to) <= sameMm);
  });
}

function couldHold(ring: Region[number], smallest: number): boolean {
  const { minX, minY, maxX, maxY } = boundsOf([ring])!;
  return Math.min(maxX - minX, maxY - minY) >= smallest;
}
