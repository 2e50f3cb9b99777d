/** Where a shape that has its size goes while it still has some way to go: into the middle of that way. */

import type { Point, Region } from '../../geometry/types.ts';
import type { Walls } from './room.ts';

/** How far something can move either way until it meets something. */
interface Way {
  readonly back: number;
  readonly forth: number;
}

/**
 * Share of the way that stays free at either end, so that it crowds neither the edge nor what stands in the room, though its
 * middle is then a little off (our own judgement).
 */
const keptShare = 0.3;

/** Rounds of going to the middle, left and right and then up and down. */
const rounds = 3;

/** Nearer than this things touch. */
const touchingMm = 1e-4;

/** Nearer than this it is in the middle. */
const middleMm = 0.005;

/**
 * @param points Of the outline of the shape, where they are; `rings`: all of it.
 * @param centre The point of the shape that looks like its middle.
 * @returns How far to move it, so that what is free beside it is so evenly on both sides, as seen from its middle.
 */
export function settling(
  points: readonly Point[],
  rings: Region,
  walls: Walls,
  centre: Point,
  only?: 'x' | 'y',
): Point {
  const shift = { x: 0, y: 0 };
  const toMiddle = (along: 'x' | 'y', across: 'x' | 'y'): number => {
    const { back, forth } = wayOf(points, rings, walls, shift, along, across);
    if (!Number.isFinite(back + forth)) return 0;
    const [low, high] = extent(points, along);
    const middle = (low + high + forth - back) / 2;
    const kept = keptShare * (back + forth);
    return Math.min(forth - kept, Math.max(kept - back, middle - centre[along]));
  };
  for (let round = 0; round < rounds; round++) {
    const x = only === 'y' ? 0 : toMiddle('x', 'y');
    shift.x += x;
    const y = only === 'x' ? 0 : toMiddle('y', 'x');
    shift.y += y;
    if (Math.max(Math.abs(x), Math.abs(y)) < middleMm) break;
  }
  return shift;
}

function extent(points: readonly Point[], along: 'x' | 'y'): [number, number] {
  let [low, high] = [Infinity, -Infinity];
  for (const point of points) {
    low = Math.min(low, point[along]);
    high = Math.max(high, point[along]);
  }
  return [low, high];
}

/** Until a point of the shape meets an edge of the room, or a corner of the room an edge of the shape. */
function wayOf(
  points: readonly Point[],
  rings: Region,
  { region, corners }: Walls,
  shift: Point,
  along: 'x' | 'y',
  across: 'x' | 'y',
): Way {
  let [back, forth] = [Infinity, Infinity];
  const meet = (distance: number, way: Direction): void => {
    // What touches already is met at once, whatever rounding says.
    if (way > 0 && distance > -touchingMm) forth = Math.min(forth, Math.max(0, distance - touchingMm));
    if (way < 0 && distance < touchingMm) back = Math.min(back, Math.max(0, -distance - touchingMm));
  };
  const moved = { along: shift[along], across: shift[across] };
  eachLevel(points, region, along, across, moved, meet);
  eachLevel(corners, rings, along, across, { along: -moved.along, across: -moved.across }, (distance, way) => {
    meet(-distance, way);
  });
  return { back, forth };
}

/** Of a point of the shape and what it would meet: 1 where that is further along. */
type Direction = 1 | -1;

/**
 * Calls back with how far it is from each point, moved, to each edge that is level with it, and which way the edge ends what it
 * runs round, which is on its left.
 */
function eachLevel(
  points: readonly Point[],
  edges: Region,
  along: 'x' | 'y',
  across: 'x' | 'y',
  moved: { readonly along: number; readonly across: number },
  found: (distance: number, way: Direction) => void,
): void {
  const levels = points.map((point) => ({ at: point[across] + moved.across, place: point[along] + moved.along }));
  levels.sort((a, b) => a.at - b.at);
  for (const ring of edges) {
    let from = ring[ring.length - 1]!;
    for (const to of ring) {
      const [low, high] = from[across] < to[across] ? [from[across], to[across]] : [to[across], from[across]];
      if (low < high) {
        const way = to[across] > from[across] === (along === 'x') ? 1 : -1;
        const slope = (to[along] - from[along]) / (to[across] - from[across]);
        for (let i = firstFrom(levels, low); i < levels.length && levels[i]!.at < high; i++) {
          found(from[along] + slope * (levels[i]!.at - from[across]) - levels[i]!.place, way);
        }
      }
      from = to;
    }
  }
}

/** The first of sorted levels that is not below. */
function firstFrom(levels: readonly { readonly at: number }[], low: number): number {
  let [start, end] = [0, levels.length];
  while (start < end) {
    const middle = (start + end) >> 1;
    if (levels[middle]!.at < low) start = middle + 1;
    else end = middle;
  }
  return start;
}
