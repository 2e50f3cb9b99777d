/** Turns a hanger of the spec into an opening and, for a ring, its lug. */

import { rotation, transform, translation } from '../../geometry/affine.ts';
import { union } from '../../geometry/clipper.ts';
import type { Point, Region } from '../../geometry/types.ts';
import type { Hanger } from '../../spec/model/model.ts';
import { circle, roundedRectangle } from '../shapes/plates.ts';
import type { PlacedHanger } from '../tag.ts';
import { directionOf } from './direction.ts';
import { placeClear } from './clear-of.ts';
import { levelled } from './level.ts';
import type { HangerObstacle } from './clear-of.ts';
import { placeInside } from './inside.ts';
import type { RingReading } from './reading.ts';
import { ringPlace } from './ring-place.ts';
import { endsOf, firstOf, insetsOf, isCorner, reachOf, slotTurn } from './space.ts';
import type { Opening } from './space.ts';

/**
 * @param on The shape it is joined to or set into.
 * @param whole The body as it hangs.
 * @param reading The lettering in it.
 * @param web The least width of a joint.
 * @param inTheWay What a hole keeps clear of if the spec leaves its place open.
 * @returns `undefined` if there is no room for it.
 */
export function placeHanger(
  hanger: Hanger,
  on: Region,
  whole: Region,
  reading: RingReading,
  web: number,
  inTheWay: readonly HangerObstacle[] = [],
): PlacedHanger | undefined {
  const { kind, path, at, opening } = hanger;
  const radius = opening / 2;
  const asides = asidesOf(hanger, on);
  const aside = asides[hanger.row?.nth ?? 0]!;
  const inside = (reach: number, inset: number, ends = asides) => placeInside(on, at, reach, inset, ends, aside);
  const withEnds = (each: Opening): Point | undefined => {
    const ends = endsOf(each);
    const allEnds = asides.flatMap(({ x, y }) => ends.map((end) => ({ x: x + end.x, y: y + end.y })));
    const [insets, reach] = [insetsOf(each), reachOf(each)];
    // Where they have no room, a check says how much is left of it.
    return (
      firstOf(insets, (inset) => inside(reach, inset, allEnds)) ?? firstOf(insets, (inset) => inside(reach, inset))
    );
  };
  switch (kind) {
    case 'ring': {
      const place = ringPlace(hanger, { on, whole, reading, web }, aside);
      const centre = nudged(place?.centre, hanger.nudge);
      if (!place || !centre) return undefined;
      const disc = [circle(centre, radius + hanger.wall)];
      const { nudge } = hanger;
      const lug = place.neck ? union([disc, transform(place.neck, translation(nudge.x, nudge.y))]) : disc;
      return {
        kind,
        path,
        at,
        centre,
        opening: [circle(centre, radius)],
        openingSize: opening,
        openingLength: opening,
        lug,
        wall: hanger.wall,
        sink: hanger.sink,
        ...(place.over !== undefined && { neckOn: place.over }),
      };
    }
    case 'hole': {
      const middle = hanger.row && firstOf(insetsOf(hanger), (inset) => inside(radius, inset));
      const place = hanger.row ? middle && { centre: middle, at } : placeClear(hanger, on, inTheWay);
      const centre = nudged(place && levelled(hanger, on, place.centre), hanger.nudge);
      if (!place || !centre) return undefined;
      return {
        kind,
        path,
        at: place.at,
        centre,
        opening: [circle(centre, radius)],
        openingSize: opening,
        openingLength: opening,
      };
    }
    case 'slot': {
      const place = withEnds(hanger);
      const centre = nudged(place && levelled(hanger, on, place), hanger.nudge);
      if (!centre) return undefined;
      return {
        kind,
        path,
        at,
        centre,
        opening: slot(hanger, centre),
        openingSize: opening,
        openingLength: hanger.length,
      };
    }
    case 'keyhole': {
      const place = withEnds(hanger);
      const centre = nudged(place && levelled(hanger, on, place), hanger.nudge);
      if (!centre) return undefined;
      return {
        kind,
        path,
        at,
        centre,
        opening: keyhole(hanger, centre),
        openingSize: opening,
        openingLength: hanger.length,
      };
    }
  }
}

/** From where one hanger would be to where each of its row is; of one that stands alone, to itself. */
function asidesOf({ row, at }: Hanger, on: Region): Point[] {
  if (!row) return [{ x: 0, y: 0 }];
  const up = at.kind === 'point' || at.kind === 'auto' ? { x: 0, y: 1 } : directionOf(at);
  const right = { x: up.y, y: -up.x };
  const spacing = row.spacing ?? extentAlong(on, right) / row.count;
  return Array.from({ length: row.count }, (_, nth) => {
    const far = (nth - (row.count - 1) / 2) * spacing;
    return { x: far * right.x, y: far * right.y };
  });
}

function extentAlong(region: Region, { x, y }: Point): number {
  let [least, most] = [Infinity, -Infinity];
  for (const point of region.flat()) {
    const along = point.x * x + point.y * y;
    least = Math.min(least, along);
    most = Math.max(most, along);
  }
  return most - least;
}

/**
 * The nail rests at `centre`, above the round opening when the piece hangs. In a corner, the slot points to that side.
 */
function keyhole({ at, head, opening, length }: Extract<Hanger, { kind: 'keyhole' }>, centre: Point): Region {
  const down = { x: centre.x, y: centre.y - (length - head / 2 - opening / 2) };
  const slot = [
    { x: centre.x - opening / 2, y: down.y },
    { x: centre.x + opening / 2, y: down.y },
    { x: centre.x + opening / 2, y: centre.y },
    { x: centre.x - opening / 2, y: centre.y },
  ];
  const upright = union([[slot], [circle(centre, opening / 2)], [circle(down, head / 2)]]);
  if (at.kind === 'point' || at.kind === 'auto') return upright;
  const isTop = at.kind === 'anchor' && at.anchor.startsWith('top');
  const { x, y } = isCorner(at) ? { x: 0, y: isTop ? 1 : -1 } : directionOf(at);
  return transform(upright, rotation((Math.atan2(x, y) * 180) / Math.PI, centre));
}

function nudged(point: Point | undefined, by: Point): Point | undefined {
  return point && { x: point.x + by.x, y: point.y + by.y };
}

function slot({ at, length, opening }: Extract<Hanger, { kind: 'slot' }>, centre: Point): Region {
  const flat = transform([roundedRectangle(length, opening, opening / 2)], translation(centre.x, centre.y));
  return transform(flat, rotation(slotTurn(at), centre));
}
