/** Clearances between an opening and glued pieces, on the path of the tie and elsewhere. */

import { boundsOf, boxCentre, contains, distance, distanceToSegment, ringArea } from '../../geometry/measure.ts';
import { EdgeIndex } from '../../geometry/edge-index.ts';
import type { Point, Region } from '../../geometry/types.ts';
import { perRegion } from './per-region.ts';

/** Distance from the edge of an opening to a glued piece, in mm. */
export interface Clearance {
  readonly width: number;
  /** On the opening, and on the glued piece. */
  readonly ends: readonly [Point, Point];
}

/** What is no further apart than this, in mm, touches: outlines of curves are off by as much. */
const touchingMm = 0.02;

/** The tie leaves the opening within 60° of straight ahead: the cosine of that (our own judgement). */
const aheadShare = 0.5;

/**
 * The least distances from an opening to a region beside it, towards a direction and away from it; anything farther
 * than `reach` is left out.
 * @param towards Any vector; if it is zero, every side counts as the path of the tie.
 */
export function clearances(
  opening: Region,
  glued: Region,
  towards: Point,
  reach: number,
): { readonly ahead?: Clearance; readonly behind?: Clearance } {
  const edges = edgesOf(glued, 0);
  const box = boundsOf(opening)!;
  const near = edges.near(boxCentre(box), Math.max(box.maxX - box.minX, box.maxY - box.minY) / 2 + reach);
  const found: { ahead?: Clearance; behind?: Clearance } = {};
  const note = (on: Point, at: Point): void => {
    const width = distance(on, at);
    if (width > reach) return;
    // Where they touch, the way from one to the other is rounding.
    const way = width > touchingMm ? vector(on, at) : vector(boxCentre(box), on);
    const along = way.x * towards.x + way.y * towards.y;
    const isAhead = along >= aheadShare * Math.hypot(way.x, way.y) * Math.hypot(towards.x, towards.y);
    const side = isAhead ? 'ahead' : 'behind';
    if (width < (found[side]?.width ?? Infinity)) found[side] = { width, ends: [on, at] };
  };
  // For two outlines that do not cross, one of the nearest points is a corner.
  const rim = opening.flatMap((ring) =>
    ring.map((to, index) => [ring[(index + ring.length - 1) % ring.length]!, to] as const),
  );
  for (const [from, to] of near) {
    rim.forEach(([previous, corner], index) => {
      const t = footOn(corner, from, to);
      const foot = pointBetween(from, to, t);
      // Otherwise something is nearer, as seen from another place of the rim.
      const next = rim[(index + 1) % rim.length]![1];
      if (t > 0 && t < 1 && !isToward(corner, foot, previous) && !isToward(corner, foot, next)) note(corner, foot);
    });
    for (const corner of [from, to]) {
      const edge = rim.reduce((a, b) => (distanceToSegment(corner, ...b) < distanceToSegment(corner, ...a) ? b : a));
      note(pointBetween(...edge, Math.min(1, Math.max(0, footOn(corner, ...edge)))), corner);
    }
  }
  return found;
}

/** Whether a region has a hole of its own round the opening, no larger than a hole for the tie needs to be. */
export function hasOwnHole(glued: Region, opening: Region, centre: Point, reach: number): boolean {
  const hole = glued.find((ring) => ringArea(ring) < 0 && contains([ring], centre));
  const size = hole && boundsOf([hole]);
  const own = boundsOf(opening)!;
  if (!size) return false;
  return [size.maxX - own.maxX, own.minX - size.minX, size.maxY - own.maxY, own.minY - size.minY].every(
    (gap) => gap <= reach,
  );
}

/**
 * Foot of the perpendicular from a point to the line through two others, as a share: 0 at the first, 1 at the second.
 */
function footOn({ x, y }: Point, from: Point, to: Point): number {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const length = dx * dx + dy * dy;
  return length === 0 ? 0 : ((x - from.x) * dx + (y - from.y) * dy) / length;
}

const vector = (from: Point, to: Point): Point => ({ x: to.x - from.x, y: to.y - from.y });

/** Whether moving from one point to another leads towards a third. */
function isToward(from: Point, to: Point, other: Point): boolean {
  const [way, aim] = [vector(from, to), vector(from, other)];
  return way.x * aim.x + way.y * aim.y > 0;
}

function pointBetween(from: Point, to: Point, t: number): Point {
  return { x: from.x + t * (to.x - from.x), y: from.y + t * (to.y - from.y) };
}

const edgesOf = perRegion((region) => new EdgeIndex(region));
