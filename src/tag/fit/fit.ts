/** Finds the largest size at which a shape fits into a room, and its place there. */

import { transform } from '../../geometry/affine.ts';
import { offset } from '../../geometry/clipper.ts';
import { boundsOf, contains } from '../../geometry/measure.ts';
import type { Point } from '../../geometry/types.ts';
import type { MadeShape } from '../made-shape.ts';
import { centringMove } from './centring-move.ts';
import { clearestNear } from './contacts.ts';
import { offMiddle } from './nearer-places.ts';
import { Walls } from './room.ts';
import type { FitRoom, RoomPart } from './room.ts';
import { largestAt, mostIn, promisingPlaces } from './search.ts';
import type { FitPlacement } from './search.ts';
import { firstStep, ofSize, SearchedShape } from './searched-shape.ts';
import type { FoundPlacement } from './searched-shape.ts';
import { asGood, nearer, onAxis } from './towards-middle.ts';

/** A place is only worth leaving the middle of the room for if it is larger by this factor. */
const worthLeaving = 1.001;

/** The same factor for leaving the place that the other tags of a batch share. */
const worthLeavingHome = 1.03;

/** Factor on the largest size, so that a shape that can move does. */
const forMoving = 0.9998;

/** Share of the clearance all round that is kept when the shape goes where it looks best. */
const keptClear = 0.85;

/** Clearance below this, in mm, is none. */
const touchingMm = 0.01;

/** A move of less than this, in mm, is not made. */
const stillMm = 0.03;

/** Most promising places tried. */
const mostTried = 12;

/** Of the size that the rough search promised: less than this share of it came to nothing. */
const cameTrue = 0.9;

/** Places nearer to each other than this, as a share of the shape's radius, lead to the same result. */
const nearShare = 0.06;

export interface FitLimits {
  /** Upper limit for the scale. */
  readonly most?: number;
  /** Height of the baseline of lettering, whose origin is on it. */
  readonly baseline?: number;
  /** Preferred place of its origin, if there is room. */
  readonly home?: Point;
  /** The largest size wherever that is, be it in one half of what is the same to both sides. */
  readonly anywhere?: boolean;
  /** Of its size, what it keeps at least where it gives up some to stand on an axis. */
  readonly keeps?: number;
}

/**
 * The best placement anywhere in the room; `x` and `y` are the place of `origin`.
 * @param made As it is rotated, at about its final size.
 * @param origin Its visual centre.
 */
export function largestFit(
  made: MadeShape,
  origin: Point,
  room: FitRoom,
  { most = Infinity, baseline, home, anywhere = false, keeps = 0 }: FitLimits = {},
): FitPlacement | undefined {
  if (made.region.length === 0 || !room.centre) return undefined;
  const shape = new SearchedShape(made, origin, baseline);
  const inMiddle = inMiddleOf(shape, room, home);
  const isAtHome = home !== undefined && inMiddle !== undefined && inMiddle.placement.scale >= most;
  if (isAtHome) {
    const atHome = settled(shape, ofSize(inMiddle, most), room, false, 'x');
    // Pushed aside from home, it is better off further down, as large as it is.
    const centred = anywhere || baseline !== undefined ? undefined : onAxis(shape, atHome, room, most, 1);
    // Not where it leaves the line of the others by more than it comes nearer to the axis.
    return centred && offShare(centred.placement, room) < offShare(atHome, room)
      ? settled(shape, ofSize(centred, most), room, false, centred.along)
      : atHome;
  }
  let best: FoundPlacement | undefined = inMiddle;
  for (const part of room.parts) best = bestIn(shape, part, best, room.centre);
  if (!best) return undefined;
  if (inMiddle && best.placement.scale < inMiddle.placement.scale * (home ? worthLeavingHome : worthLeaving))
    best = inMiddle;
  const centred = anywhere
    ? undefined
    : (onAxis(shape, best.placement, room, most, keeps) ?? nearer(shape, best, room.centre, most));
  const { placement } = centred ?? best;
  const found = ofSize(centred ?? best, Math.min(most, placement.scale));
  return settled(shape, found, room, placement.scale > most, centred?.along);
}

/** Distance from the middle as a share of the size of the room, as it is noticed. */
function offShare({ x, y }: FitPlacement, { parts, centre }: FitRoom): number {
  const { minX, minY, maxX, maxY } = boundsOf(parts.flatMap(({ walls }) => walls.region))!;
  const share = (point: Point): Point => ({ x: point.x / (maxX - minX), y: point.y / (maxY - minY) });
  return offMiddle(share({ x, y }), share(centre!));
}

/** The placement at the visual centre of the room, if the shape fits there. */
function inMiddleOf(shape: SearchedShape, { parts, centre }: FitRoom, home?: Point): FoundPlacement | undefined {
  const { x, y } = home ?? centre!;
  const middle = { x, y: shape.baseline ?? y };
  // Beside home, on the same line, is as good as home.
  const free = home ? 'along x' : 'size';
  const part = parts.find(({ walls }) => contains(walls.region, middle));
  if (!part) return undefined;
  const scale = largestAt(shape.samples, part, middle.x, middle.y, 0, mostIn(part, shape.samples), 0);
  const place = { ...middle, scale };
  const placement = shape.closely(part, shape.roughly(part, place, free) ?? place, free);
  return placement && { placement, part };
}

/**
 * The known placement, or a better one in this part of the room.
 * @param isSure Every place that is tried is looked at closely, lest one that comes to nothing keeps others from being tried.
 */
function bestIn(
  shape: SearchedShape,
  part: RoomPart,
  known: FoundPlacement | undefined,
  centre: Point,
  isSure = false,
): FoundPlacement | undefined {
  const bar = known?.placement.scale ?? 1e-4;
  let most = bar;
  const tried: FitPlacement[] = [];
  const found: FitPlacement[] = [];
  const attempt = (place: FitPlacement): number => {
    tried.push(place);
    const rough = shape.roughly(part, place, shape.free);
    const near = rough && isSure ? shape.closely(part, rough, shape.free) : rough;
    if (near && near.scale > bar) found.push(near);
    most = Math.max(most, near?.scale ?? 0);
    return most;
  };
  for (const place of promisingPlaces(shape.samples, part, bar, attempt, shape.baseline)) {
    if (place.scale <= most * worthLeaving || tried.length >= mostTried) break;
    const near = nearShare * shape.close.radius * place.scale;
    if (!tried.some(({ x, y }) => Math.hypot(x - place.x, y - place.y) < near)) attempt(place);
  }
  const placement = bestOf(shape, found, part, centre);
  if (!isSure && (placement?.scale ?? 0) < cameTrue * most && found.length > 0)
    return bestIn(shape, part, known, centre, true);
  return placement && placement.scale > bar ? { placement, part } : known;
}

/** Of places of about the same size the one nearest to the middle; the others only if those come to nothing. */
function bestOf(
  shape: SearchedShape,
  found: readonly FitPlacement[],
  part: RoomPart,
  centre: Point,
): FitPlacement | undefined {
  const enough = asGood * Math.max(0, ...found.map(({ scale }) => scale));
  const inTurn = [
    ...found.filter(({ scale }) => scale >= enough).sort((a, b) => offMiddle(a, centre) - offMiddle(b, centre)),
    ...found.filter(({ scale }) => scale < enough).sort((a, b) => b.scale - a.scale),
  ];
  let best: FitPlacement | undefined;
  for (const place of inTurn) {
    if (best && place.scale <= best.scale / asGood) continue;
    const close = shape.closely(part, place, shape.free);
    if (close && close.scale > (best?.scale ?? 0)) best = close;
  }
  return best;
}

/** As far from everything as it can be, and in the middle of what way it has left. */
function settled(
  shape: SearchedShape,
  { placement, part }: FoundPlacement,
  room: FitRoom,
  isRoomy: boolean,
  only?: 'x' | 'y',
): FitPlacement {
  const { rough, field, walls } = part;
  const { at, clear } = isRoomy
    ? clearestNear({ outline: shape.rough, walls: rough, field, free: shape.freedom(only), step: firstStep }, placement)
    : { at: { ...placement, scale: placement.scale * forMoving }, clear: 0 };
  const placed = { a: at.scale, b: 0, c: 0, d: at.scale, e: at.x, f: at.y };
  const points = transform([shape.close.points], placed)[0]!;
  const rings = transform(shape.close.solids.flat(), placed);
  const kept = clear < Infinity ? keptClear * clear : 0;
  const around = kept > touchingMm ? new Walls(offset(walls.region, -kept, 'miter'), 0) : walls;
  const isFixed = shape.baseline !== undefined && only === 'y';
  const shift = isFixed
    ? { x: 0, y: 0 }
    : centringMove(points, rings, around, at, room, shape.baseline === undefined ? only : 'x');
  const isStill = !isRoomy && Math.hypot(shift.x, shift.y) < stillMm;
  return isStill ? placement : { ...at, x: at.x + shift.x, y: at.y + shift.y };
}
