/** Axes on which the two sides of a region are the same. */

import { difference } from './clipper.ts';
import { area, boundsOf, boxCentre } from './measure.ts';
import type { Point, Region } from './types.ts';

/** `x` of the one with the same to its left and right, `y` of the one with the same above and below. */
export interface Axes {
  readonly x?: number;
  readonly y?: number;
}

/** What one side may have that the other has not, as a share of the whole: a curve is made of chords. */
const evenShare = 0.01;

/** Axes of symmetry of a region, through the middle of its box. */
export function axesOf(region: Region, share = evenShare): Axes {
  const box = boundsOf(region);
  if (!box) return {};
  const { x, y } = boxCentre(box);
  const isEven = (mirror: (point: Point) => Point): boolean => {
    const mirrored = region.map((ring) => ring.map(mirror).reverse());
    return area(difference(region, [mirrored])) < share * area(region);
  };
  return {
    ...(isEven((point) => ({ x: 2 * x - point.x, y: point.y })) ? { x } : {}),
    ...(isEven((point) => ({ x: point.x, y: 2 * y - point.y })) ? { y } : {}),
  };
}
