/** Where something is on a piece, in words. */

import type { Bounds, Point } from '../geometry/types.ts';

/** By thirds in each direction. */
export function placeInWords({ x, y }: Point, { minX, minY, maxX, maxY }: Bounds): string {
  const third = (share: number) => Math.min(2, Math.max(0, Math.floor(3 * share)));
  const up = ['at the bottom', '', 'at the top'][third((y - minY) / (maxY - minY))]!;
  const across = ['on the left', '', 'on the right'][third((x - minX) / (maxX - minX))]!;
  return [up, across].filter((word) => word !== '').join(', ') || 'in the middle';
}
