/** Moves a shape of fixed size to the middle of the way that it still has. */

import type { Point, Region } from '../../geometry/types.ts';
import { Levels, wayToEdges } from '../../geometry/free-way.ts';
import type { FreeWay } from '../../geometry/free-way.ts';
import type { FitRoom, Walls } from './room.ts';

/**
 * Share of the way that stays free at either end, so that the shape crowds neither the edge nor obstacles, even if its
 * middle is then slightly off (our own judgement).
 */
const keptShare = 0.3;

/** The same on an axis of symmetry, for which a shape comes nearer to them. */
const keptOnAxisShare = 0.1;

/** The space above and below is seen over this share of the width, and is another than the way where it is so many times as large. */
const middleShare = 1 / 3;
const wider = 1.5;

/** Rounds of centring, horizontally and then vertically. */
const rounds = 3;

/** A shape nearer to the middle than this, in mm, is in it. */
const middleMm = 0.005;

/**
 * @param points Points of the shape's outline, in place; `rings` are all of it.
 * @param centre Its visual centre.
 * @param room Where it is the same on both sides, and the part of it that words belong to.
 * @returns The shift after which it stands on an axis or, where something is in the way, the free space on its two sides is
 * even, as seen from its centre.
 */
export function centringMove(
  points: readonly Point[],
  rings: Region,
  walls: Walls,
  centre: Point,
  { axes, part }: Pick<FitRoom, 'axes' | 'part'>,
  only?: 'x' | 'y',
): Point {
  const shift = { x: 0, y: 0 };
  const known: { [along in 'x' | 'y']?: LevelsOfBoth } = {};
  let inside: Levels | undefined;
  const seenSpace = (): FreeWay => {
    inside ??= new Levels(middlePart(points), 'y', 'x');
    return wayToEdges(inside, walls.region, true, 'y', 'x', { along: shift.y, across: shift.x });
  };
  const toMiddle = (along: 'x' | 'y', across: 'x' | 'y'): number => {
    const levels = (known[along] ??= {
      points: new Levels(points, along, across),
      corners: new Levels(walls.corners, along, across),
    });
    const { back, ahead } = freeTravel(levels, rings, walls.region, shift, along, across);
    if (!Number.isFinite(back + ahead)) return 0;
    const [low, high] = extent(points, along);
    // A wide line that soon meets the sides of an oval says little of the space above it and below.
    const above = along === 'y' ? seenSpace() : undefined;
    // Between two letters there may be nothing in the middle.
    const seen = above && Number.isFinite(above.back + above.ahead) ? above : { back, ahead };
    const isHeldAside = seen.back > wider * back || seen.ahead > wider * ahead;
    const span = part[along];
    const inPart = span && {
      back: Math.min(seen.back, Math.max(0, low + shift[along] - span.low)),
      ahead: Math.min(seen.ahead, Math.max(0, span.high - high - shift[along])),
    };
    // Half-way between the middle of its way and that of the part.
    const [less, more] = inPart ? [(inPart.back + back) / 2, (inPart.ahead + ahead) / 2] : [seen.back, seen.ahead];
    const middle = (low + high + more - less) / 2;
    const axis = axes[along];
    const within = (move: number, share: number): number => {
      const kept = share * (back + ahead);
      return Math.min(ahead - kept, Math.max(kept - back, move));
    };
    const toAxis = axis === undefined ? Infinity : axis - centre[along] - shift[along];
    return within(toAxis, keptOnAxisShare) === toAxis
      ? toAxis
      : within(middle - centre[along], isHeldAside ? keptOnAxisShare : keptShare);
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

/** The points above and below the middle of a shape. */
function middlePart(points: readonly Point[]): readonly Point[] {
  const [left, right] = extent(points, 'x');
  const reach = (middleShare * (right - left)) / 2;
  return points.filter(({ x }) => Math.abs(x - (left + right) / 2) < reach);
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
): FreeWay {
  const moved = { along: shift[along], across: shift[across] };
  const back = { along: -moved.along, across: -moved.across };
  const ofPoints = wayToEdges(points, region, true, along, across, moved);
  const ofCorners = wayToEdges(corners, rings, false, along, across, back);
  // What comes towards the shape goes the other way.
  return { back: Math.min(ofPoints.back, ofCorners.ahead), ahead: Math.min(ofPoints.ahead, ofCorners.back) };
}

/** Of the shape's points, and of the room's corners. */
interface LevelsOfBoth {
  readonly points: Levels;
  readonly corners: Levels;
}
