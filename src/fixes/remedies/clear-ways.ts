/** Moves that take a shape clear of another and keep it clear of everything else. */

import { translation, transform } from '../../geometry/affine.ts';
import { difference, offset } from '../../geometry/clipper.ts';
import { area, contains } from '../../geometry/measure.ts';
import type { Point, Region } from '../../geometry/types.ts';

/**
 * Clearance between two shapes that were moved apart, and to the edge, in mm: about a stroke of lettering (our own
 * judgement).
 */
export const clearanceMm = 1;

/** Distances to try, in mm; closely spaced at first. */
const stepsMm = [
  ...Array.from({ length: 12 }, (_, index) => (index + 1) / 2),
  ...Array.from({ length: 9 }, (_, index) => index + 7),
  ...Array.from({ length: 10 }, (_, index) => 2 * index + 17),
];

const directions = [
  { x: 1, y: 0 },
  { x: -1, y: 0 },
  { x: 0, y: 1 },
  { x: 0, y: -1 },
];

/** Area that may remain when even simple outlines are intersected, in mm². */
const nothingMm2 = 0.001;

/** Number of outline points that are tested before the whole outline. */
const probes = 24;

/**
 * For each direction, the shortest move that puts `moved` inside the room with a clearance to its edge and to the
 * obstacles. Obstacles other than the first that are already closer than that are ignored.
 */
export function clearWays(moved: Region, room: Region, [first, ...others]: readonly Region[]): Point[] {
  const around = (obstacle: Region) => offset(obstacle, clearanceMm);
  const isClearOf = (obstacle: Region) => area(difference(moved, [obstacle])) > area(moved) - nothingMm2;
  const kept = others.map(around).filter(isClearOf);
  const inset = offset(room, -clearanceMm);
  const free = difference(inset, [...(first ? [around(first)] : []), ...kept]);
  const some = spread(moved.flat(), probes);
  const isFree = (x: number, y: number): boolean =>
    some.every((point) => contains(free, { x: point.x + x, y: point.y + y })) &&
    area(difference(transform(moved, translation(x, y)), [free])) < nothingMm2;
  return directions.flatMap(({ x, y }) => {
    const step = stepsMm.find((mm) => isFree(x * mm, y * mm));
    return step === undefined ? [] : [{ x: x * step, y: y * step }];
  });
}

/** About `count` points, spread evenly over the list. */
function spread(points: readonly Point[], count: number): Point[] {
  const stride = Math.max(1, Math.floor(points.length / count));
  return points.filter((_, index) => index % stride === 0);
}
