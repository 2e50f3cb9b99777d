/** A point that is certainly inside a polygon, unlike its centroid. */

import { boundsOf } from './measure.ts';
import type { Point, Ring } from './types.ts';

/** The middle of the widest stretch inside the ring at half its height. The ring must have an area. */
export function innerPoint(ring: Ring): Point {
  const { minY, maxY } = boundsOf([ring])!;
  const y = (minY + maxY) / 2;
  const crossings: number[] = [];
  let previous = ring.at(-1)!;
  for (const point of ring) {
    if (point.y > y !== previous.y > y) {
      crossings.push(point.x + ((y - point.y) * (previous.x - point.x)) / (previous.y - point.y));
    }
    previous = point;
  }
  crossings.sort((a, b) => a - b);
  let inside = { x: ring[0]!.x, width: -1 };
  for (let index = 0; index + 1 < crossings.length; index += 2) {
    const [from, to] = [crossings[index]!, crossings[index + 1]!];
    if (to - from > inside.width) inside = { x: (from + to) / 2, width: to - from };
  }
  return { x: inside.x, y };
}
