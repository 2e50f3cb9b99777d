/** Moves a shape of fixed size to the middle of the way that it still has. */

import type { Point, Region } from '../../geometry/types.ts';
import type { Walls } from './room.ts';

/** The distances that something can move in either direction before it meets something. */
interface FreeTravel {
  readonly back: number;
  readonly ahead: number;
}

/**
 * Share of the way that stays free at either end, so that the shape crowds neither the edge nor obstacles, even if its
 * middle is then slightly off (our own judgement).
 */
const keptShare = 0.3;

/** Rounds of centring, horizontally and then vertically. */
const rounds = 3;

/** Things nearer than this touch, in mm. */
const touchingMm = 1e-4;

/** A shape nearer to the middle than this, in mm, is in it. */
const middleMm = 0.005;

/**
 * @param points Points of the shape's outline, in place; `rings` are all of it.
 * @param centre Its visual centre.
 * @returns The shift after which the free space on its two sides is even, as seen from its centre.
 */
export function centringMove(
  points: readonly Point[],
  rings: Region,
  walls: Walls,
  centre: Point,
  only?: 'x' | 'y',
): Point {
  const shift = { x: 0, y: 0 };
  const [ofPoints, ofCorners] = [points, walls.corners].map((each) => ({
    x: new Levels(each, 'x', 'y'),
    y: new Levels(each, 'y', 'x'),
  }));
  const toMiddle = (along: 'x' | 'y', across: 'x' | 'y'): number => {
    const levels = { points: ofPoints![along], corners: ofCorners![along] };
    const { back, ahead } = freeTravel(levels, rings, walls.region, shift, along, across);
    if (!Number.isFinite(back + ahead)) return 0;
    const [low, high] = extent(points, along);
    const middle = (low + high + ahead - back) / 2;
    const kept = keptShare * (back + ahead);
    return Math.min(ahead - kept, Math.max(kept - back, middle - centre[along]));
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

/** The way until a point of the shape meets an edge of the room, or a corner of the room an edge of the shape. */
function freeTravel(
  { points, corners }: { readonly points: Levels; readonly corners: Levels },
  rings: Region,
  region: Region,
  shift: Point,
  along: 'x' | 'y',
  across: 'x' | 'y',
): FreeTravel {
  let [back, ahead] = [Infinity, Infinity];
  const meet = (distance: number, way: Direction): void => {
    // Things that already touch meet at once, despite rounding.
    if (way > 0 && distance > -touchingMm) ahead = Math.min(ahead, Math.max(0, distance - touchingMm));
    if (way < 0 && distance < touchingMm) back = Math.min(back, Math.max(0, -distance - touchingMm));
  };
  const moved = { along: shift[along], across: shift[across] };
  eachLevel(points, region, along, across, moved, meet);
  eachLevel(corners, rings, along, across, { along: -moved.along, across: -moved.across }, (distance, way) => {
    meet(-distance, way);
  });
  return { back, ahead };
}

/** Direction from a point of the shape to what it would meet: 1 if that is further along. */
type Direction = 1 | -1;

/** Points in the order of their levels, for many questions about what is level with an edge. */
class Levels {
  /** Level and place of each, in that order. */
  readonly at: Float64Array;
  readonly place: Float64Array;

  constructor(points: readonly Point[], along: 'x' | 'y', across: 'x' | 'y') {
    const sorted = [...points].sort((a, b) => a[across] - b[across]);
    this.at = Float64Array.from(sorted, (point) => point[across]);
    this.place = Float64Array.from(sorted, (point) => point[along]);
  }

  /** Index of the first level that is not below `low`. */
  firstFrom(low: number): number {
    let [start, end] = [0, this.at.length];
    while (start < end) {
      const middle = (start + end) >> 1;
      if (this.at[middle]! < low) start = middle + 1;
      else end = middle;
    }
    return start;
  }
}

/**
 * Calls back for each moved point and each edge level with it, with the distance, and the direction in which the edge
 * ends what it encloses, which is on its left.
 */
function eachLevel(
  levels: Levels,
  edges: Region,
  along: 'x' | 'y',
  across: 'x' | 'y',
  moved: { readonly along: number; readonly across: number },
  found: (distance: number, way: Direction) => void,
): void {
  const { at, place } = levels;
  for (const ring of edges) {
    let from = ring[ring.length - 1]!;
    for (const to of ring) {
      const [low, high] = from[across] < to[across] ? [from[across], to[across]] : [to[across], from[across]];
      if (low < high) {
        const way = to[across] > from[across] === (along === 'x') ? 1 : -1;
        const slope = (to[along] - from[along]) / (to[across] - from[across]);
        const first = from[along] - moved.along + slope * (moved.across - from[across]);
        const end = high - moved.across;
        for (let i = levels.firstFrom(low - moved.across); i < at.length && at[i]! < end; i++)
          found(first + slope * at[i]! - place[i]!, way);
      }
      from = to;
    }
  }
}
