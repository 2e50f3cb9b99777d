/** Straight lines through a region: where they run through material, and the load that bears. */

import { contains, distance } from '../geometry/measure.ts';
import type { Point, Region } from '../geometry/types.ts';

/** Start and end along a line, in mm. */
export type Interval = readonly [number, number];

/**
 * Crossings of a line with the edges, in mm along the unit vector `direction` from `origin`, ascending; corners count
 * once.
 */
export function crossings(region: Region, origin: Point, direction: Point): number[] {
  const found: number[] = [];
  for (const ring of region) {
    let previous = ring[ring.length - 1]!;
    let before = across(previous);
    for (const point of ring) {
      const here = across(point);
      if (before > 0 !== here > 0) {
        const from = along(previous);
        found.push(from + (before / (before - here)) * (along(point) - from));
      }
      previous = point;
      before = here;
    }
  }
  return found.sort((a, b) => a - b);

  function across({ x, y }: Point): number {
    return (x - origin.x) * direction.y - (y - origin.y) * direction.x;
  }
  function along({ x, y }: Point): number {
    return (x - origin.x) * direction.x + (y - origin.y) * direction.y;
  }
}

/** The stretches of a line that run through material. */
export function stretchesAcross(region: Region, origin: Point, direction: Point): Interval[] {
  const found = crossings(region, origin, direction);
  // As many lead in as out.
  return found.flatMap((from, i): Interval[] => (i % 2 === 0 ? [[from, found[i + 1]!]] : []));
}

/** Crossings this near to the ends of a line, in mm, belong to the outline that the ends lie on. */
const endsMm = 0.01;

/** The stretches through material of the line between two points of the outline, in mm from the first. */
export function stretchesBetween(region: Region, from: Point, to: Point): Interval[] {
  const length = distance(to, from);
  if (length === 0) return [];
  const direction = { x: (to.x - from.x) / length, y: (to.y - from.y) / length };
  const inner = crossings(region, from, direction).filter((at) => at > endsMm && at < length - endsMm);
  const stops = [0, ...inner, length];
  return stops.slice(1).flatMap((end, i): Interval[] => {
    const start = stops[i]!;
    const middle = pointAt(from, direction, (start + end) / 2);
    return contains(region, middle) ? [[start, end]] : [];
  });
}

export function pointAt(origin: Point, direction: Point, along: number): Point {
  return { x: origin.x + along * direction.x, y: origin.y + along * direction.y };
}

export const totalLength = (stretches: readonly Interval[]): number =>
  stretches.reduce((sum, [a, b]) => sum + b - a, 0);

/** The centre of mass, along their line, of stretches of equal thickness; 0 if there are none. */
export function massCentre(stretches: readonly Interval[]): number {
  const length = totalLength(stretches);
  return length > 0 ? stretches.reduce((sum, [a, b]) => sum + ((b - a) * (a + b)) / 2, 0) / length : 0;
}

/**
 * Width of a centrally loaded neck that bears the same load as these stretches together, loaded `offLine` mm off their
 * middle. The largest stress is F/(A·t) + F·e·y/(I·t) (straight beam, plane section), for one stretch of width b
 * F/(b·t) + 6·F·e/(b²·t); the width is F/t divided by that stress.
 */
export function effectiveWidth(stretches: readonly Interval[], offLine: number): number {
  const length = totalLength(stretches);
  if (length <= 0) return 0;
  const middle = massCentre(stretches);
  const reach = Math.max(...stretches.flat().map((at) => Math.abs(at - middle)));
  const inertia = stretches.reduce((sum, [a, b]) => sum + (b - a) ** 3 / 12 + (b - a) * ((a + b) / 2 - middle) ** 2, 0);
  return 1 / (1 / length + (offLine * reach) / inertia);
}
