/** Corners and edges near a place, for measuring from. Pure; any one unit of length. */

import type { PathData } from '../../../src/protocol/scene.ts';
import type { XY } from '../../common/camera/viewport.ts';

/** Closed rings. */
export type Rings = readonly (readonly XY[])[];

export interface SnapPoint {
  readonly at: XY;
  readonly kind: 'corner' | 'edge' | 'centre' | 'square';
}

/** Smallest turn of an outline, in degrees, that is a corner and not part of a curve. */
const cornerDegrees = 25;

/** Parses path data from the host; an open line is traversed there and back. */
export function ringsOf(data: PathData, [dx, dy]: XY): Rings {
  return data
    .split(/(?=M)/)
    .filter((ring) => ring !== '')
    .map((ring) => {
      const steps = ring.match(/-?[\d.]+/g) ?? [];
      const points: XY[] = [];
      let [x, y] = [dx, dy];
      for (let at = 0; at + 1 < steps.length; at += 2) {
        x += Number(steps[at]);
        y += Number(steps[at + 1]);
        points.push([x, y]);
      }
      return ring.endsWith('z') ? points : [...points, ...points.slice(1, -1).reverse()];
    });
}

export function cornersOf(rings: Rings): XY[] {
  return rings.flatMap((ring) =>
    ring.filter((point, index) => {
      const before = ring[(index + ring.length - 1) % ring.length]!;
      const after = ring[(index + 1) % ring.length]!;
      const turn = Math.abs(angle(point, after) - angle(before, point));
      return Math.min(turn, 2 * Math.PI - turn) > (cornerDegrees * Math.PI) / 180;
    }),
  );
}

/** The point on the outlines, within reach of `near`, that is nearest to `to`; `undefined` if none is within reach. */
export function nearestOnEdges(rings: Rings, near: XY, reach: number, to: XY = near): XY | undefined {
  let best: XY | undefined;
  let least = Infinity;
  for (const ring of rings) {
    let from = ring.at(-1)!;
    for (const point of ring) {
      if (isWithin(near, from, point, reach)) {
        const on = onSegment(from, point, near, reach, to);
        const off = on ? Math.hypot(on[0] - to[0], on[1] - to[1]) : Infinity;
        if (off < least) [best, least] = [on, off];
      }
      from = point;
    }
  }
  return best;
}

export function nearestOf(points: readonly XY[], near: XY, reach: number): XY | undefined {
  let best: XY | undefined;
  let least = reach;
  for (const point of points) {
    const off = Math.hypot(point[0] - near[0], point[1] - near[1]);
    if (off <= least) [best, least] = [point, off];
  }
  return best;
}

/** A cheap test without false negatives: the bounds of the edge, grown by the reach. */
function isWithin([x, y]: XY, [ax, ay]: XY, [bx, by]: XY, reach: number): boolean {
  return (
    x >= Math.min(ax, bx) - reach &&
    x <= Math.max(ax, bx) + reach &&
    y >= Math.min(ay, by) - reach &&
    y <= Math.max(ay, by) + reach
  );
}

/**
 * The point of the edge nearest to `to` if it is within reach of `near`; else the one nearest to `near`, if that is.
 */
function onSegment(from: XY, end: XY, near: XY, reach: number, to: XY): XY | undefined {
  const isNear = ([x, y]: XY): boolean => Math.hypot(x - near[0], y - near[1]) <= reach;
  return [foot(from, end, to), foot(from, end, near)].find(isNear);
}

function foot([ax, ay]: XY, [bx, by]: XY, [x, y]: XY): XY {
  const [dx, dy] = [bx - ax, by - ay];
  const length = dx * dx + dy * dy;
  const t = length === 0 ? 0 : Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / length));
  return [ax + t * dx, ay + t * dy];
}

function angle([ax, ay]: XY, [bx, by]: XY): number {
  return Math.atan2(by - ay, bx - ax);
}
