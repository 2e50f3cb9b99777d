/** Places a hole or a slot inside the body, at a given distance from its edge. */

import { translation, transform } from '../../geometry/affine.ts';
import { intersection, offset } from '../../geometry/clipper.ts';
import { boundsOf, boxCentre, centroid } from '../../geometry/measure.ts';
import type { Point, Region } from '../../geometry/types.ts';
import type { HangerPlace } from '../../spec/model/model.ts';
import { aimFrom, furthestOnRay, tiltDegrees } from './direction.ts';

/**
 * The centre of an opening whose edge is `inset` from the nearest edge of `on`, as far out in the wanted direction as that
 * allows, on the line through the centre of mass where it can be, so that the tag hangs straight.
 * @param reach From the centre of the opening to its own edge on the side of that direction, in mm.
 * @param asides Where those of a row lie from its middle: all of them have room, and are level.
 * @param aside That of the one whose centre it is.
 */
export function placeInside(
  on: Region,
  at: HangerPlace,
  reach: number,
  inset: number,
  asides: readonly Point[] = [],
  aside: Point = { x: 0, y: 0 },
): Point | undefined {
  const bounds = boundsOf(on);
  const beside = (point: Point | undefined) => point && { x: point.x + aside.x, y: point.y + aside.y };
  if (bounds && at.kind === 'point') {
    const middle = boxCentre(bounds);
    return beside({ x: middle.x + at.offset.x, y: middle.y + at.offset.y });
  }
  const found = at.kind === 'point' ? undefined : roomInside(on, sideOf(on, at), reach, inset);
  if (!found) return undefined;
  const { balance, direction } = found;
  const room = roomFor(found.room, asides);
  return beside(furthestOnRay(room, balance, direction) ?? cornerTowards(room, balance, direction));
}

/** Where something has room whose points lie so from its middle. */
export function roomFor(room: Region, asides: readonly Point[]): Region {
  if (asides.length <= 1) return room;
  return asides.map(({ x, y }) => transform(room, translation(-x, -y))).reduce((all, each) => intersection(all, each));
}

export type HangerSide = Exclude<HangerPlace, { kind: 'point' | 'auto' }>;

/** `auto` means the end of the longer side, where a tag has room and swings least. */
export function sideOf(on: Region, at: Exclude<HangerPlace, { kind: 'point' }>): HangerSide {
  return at.kind === 'auto' ? { kind: 'anchor', anchor: isWide(on) ? 'left' : 'top' } : at;
}

export function isWide(on: Region): boolean {
  const bounds = boundsOf(on);
  return bounds !== undefined && bounds.maxX - bounds.minX > bounds.maxY - bounds.minY;
}

/** The area in which the centre of an opening may be, the centre of mass, and the direction from there to the place. */
export function roomInside(
  on: Region,
  at: HangerSide,
  reach: number,
  inset: number,
): { readonly room: Region; readonly balance: Point; readonly direction: Point } | undefined {
  const balance = centroid(on);
  const room = offset(on, -(inset + reach));
  const bounds = boundsOf(room);
  return balance && bounds && { room, balance, direction: aimFrom(balance, bounds, at) };
}

/** The corner of the room nearest to the given direction, for when the ray misses the room. */
function cornerTowards(region: Region, from: Point, direction: Point): Point | undefined {
  let best: Point | undefined;
  let least = Infinity;
  for (const point of region.flat()) {
    const tilt = tiltDegrees({ x: point.x - from.x, y: point.y - from.y }, direction);
    if (tilt < least) {
      least = tilt;
      best = point;
    }
  }
  return best;
}
