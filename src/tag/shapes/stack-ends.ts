/** The members of a stack in their places along its axis, and the ends at which they meet. */

import { transform, translation } from '../../geometry/affine.ts';
import { intersection } from '../../geometry/clipper.ts';
import { boundsOf, boxCentre, boxRing } from '../../geometry/measure.ts';
import type { Bounds, Region } from '../../geometry/types.ts';

export type StackDirection = 'down' | 'up' | 'left' | 'right';

/** The end of a member with sharp corners has no depth of its own, and is seen as this deep, in mm. */
export const sharpEndMm = 0.02;

export const opposite = { down: 'up', up: 'down', left: 'right', right: 'left' } as const;

/** The region beyond the end of `previous`, less the lap, its middle on the axis. */
export function abuttedRegion(
  region: Region,
  previous: Bounds | undefined,
  towards: StackDirection,
  lap: number,
): Region {
  const bounds = boundsOf(region)!;
  const centre = boxCentre(bounds);
  if (!previous) return transform(region, translation(-centre.x, -centre.y));
  const middle = boxCentre(previous);
  switch (towards) {
    case 'down':
      return transform(region, translation(middle.x - centre.x, previous.minY + lap - bounds.maxY));
    case 'up':
      return transform(region, translation(middle.x - centre.x, previous.maxY - lap - bounds.minY));
    case 'left':
      return transform(region, translation(previous.minX + lap - bounds.maxX, middle.y - centre.y));
    case 'right':
      return transform(region, translation(previous.maxX - lap - bounds.minX, middle.y - centre.y));
  }
}

export function isVertical(towards: StackDirection): boolean {
  return towards === 'down' || towards === 'up';
}

export function depthOf({ minX, maxX, minY, maxY }: Bounds, towards: StackDirection): number {
  return isVertical(towards) ? maxY - minY : maxX - minX;
}

/** The part of a region beyond the last line across it that is as wide as the whole, on the given side; never empty. */
export function endOf(region: Region, side: StackDirection): Region {
  const bounds = boundsOf(region)!;
  const vertical = isVertical(side);
  const sign = side === 'up' || side === 'right' ? 1 : -1;
  const widest = region.flat().filter(({ x, y }) => {
    const [across, low, high] = vertical ? [x, bounds.minX, bounds.maxX] : [y, bounds.minY, bounds.maxY];
    return across - low < 1e-3 || high - across < 1e-3;
  });
  const furthest = Math.max(...widest.map(({ x, y }) => sign * (vertical ? y : x)));
  const end = { down: -bounds.minY, up: bounds.maxY, left: -bounds.minX, right: bounds.maxX }[side];
  const line = sign * Math.min(furthest, end - sharpEndMm);
  const far = {
    ...bounds,
    ...{ down: { maxY: line }, up: { minY: line }, left: { maxX: line }, right: { minX: line } }[side],
  };
  return intersection(region, [boxRing(far)]);
}
