/** Finds the largest size at which a shape fits into a room, and its place there. */

import { transform } from '../../geometry/affine.ts';
import { offset } from '../../geometry/clipper.ts';
import { boundsOf, contains } from '../../geometry/measure.ts';
import { simplified } from '../../geometry/simplify.ts';
import type { Point } from '../../geometry/types.ts';
import type { MadeShape } from '../made-shape.ts';
import { clearestNear, largestNear, IndexedSilhouette } from './contacts.ts';
import type { Freedom } from './contacts.ts';
import { Walls } from './room.ts';
import type { FitRoom, RoomPart } from './room.ts';
import { gridIn, largestAt, mostIn, promisingPlaces, samplesOf } from './search.ts';
import type { FitPlacement, Samples } from './search.ts';
import { centringMove } from './centring-move.ts';
import { offMiddle, placesNearer } from './nearer-places.ts';
import { roughened, silhouetteOf } from './silhouette.ts';

/** A place is only worth leaving the middle of the room for if it is larger by this factor. */
const worthLeaving = 1.001;

/** The same factor for leaving the place that the other tags of a batch share. */
const worthLeavingHome = 1.03;

/** What a shape keeps of its size to stand on a level axis (our own judgement, by looking). */
const worthLevel = 0.85;

/** Nearer to the axis than this it stands on it, as a share of its width. */
const onAxisShare = 0.02;

/** Places that are looked at along an axis, and how many of them closely. */
const axisPlaces = 48;
const axisTries = 3;

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

/** Places whose size is at least this share of the largest are equally good, and the one nearest to the middle is taken (our own judgement). */
const asGood = 0.98;

/** The same along an axis, where the middle is seen sooner. */
const asGoodOnAxis = 0.95;

/** Of the size that the rough search promised: less than this share of it came to nothing. */
const cameTrue = 0.9;

/** Columns of places nearer to the middle that are looked at closely. */
const nearerTries = 8;

/** A place is nearer to the middle if it is by this much, as a share of the shape's radius. */
const nearerShare = 0.25;

/**
 * Something that the rough search missed may obstruct the close one, which then starts from these shares of the size.
 */
const beginnings = [1, 0.98, 0.94, 0.85];

/** Tolerance of the outlines searched with, in mm: in the close and in the rough search. */
const closeMm = 0.003;
const roughMm = 0.03;

/** First step of the rough and of the close search, in mm. */
const firstStep = 1.5;
const lastStep = 0.1;

/** The rough search ends with a change of less than this, in mm, and a close one continues from there. */
const roughStill = 0.02;

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
  const fitting = new FitRun(made, origin, baseline);
  const inMiddle = fitting.inMiddle(room, home);
  const isAtHome = home !== undefined && inMiddle !== undefined && inMiddle.placement.scale >= most;
  if (isAtHome) {
    const atHome = fitting.settled(ofSize(inMiddle, most), room, false, 'x');
    // Pushed aside from home, it is better off further down, as large as it is.
    const centred = anywhere || baseline !== undefined ? undefined : fitting.centred(atHome, room, most, 1);
    // Not where it leaves the line of the others by more than it comes nearer to the axis.
    return centred && offShare(centred.placement, room) < offShare(atHome, room)
      ? fitting.settled(ofSize(centred, most), room, false, centred.along)
      : atHome;
  }
  let best: FoundPlacement | undefined = inMiddle;
  for (const part of room.parts) best = fitting.bestIn(part, best, room.centre);
  if (!best) return undefined;
  if (inMiddle && best.placement.scale < inMiddle.placement.scale * (home ? worthLeavingHome : worthLeaving))
    best = inMiddle;
  const centred = anywhere
    ? undefined
    : (fitting.centred(best.placement, room, most, keeps) ?? fitting.nearer(best, room.centre, most));
  const { placement } = centred ?? best;
  const found = ofSize(centred ?? best, Math.min(most, placement.scale));
  return fitting.settled(found, room, placement.scale > most, centred?.along);
}

/** Distance from the middle as a share of the size of the room, as it is noticed. */
function offShare({ x, y }: FitPlacement, { parts, centre }: FitRoom): number {
  const { minX, minY, maxX, maxY } = boundsOf(parts.flatMap(({ walls }) => walls.region))!;
  return offMiddle(
    { x: x / (maxX - minX), y: y / (maxY - minY) },
    { x: centre!.x / (maxX - minX), y: centre!.y / (maxY - minY) },
  );
}

interface FoundPlacement {
  readonly placement: FitPlacement;
  readonly part: RoomPart;
}

function ofSize({ placement, part }: FoundPlacement, scale: number): FoundPlacement {
  return { placement: { ...placement, scale }, part };
}

/** `along`: the direction in which it may still move. */
interface CentredPlacement extends FoundPlacement {
  readonly along: 'x' | 'y';
}

class FitRun {
  readonly #close: IndexedSilhouette;
  readonly #rough: IndexedSilhouette;
  readonly #samples: Samples;

  readonly #baseline: number | undefined;
  readonly #free: Freedom;

  constructor(made: MadeShape, own: Point, baseline?: number) {
    this.#baseline = baseline;
    this.#free = baseline === undefined ? 'all' : 'along x';
    const close = silhouetteOf({ ...made, region: simplified(made.region, closeMm) }, own);
    this.#close = new IndexedSilhouette(close);
    this.#rough = new IndexedSilhouette(roughened(close, roughMm));
    const box = boundsOf(this.#close.solids.flat())!;
    // What stands within the outline of letters has hardly room to.
    const inner = made.lettering ? [] : gridIn(box).filter((point) => this.#rough.contains(point));
    this.#samples = samplesOf(this.#rough.points, inner, box);
  }

  /** The placement at the visual centre of the room, if the shape fits there. */
  inMiddle({ parts, centre }: FitRoom, home?: Point): FoundPlacement | undefined {
    const { x, y } = home ?? centre!;
    const middle = { x, y: this.#baseline ?? y };
    // Beside home, on the same line, is as good as home.
    const free = home ? 'along x' : 'size';
    const part = parts.find(({ walls }) => contains(walls.region, middle));
    if (!part) return undefined;
    const scale = largestAt(this.#samples, part, middle.x, middle.y, 0, mostIn(part, this.#samples), 0);
    const place = { ...middle, scale };
    const placement = this.#closely(part, this.#roughly(part, place, free) ?? place, free);
    return placement && { placement, part };
  }

  /** The largest on an axis, where it gives up little for that. Of two axes the upright one counts first. */
  centred(from: FitPlacement, room: FitRoom, most: number, keeps: number): CentredPlacement | undefined {
    const { minX, minY, maxX, maxY } = boundsOf(this.#close.solids.flat())!;
    const { axes } = room;
    // Its box in the middle is as good: it may fill the room from edge to edge.
    const isOff = (axis: 'x' | 'y', low: number, high: number): boolean => {
      const most = onAxisShare * from.scale * (high - low);
      const off = [0, (low + high) / 2].map((middle) => from[axis] + from.scale * middle - (axes[axis] ?? NaN));
      return off.every((each) => Math.abs(each) >= most);
    };
    const enough = (worth: number): number => Math.max(worth, keeps) * Math.min(most, from.scale);
    const upright = isOff('x', minX, maxX)
      ? this.#largestOn('x', axes.x!, room, most, enough(room.worthAxis))
      : undefined;
    if (upright) return upright;
    return this.#baseline === undefined && isOff('y', minY, maxY)
      ? this.#largestOn('y', axes.y!, room, most, enough(worthLevel))
      : undefined;
  }

  /** `axis`: the coordinate that is the same all along the axis, and `at` its value. */
  #largestOn(axis: 'x' | 'y', at: number, room: FitRoom, most: number, enough: number): CentredPlacement | undefined {
    const tried = room.parts.flatMap((part) => {
      const { minX, minY, maxX, maxY } = part.box;
      const [low, high] = axis === 'x' ? [minY, maxY] : [minX, maxX];
      const step = (high - low) / axisPlaces;
      const along = Array.from({ length: axisPlaces }, (_, index) => low + (index + 0.5) * step);
      return (this.#baseline === undefined ? along : [this.#baseline]).map((place) => {
        const [x, y] = axis === 'x' ? [at, place] : [place, at];
        const largest = mostIn(part, this.#samples);
        return { placement: { x, y, scale: largestAt(this.#samples, part, x, y, step, largest, enough) }, part };
      });
    });
    const along = axis === 'x' ? 'y' : 'x';
    const free: Freedom = this.#baseline === undefined ? `along ${along}` : 'size';
    const closely = ({ placement, part }: FoundPlacement, by = free): FoundPlacement | undefined => {
      const close = this.#closely(part, this.#roughly(part, placement, by) ?? placement, by);
      return close && { placement: close, part };
    };
    const off = ({ placement }: FoundPlacement): number => Math.abs(placement[along] - room.centre![along]);
    let best: FoundPlacement | undefined;
    for (const each of tried.sort((a, b) => b.placement.scale - a.placement.scale).slice(0, axisTries)) {
      if (each.placement.scale < enough) break;
      const close = closely(each);
      if (close && close.placement.scale > (best?.placement.scale ?? 0)) best = close;
    }
    if (!best || best.placement.scale < enough) return undefined;
    // Of places of about the same size the one nearest to the middle; a size that was asked for is kept.
    const nearly = Math.max(enough, (most < Infinity ? asGood : asGoodOnAxis) * best.placement.scale);
    const far = off(best) - nearerShare * this.#close.radius * best.placement.scale;
    for (const each of tried
      .filter((one) => one.placement.scale >= nearly && off(one) < far)
      .sort((a, b) => off(a) - off(b))
      .slice(0, axisTries)) {
      const close = closely(each, 'size');
      if (close && close.placement.scale >= nearly) return { ...close, along };
    }
    return { ...best, along };
  }

  /** Nearer to the middle in the same part of the room, about as large; what the search for the largest passed over. */
  nearer({ placement, part }: FoundPlacement, centre: Point, most: number): CentredPlacement | undefined {
    const enough = asGood * Math.min(most, placement.scale);
    const far = offMiddle(placement, centre) - nearerShare * this.#close.radius * placement.scale;
    const { places, across, slack } = placesNearer(part.box, centre, far, this.#baseline);
    const upright = this.#baseline === undefined ? 'along y' : 'size';
    const tried = new Set<number>();
    for (const { x, y } of places) {
      if (tried.has(x)) continue;
      const scale = largestAt(this.#samples, part, x, y, slack, mostIn(part, this.#samples), enough);
      if (scale < enough) continue;
      if (tried.add(x).size > nearerTries) return undefined;
      const attempt = (from: FitPlacement, free: Freedom, within: number): FitPlacement | undefined => {
        const near = this.#roughly(part, from, free);
        if (!near || near.scale < enough || offMiddle(near, centre) >= within) return undefined;
        const close = this.#closely(part, near, upright);
        return close && close.scale >= enough ? close : undefined;
      };
      let found = attempt({ x, y, scale }, upright, far) ?? attempt({ x, y, scale }, this.#free, far);
      if (!found) continue;
      for (let step = across / 2; step > lastStep && found.x !== centre.x; step /= 2) {
        const aside = centre.x - found.x;
        const nearer: FitPlacement = { ...found, x: found.x + Math.sign(aside) * Math.min(step, Math.abs(aside)) };
        found = attempt(nearer, upright, offMiddle(found, centre)) ?? found;
      }
      return { placement: found, part, along: 'y' };
    }
    return undefined;
  }

  /**
   * The known placement, or a better one in this part of the room.
   * @param isSure Every place that is tried is looked at closely, lest one that comes to nothing keeps others from being tried.
   */
  bestIn(part: RoomPart, known: FoundPlacement | undefined, centre: Point, isSure = false): FoundPlacement | undefined {
    const bar = known?.placement.scale ?? 1e-4;
    let most = bar;
    const tried: FitPlacement[] = [];
    const found: FitPlacement[] = [];
    const attempt = (place: FitPlacement): number => {
      tried.push(place);
      const rough = this.#roughly(part, place, this.#free);
      const near = rough && isSure ? this.#closely(part, rough, this.#free) : rough;
      if (near && near.scale > bar) found.push(near);
      most = Math.max(most, near?.scale ?? 0);
      return most;
    };
    for (const place of promisingPlaces(this.#samples, part, bar, attempt, this.#baseline)) {
      if (place.scale <= most * worthLeaving || tried.length >= mostTried) break;
      const near = nearShare * this.#close.radius * place.scale;
      if (!tried.some(({ x, y }) => Math.hypot(x - place.x, y - place.y) < near)) attempt(place);
    }
    const placement = this.#bestOf(found, part, centre);
    if (!isSure && (placement?.scale ?? 0) < cameTrue * most && found.length > 0)
      return this.bestIn(part, known, centre, true);
    return placement && placement.scale > bar ? { placement, part } : known;
  }

  /** Of places of about the same size the one nearest to the middle; the others only if those come to nothing. */
  #bestOf(found: readonly FitPlacement[], part: RoomPart, centre: Point): FitPlacement | undefined {
    const enough = asGood * Math.max(0, ...found.map(({ scale }) => scale));
    const inTurn = [
      ...found.filter(({ scale }) => scale >= enough).sort((a, b) => offMiddle(a, centre) - offMiddle(b, centre)),
      ...found.filter(({ scale }) => scale < enough).sort((a, b) => b.scale - a.scale),
    ];
    let best: FitPlacement | undefined;
    for (const place of inTurn) {
      if (best && place.scale <= best.scale / asGood) continue;
      const close = this.#closely(part, place, this.#free);
      if (close && close.scale > (best?.scale ?? 0)) best = close;
    }
    return best;
  }

  #freedom(only?: 'x' | 'y'): Freedom {
    return only && this.#baseline === undefined ? `along ${only}` : this.#free;
  }

  #roughly({ rough, field }: RoomPart, place: FitPlacement, free: Freedom): FitPlacement | undefined {
    return largestNear({ outline: this.#rough, walls: rough, field, free, step: firstStep, still: roughStill }, place);
  }

  #closely({ walls, field }: RoomPart, place: FitPlacement, free: Freedom): FitPlacement | undefined {
    const search = { outline: this.#close, walls, field, free, step: lastStep };
    for (const share of beginnings) {
      const found = largestNear(search, { ...place, scale: share * place.scale });
      if (found) return found;
    }
    return undefined;
  }

  /** As far from everything as it can be, and in the middle of what way it has left. */
  settled({ placement, part }: FoundPlacement, room: FitRoom, isRoomy: boolean, only?: 'x' | 'y'): FitPlacement {
    const { rough, field, walls } = part;
    const { at, clear } = isRoomy
      ? clearestNear(
          { outline: this.#rough, walls: rough, field, free: this.#freedom(only), step: firstStep },
          placement,
        )
      : { at: { ...placement, scale: placement.scale * forMoving }, clear: 0 };
    const placed = { a: at.scale, b: 0, c: 0, d: at.scale, e: at.x, f: at.y };
    const points = transform([this.#close.points], placed)[0]!;
    const rings = transform(this.#close.solids.flat(), placed);
    const kept = clear < Infinity ? keptClear * clear : 0;
    const around = kept > touchingMm ? new Walls(offset(walls.region, -kept, 'miter'), 0) : walls;
    const isFixed = this.#baseline !== undefined && only === 'y';
    const shift = isFixed
      ? { x: 0, y: 0 }
      : centringMove(points, rings, around, at, room, this.#baseline === undefined ? only : 'x');
    const isStill = !isRoomy && Math.hypot(shift.x, shift.y) < stillMm;
    return isStill ? placement : { ...at, x: at.x + shift.x, y: at.y + shift.y };
  }
}
