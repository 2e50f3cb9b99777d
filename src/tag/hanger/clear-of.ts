/** Places a hole whose position the spec leaves open, clear of what is drawn, cut and glued beside it. */

import { difference, intersection, offset } from '../../geometry/clipper.ts';
import { area, boundsOf, centroid, contains, ringArea } from '../../geometry/measure.ts';
import { simplified } from '../../geometry/simplify.ts';
import type { Point, Region } from '../../geometry/types.ts';
import type { HangerPlace, Hole, TagModel } from '../../spec/model/model.ts';
import { strandOf } from '../../spec/model/tie.ts';
import type { BesideHole } from '../fit/neighbourhood.ts';
import type { MadeShape } from '../made-shape.ts';
import { circle } from '../shapes/plates.ts';
import { furthestOnRay } from './direction.ts';
import { isWide, placeInside, roomInside, sideOf } from './inside.ts';
import type { HangerSide } from './inside.ts';
import { firstOf, insetsOf } from './space.ts';

export interface HangerObstacle {
  readonly region: Region;
  /** Distance to keep between the hole and it, in mm. */
  readonly clear: number;
  /** Whether a hole may be set in it, or inside it. */
  readonly mayHold: boolean;
  /** Whether the tie must not lie across it on its way from the hole over the edge. */
  readonly isRead: boolean;
}

/** A hole nearer to a mark than this, in mm, looks misplaced (our own judgement). */
export const fromMarksMm = 1;

/** Angles off the plumb line at which a hole may go, in degrees: a tilt of three is visible (our own judgement). */
const tilts = [0.5, -0.5, 1, -1, 1.5, -1.5, 2, -2, 2.5, -2.5];

/** Share of the height above the centre of mass that is kept, so that the tag hangs as steadily and its hole stays near the edge (our own judgement). */
export const keptLever = 0.6;

/** Tolerance for simplifying obstacles, in mm. */
const roughMm = 0.03;

/** Overlaps smaller than this, in mm², only touch. */
const touchingMm2 = 0.02;

/** Margin left between things that would just touch, in mm. */
const easeMm = 0.05;

export function obstacleOf(
  { region, lettering = [] }: MadeShape,
  as: BesideHole['as'],
  { stock, tie }: TagModel,
): HangerObstacle {
  const isLettering = lettering.length > 0;
  // Letters left bright in a field are not lettering that a hole would cut into.
  const isField = lettering.every((each) => each.as !== 'material');
  switch (as) {
    case 'cut':
      return { region, clear: stock.minWeb, mayHold: false, isRead: isLettering };
    case 'glued on':
      return { region, clear: strandOf(tie, false), mayHold: false, isRead: true };
    case 'engraved':
      return { region, clear: fromMarksMm, mayHold: isField, isRead: isLettering };
    case 'scored':
      return {
        region: difference(offset(region, easeMm), [offset(region, -easeMm)]),
        clear: fromMarksMm,
        mayHold: false,
        isRead: isLettering,
      };
  }
}

interface HolePlace {
  readonly centre: Point;
  readonly at: HangerPlace;
}

/**
 * The default place if it is clear; else the nearest clear one on the line on which the tag hangs straight, on another
 * side if the spec names none, or a little off that line. If nothing is about as good, the hole stays at the default.
 */
export function placeClear(hole: Hole, on: Region, inTheWay: readonly HangerObstacle[]): HolePlace | undefined {
  const { at, opening } = hole;
  const radius = opening / 2;
  const insets = insetsOf(hole);
  const first = firstOf(insets, (inset) => placeInside(on, at, radius, inset));
  if (!first) return undefined;
  const asAsked = { centre: first, at };
  if (at.kind === 'point') return asAsked;
  const around = inTheWay.filter(({ region, mayHold }) => !(mayHold && enclosesHole(region, first, radius)));
  if (around.every((each) => isClear(first, radius, each))) return asAsked;
  const blocked = around.flatMap(({ region, clear }) => offset(simplified(region, roughMm), clear + radius + easeMm));
  const own = sideOf(on, at);
  const middle = centroid(on)!;
  const lever = Math.hypot(first.x - middle.x, first.y - middle.y);
  const find = (side: HangerSide, turns: readonly number[]): HolePlace | undefined => {
    for (const each of insets) {
      const found = roomInside(on, side, radius, each);
      if (!found) continue;
      const free = difference(found.room, [blocked]);
      for (const degrees of turns) {
        const point = furthestOnRay(free, found.balance, turned(found.direction, degrees));
        if (!point || Math.hypot(point.x - middle.x, point.y - middle.y) < keptLever * lever) continue;
        if (!around.some(({ region, isRead }) => isRead && liesUnder(region, point, found.direction, radius)))
          return { centre: point, at: side };
      }
    }
    return undefined;
  };
  const others = hole.anySide && isWide(on) ? sides.filter((side) => side.anchor !== (own as typeof side).anchor) : [];
  const tries = [() => find(own, [0]), ...others.map((side) => () => find(side, [0])), () => find(own, tilts)];
  for (const attempt of tries) {
    const found = attempt();
    if (found) return found;
  }
  return asAsked;
}

/** Other sides that a wide tag may hang from. */
const sides = [
  { kind: 'anchor', anchor: 'left' },
  { kind: 'anchor', anchor: 'right' },
  { kind: 'anchor', anchor: 'top' },
] as const;

/** Whether a hole lies wholly in a field, or wholly inside something that runs round it. */
function enclosesHole(region: Region, centre: Point, radius: number): boolean {
  const isIn = contains(region, centre) || region.some((ring) => ringArea(ring) < 0 && contains([ring], centre));
  if (!isIn) return false;
  const hole = [circle(centre, radius)];
  const shared = area(intersection(hole, region));
  return shared < touchingMm2 || shared > area(hole) - touchingMm2;
}

/** Whether a tie that leaves the hole in that direction lies across it. */
export function liesUnder(region: Region, { x, y }: Point, direction: Point, radius: number): boolean {
  return [-radius, 0, radius].some((aside) => {
    const from = { x: x - aside * direction.y, y: y + aside * direction.x };
    return furthestOnRay(region, from, direction) !== undefined;
  });
}

function isClear(centre: Point, radius: number, { region, clear }: HangerObstacle): boolean {
  const box = boundsOf(region);
  const reach = radius + clear;
  if (!box || centre.x < box.minX - reach || centre.x > box.maxX + reach) return true;
  if (centre.y < box.minY - reach || centre.y > box.maxY + reach) return true;
  return intersection([circle(centre, reach - easeMm)], region).length === 0;
}

function turned({ x, y }: Point, degrees: number): Point {
  const angle = (degrees * Math.PI) / 180;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return { x: x * cos - y * sin, y: x * sin + y * cos };
}
