/** Moves a shape of fixed size to the middle of the way that it still has. */

import type { Point, Region } from '../../geometry/types.ts';
import type { FitRoom, Walls } from './room.ts';

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

/** The same on an axis of symmetry, for which a shape comes nearer to them. */
const keptOnAxisShare = 0.1;

/** Rounds of centring, horizontally and then vertically. */
const rounds = 3;

/** Things nearer than this touch, in mm. */
const touchingMm = 1e-4;

/** A shape nearer to the middle than this, in mm, is in it. */
const middleMm = 0.005;

/**
 * @param points Points of the shape's outline, in place; `rings` are all of it.
 * @param centre Its visual centre.
 * @param axes Where the room is the same on both sides.
 * @returns The shift after which it stands on an axis or, where something is in the way, the free space on its two sides is
 * even, as seen from its centre.
 */
export function centringMove(
  points: readonly Point[],
  rings: Region,
  walls: Walls,
  centre: Point,
  axes: FitRoom['axes'],
  only?: 'x' | 'y',
): Point {
  const shift = { x: 0, y: 0 };
  const known: { [along in 'x' | 'y']?: LevelsOfBoth } = {};
  const toMiddle = (along: 'x' | 'y', across: 'x' | 'y'): number => {
    const levels = (known[along] ??= {
      points: new Levels(points, along, across),
      corners: new Levels(walls.corners, along, across),
    });
    const { back, ahead } = freeTravel(levels, rings, walls.region, shift, along, across);
    if (!Number.isFinite(back + ahead)) return 0;
    const [low, high] = extent(points, along);
    const middle = (low + high + ahead - back) / 2;
    const axis = axes[along];
    const within = (move: number, share: number): number => {
      const kept = share * (back + ahead);
      return Math.min(ahead - kept, Math.max(kept - back, move));
    };
    const toAxis = axis === undefined ? Infinity : axis - centre[along] - shift[along];
    return within(toAxis, keptOnAxisShare) === toAxis ? toAxis : within(middle - centre[along], keptShare);
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
  { points, corners }: LevelsOfBoth,
  rings: Region,
  region: Region,
  shift: Point,
  along: 'x' | 'y',
  across: 'x' | 'y',
): FreeTravel {
  const moved = { along: shift[along], across: shift[across] };
  const back = { along: -moved.along, across: -moved.across };
  const ofPoints = wayToEdges(points, region, true, along, across, moved);
  const ofCorners = wayToEdges(corners, rings, false, along, across, back);
  // What comes towards the shape goes the other way.
  return { back: Math.min(ofPoints.back, ofCorners.ahead), ahead: Math.min(ofPoints.ahead, ofCorners.back) };
}

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

/** Of the shape's points, and of the room's corners. */
interface LevelsOfBoth {
  readonly points: Levels;
  readonly corners: Levels;
}

/**
 * The way of moved points until one of them meets an edge that is level with it. Things that already touch meet at
 * once, despite rounding.
 * @param edges They enclose what is on their left; `isWithin`: which the points are in, rather than beside.
 */
function wayToEdges(
  levels: Levels,
  edges: Region,
  isWithin: boolean,
  along: 'x' | 'y',
  across: 'x' | 'y',
  moved: { readonly along: number; readonly across: number },
): FreeTravel {
  const { at, place } = levels;
  let back = Infinity;
  let ahead = Infinity;
  for (const ring of at.length > 0 ? edges : []) {
    let from = ring[ring.length - 1]!;
    for (const to of ring) {
      const rise = to[across] - from[across];
      if (rise !== 0) {
        const isAhead = (rise > 0 === (along === 'x')) === isWithin;
        const slope = (to[along] - from[along]) / rise;
        const first = from[along] - moved.along + slope * (moved.across - from[across]);
        const low = (rise > 0 ? from : to)[across] - moved.across;
        const high = (rise > 0 ? to : from)[across] - moved.across;
        for (let i = levels.firstFrom(low); i < at.length && at[i]! < high; i++) {
          const distance = first + slope * at[i]! - place[i]!;
          if (isAhead && distance > -touchingMm && distance < ahead) ahead = distance;
          if (!isAhead && distance < touchingMm && -distance < back) back = -distance;
        }
      }
      from = to;
    }
  }
  return { back: Math.max(0, back - touchingMm), ahead: Math.max(0, ahead - touchingMm) };
}
