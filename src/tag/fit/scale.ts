/** The largest size at which a shape fits into another. */

import { transform } from '../../geometry/affine.ts';
import { difference } from '../../geometry/clipper.ts';
import { area } from '../../geometry/measure.ts';
import type { Point, Region } from '../../geometry/types.ts';

/** Factor by which sizes beyond the visible are tried, and the precision with which the largest is then found. */
const growthStep = 1.02;
const closeShare = 2e-4;

/** Less than this sticking out is rounding, in mm². */
const touchingMm2 = 1e-3;

/**
 * Like `seenScale`, in a room of any outline: if part of it is not visible from the centre, larger sizes are tried
 * until one sticks out.
 */
export function largestScale(shape: Region, shapeCentre: Point, room: Region, centre: Point): number {
  const seen = seenScale(shape, shapeCentre, room, centre);
  if (seen === 0 || allSeen(room, centre)) return seen;
  const fits = (scale: number) => {
    const move = {
      a: scale,
      b: 0,
      c: 0,
      d: scale,
      e: centre.x - scale * shapeCentre.x,
      f: centre.y - scale * shapeCentre.y,
    };
    return area(difference(transform(shape, move), [room])) < touchingMm2;
  };
  let low = seen;
  let high = seen * growthStep;
  while (fits(high)) {
    low = high;
    high *= growthStep;
  }
  while (high / low > 1 + closeShare) {
    const middle = Math.sqrt(low * high);
    if (fits(middle)) low = middle;
    else high = middle;
  }
  return low;
}

/** Whether every point of the room is visible from the centre: its only outline runs round it without turning back. */
function allSeen(room: Region, centre: Point): boolean {
  const [ring, ...others] = room;
  if (!ring || others.length > 0) return false;
  return ring.every((from, index) => {
    const to = ring[(index + 1) % ring.length]!;
    return (from.x - centre.x) * (to.y - centre.y) - (from.y - centre.y) * (to.x - centre.x) >= 0;
  });
}

/**
 * The largest factor by which `shape`, scaled about `shapeCentre` and moved so that this point comes to `centre`, stays
 * inside `room`. Exact if every point of the room is visible from the centre; otherwise only the visible part is used.
 *
 * A scaled outline leaves the room either where one of its corners meets an edge of the room, or where a corner of the
 * room meets one of its edges; each corner gives one bound along its ray from the centre. 0 if the centre is not in the
 * room.
 */
function seenScale(shape: Region, shapeCentre: Point, room: Region, centre: Point): number {
  const outline = shape.map((ring) => ring.map(({ x, y }) => ({ x: x - shapeCentre.x, y: y - shapeCentre.y })));
  const walls = room.map((ring) => ring.map(({ x, y }) => ({ x: x - centre.x, y: y - centre.y })));
  let scale = Infinity;
  for (const corner of outline.flat()) scale = Math.min(scale, nearestCrossing(corner, walls));
  for (const corner of walls.flat()) {
    const reach = furthestCrossing(corner, outline);
    if (reach > 0) scale = Math.min(scale, 1 / reach);
  }
  return Number.isFinite(scale) ? scale : 0;
}

function nearestCrossing(ray: Point, region: Region): number {
  let nearest = Infinity;
  eachCrossing(ray, region, (at) => (nearest = Math.min(nearest, at)));
  return nearest;
}

function furthestCrossing(ray: Point, region: Region): number {
  let furthest = 0;
  eachCrossing(ray, region, (at) => (furthest = Math.max(furthest, at)));
  return furthest;
}

/** Calls back with t ≥ 0 for each edge that the ray t·(x, y) from the origin crosses. */
function eachCrossing(ray: Point, region: Region, found: (t: number) => void): void {
  for (const ring of region) {
    let from = ring[ring.length - 1]!;
    let fromSide = ray.x * from.y - ray.y * from.x;
    for (const to of ring) {
      const toSide = ray.x * to.y - ray.y * to.x;
      if (fromSide > 0 !== toSide > 0) {
        const share = fromSide / (fromSide - toSide);
        const x = from.x + share * (to.x - from.x);
        const y = from.y + share * (to.y - from.y);
        const t = (x * ray.x + y * ray.y) / (ray.x * ray.x + ray.y * ray.y);
        if (t >= 0) found(t);
      }
      from = to;
      fromSide = toSide;
    }
  }
}
