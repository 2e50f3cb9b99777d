/** Where straight lines stand among those that run round. */

import { flattenLines } from '../../geometry/flatten.ts';
import { hullOf } from '../../geometry/hull.ts';
import { boxCentre } from '../../geometry/measure.ts';
import type { Point, Ring } from '../../geometry/types.ts';
import type { HalfAxes, SpaceAbout } from '../curve-outline.ts';
import { boundsOfLines } from './text-lines.ts';
import type { PlacedLine } from './text-lines.ts';

/** Heights that are tried for the lines, evenly over what is free. */
const heights = 64;

/** Tolerance of the hull of the lines, in heights of their small letters. */
const offHull = 0.02;

/** Round all ink of the lines, with the middle of their box on the origin; in units of which the small letters of the largest line are one high. */
export function hullOfLines(lines: readonly PlacedLine[]): Ring {
  const box = boundsOfLines(lines);
  if (!box) return [];
  const middle = boxCentre(box);
  const ink = lines.flatMap(({ set, em, x, y }) =>
    flattenLines(set.curves, {
      affine: { a: em, b: 0, c: 0, d: em, e: x - middle.x, f: y - middle.y },
      tolerance: offHull,
    }),
  );
  return hullOf(ink.flat());
}

export interface MiddleRoom {
  readonly axes: HalfAxes;
  /** All of the ellipse, if left out. */
  readonly space?: SpaceAbout | undefined;
  /** Whether the lines stand on the middle of the ellipse: always, where that is free, or in the middle of what is free. */
  readonly at: 'centre' | 'centre first' | 'anywhere';
  /** Round lines that they keep clear of: points all round each. */
  readonly round: readonly (readonly Point[])[];
  readonly clear: number;
}

/** How far above the middle of the ellipse the lines stand; `undefined` where they have no room. */
export function middleHeight(hull: Ring, room: MiddleRoom): number | undefined {
  const { axes, space, at } = room;
  if (at !== 'anywhere' && hasRoomAt(0, hull, room)) return 0;
  if (at === 'centre') return undefined;
  const [low, high] = [space?.minY ?? -axes.b, space?.maxY ?? axes.b];
  const free: number[] = [];
  for (let step = 1; step < heights; step++) {
    const y = low + ((high - low) * step) / heights;
    if (hasRoomAt(y, hull, room)) free.push(y);
    else if (free.length > 0) break;
  }
  return free.length === 0 ? undefined : (free[0]! + free.at(-1)!) / 2;
}

function hasRoomAt(y: number, hull: Ring, { axes, space, round, clear }: MiddleRoom): boolean {
  const there = hull.map((point) => ({ x: point.x, y: point.y + y }));
  const isIn = space ? space.holds(there) : there.every((point) => Math.hypot(point.x / axes.a, point.y / axes.b) <= 1);
  return isIn && round.every((points) => points.every((point) => isClear(point, there, clear)));
}

/** Whether a point is further than that from a ring that runs counter-clockwise and never turns right. */
function isClear(point: Point, ring: Ring, clear: number): boolean {
  let isInside = true;
  let from = ring.at(-1)!;
  for (const to of ring) {
    const [dx, dy] = [to.x - from.x, to.y - from.y];
    const [x, y] = [point.x - from.x, point.y - from.y];
    if (dx * y - dy * x < 0) isInside = false;
    const along = Math.min(1, Math.max(0, (x * dx + y * dy) / (dx * dx + dy * dy || 1)));
    if (Math.hypot(x - along * dx, y - along * dy) < clear) return false;
    from = to;
  }
  return !isInside;
}
