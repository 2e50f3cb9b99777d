/** Directions in which a hanger may lie. */

import type { Bounds, Point, Region } from '../../geometry/types.ts';
import type { Anchor } from '../../spec/model/shape-model.ts';
import type { HangerPlace } from '../../spec/model/model.ts';

const diagonal = Math.SQRT1_2;

const anchors: Readonly<Record<Exclude<Anchor, 'center'>, Point>> = {
  top: { x: 0, y: 1 },
  bottom: { x: 0, y: -1 },
  left: { x: -1, y: 0 },
  right: { x: 1, y: 0 },
  'top-left': { x: -diagonal, y: diagonal },
  'top-right': { x: diagonal, y: diagonal },
  'bottom-left': { x: -diagonal, y: -diagonal },
  'bottom-right': { x: diagonal, y: -diagonal },
};

/** A unit vector. Degrees run clockwise from the top. */
export function directionOf(at: Extract<HangerPlace, { kind: 'anchor' | 'degrees' }>): Point {
  if (at.kind === 'anchor') return anchors[at.anchor];
  const angle = (at.degrees * Math.PI) / 180;
  return { x: Math.sin(angle), y: Math.cos(angle) };
}

/** The place of a ring is chosen for how it holds and reads as well: more of a tilt than this is seen, in degrees (our own judgement). */
export const seenTilt = 6;

/** Turned by more than this, in degrees, nobody takes it for meant (our own judgement). */
export const spoiltTilt = 30;

/** The direction from a point within a box; a corner means the actual corner of that box, whatever its proportions. */
export function aimFrom(
  from: Point,
  { minX, minY, maxX, maxY }: Bounds,
  at: Extract<HangerPlace, { kind: 'anchor' | 'degrees' }>,
): Point {
  const diagonally = directionOf(at);
  if (at.kind === 'degrees' || diagonally.x === 0 || diagonally.y === 0) return diagonally;
  const x = (diagonally.x > 0 ? maxX : minX) - from.x;
  const y = (diagonally.y > 0 ? maxY : minY) - from.y;
  const length = Math.hypot(x, y);
  return length > 0 ? { x: x / length, y: y / length } : diagonally;
}

/** The angle between a vector and a unit direction, 0 to 180. */
export function tiltDegrees({ x, y }: Point, direction: Point): number {
  return Math.abs(Math.atan2(x * direction.y - y * direction.x, x * direction.x + y * direction.y) * (180 / Math.PI));
}

/** The last point at which the ray from `from` leaves the region. */
export function furthestOnRay(region: Region, from: Point, direction: Point): Point | undefined {
  let furthest = -Infinity;
  for (const ring of region) {
    let previous = ring[ring.length - 1]!;
    for (const point of ring) {
      const a = across(previous);
      const b = across(point);
      if (a > 0 !== b > 0)
        furthest = Math.max(furthest, along(previous) + (a / (a - b)) * (along(point) - along(previous)));
      previous = point;
    }
  }
  return furthest > 0 ? { x: from.x + furthest * direction.x, y: from.y + furthest * direction.y } : undefined;

  function across({ x, y }: Point): number {
    return (x - from.x) * direction.y - (y - from.y) * direction.x;
  }
  function along({ x, y }: Point): number {
    return (x - from.x) * direction.x + (y - from.y) * direction.y;
  }
}
