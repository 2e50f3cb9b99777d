/** Places of a room in the order of their distance from its middle. */

import type { Bounds, Point } from '../../geometry/types.ts';

/** Columns and rows of places. */
const count = 24;

/** An offset to the side is noticed sooner than one up or down (our own judgement). */
const asideCounts = 2;

/** Distance from the middle in mm, as it is noticed. */
export const offMiddle = ({ x, y }: Point, centre: Point): number =>
  Math.hypot(asideCounts * (x - centre.x), y - centre.y);

interface NearerPlaces {
  readonly places: readonly Point[];
  /** From one column to the next, in mm. */
  readonly across: number;
  /** From a place to what is furthest from it and from all the others, in mm. */
  readonly slack: number;
}

/** The places that are less than `far` off the middle, the nearest first. With `y`, all at that height. */
export function placesNearer({ minX, minY, maxX, maxY }: Bounds, centre: Point, far: number, y?: number): NearerPlaces {
  const [across, up] = [(maxX - minX) / count, (maxY - minY) / count];
  const evenly = (from: number, step: number): number[] =>
    Array.from({ length: count }, (_, index) => from + (index + 0.5) * step);
  const heights = y === undefined ? evenly(minY, up) : [y];
  const places = [centre.x, ...evenly(minX, across)]
    .flatMap((x) => heights.map((each) => ({ x, y: each })))
    .filter((place) => offMiddle(place, centre) < far)
    .sort((a, b) => offMiddle(a, centre) - offMiddle(b, centre));
  return { places, across, slack: Math.hypot(across, up) / 2 };
}
