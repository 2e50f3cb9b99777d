/** Lines that keep a distance from outlines. */

import { distance, nearestOnSegment } from './measure.ts';
import { smoothedLine } from './smooth.ts';
import type { Line, Point, Region } from './types.ts';

/** Passes of smoothing: a point that is moved is at a corner beside one that stays. */
const passes = 2;

/** The line with each point that is nearer to a ring than `clear` mm moved straight away from it to that distance. */
export function movedOff(line: Line, rings: Region, clear: number): Line {
  return smoothedLine(
    line.map((point) => pointOff(point, rings, clear)),
    passes,
  );
}

function pointOff(point: Point, rings: Region, clear: number): Point {
  let [near, least] = [point, clear];
  for (const ring of rings) {
    let from = ring.at(-1)!;
    for (const to of ring) {
      const at = nearestOnSegment(point, from, to);
      const away = distance(at, point);
      if (away < least) [near, least] = [at, away];
      from = to;
    }
  }
  // On the ring, no side is away from it.
  if (least === clear || least === 0) return point;
  return { x: near.x + (clear / least) * (point.x - near.x), y: near.y + (clear / least) * (point.y - near.y) };
}
