/** The largest size and the place at which a shape goes into a room. */

import { transform } from '../../geometry/affine.ts';
import { offset } from '../../geometry/clipper.ts';
import { boundsOf, contains } from '../../geometry/measure.ts';
import type { Point } from '../../geometry/types.ts';
import type { MadeShape } from '../made-shape.ts';
import { clearestNear, largestNear, Outline } from './contacts.ts';
import type { Freedom } from './contacts.ts';
import { Walls } from './room.ts';
import type { Room, RoomPart } from './room.ts';
import { largestAt, mostIn, promisingPlaces, samplesOf } from './search.ts';
import type { Placement, Samples } from './search.ts';
import { settling } from './settle.ts';
import { silhouetteOf } from './silhouette.ts';

/** A size that is less than this above that in the middle of the room is not worth leaving the middle for. */
const worthLeaving = 1.001;

/** Where the others of a batch are it stays even where it is smaller for that, up to this. */
const worthLeavingHome = 1.03;

/** Of the largest size: what is given up so that it stands on the axis of what is the same to both sides (our own judgement, by looking). */
const worthCentring = 0.85;

/** Nearer to the axis than this it stands on it, as a share of its width. */
const onAxisShare = 0.02;

/** Heights that are looked at along the axis, and how many of them closely. */
const axisHeights = 48;
const axisTries = 3;

/** What is given away of the largest size, so that a shape that can move does. */
const forMoving = 0.9998;

/** Share of what is free all round that stays free when it goes where it looks best. */
const keptClear = 0.85;

/** Less than this is free nowhere. */
const touchingMm = 0.01;

/** What is moved by less stays where it is. */
const stillMm = 0.03;

/** Promising places that are tried. */
const mostTried = 12;

/**
 * Of the largest size found: places that are as large but for this are as good, and the nearest to the middle is taken. What
 * stands aside is seen sooner than what stands high or low (both our own judgement).
 */
const asGood = 0.98;
const asideCounts = 2;

/** What a first look missed may stand in the way of a closer one, which then begins with so much of the size. */
const beginnings = [1, 0.98, 0.94, 0.85];

/** How far what is searched with may lie off the shape's own outline, in mm: closely, and at first. */
const closeMm = 0.003;
const roughMm = 0.03;

/** Columns and rows of a shape, in each of which its outermost points are what the search looks at. */
const sampleColumns = 32;
const sampleRows = 14;

/** Steps of the first and of the last look at a place, in mm. */
const firstStep = 1.5;
const lastStep = 0.1;

/** Once the first look changes less than this, in mm, a closer one goes on from there. */
const roughStill = 0.02;

/** Of the size of the shape: places nearer than this lead to the same. */
const nearShare = 0.06;

export interface FitLimits {
  /** The largest scale that is asked for. */
  readonly most?: number;
  /** How high the origin of lettering, which is then on its baseline, has to stand. */
  readonly baseline?: number;
  /** Where its origin is to be if there is room. */
  readonly home?: Point;
  /** The largest size wherever that is, be it in one half of what is the same to both sides. */
  readonly anywhere?: boolean;
}

/**
 * Anywhere in the room. `x` and `y` are where `origin` comes to be.
 * @param solid As it is turned, at about its final size.
 * @param origin The point of it that looks like its middle.
 */
export function largestFit(
  solid: MadeShape,
  origin: Point,
  room: Room,
  { most = Infinity, baseline, home, anywhere = false }: FitLimits = {},
): Placement | undefined {
  if (solid.region.length === 0 || !room.centre) return undefined;
  const fitting = new Fitting(solid, origin, baseline);
  const inMiddle = fitting.inMiddle(room, home);
  const isAtHome = home !== undefined && inMiddle !== undefined && inMiddle.placement.scale >= most;
  if (isAtHome) {
    // Pushed aside from home, it is better off further down, as large as it is.
    const centred = anywhere || baseline !== undefined ? undefined : fitting.centred(inMiddle.placement, room, most, 1);
    const { placement, part } = centred ?? inMiddle;
    return fitting.settled({ placement: { ...placement, scale: most }, part }, false, centred ? 'y' : 'x');
  }
  let best: Found | undefined = inMiddle;
  for (const part of room.parts) best = fitting.bestIn(part, best, room.centre);
  if (!best) return undefined;
  if (inMiddle && best.placement.scale < inMiddle.placement.scale * (home ? worthLeavingHome : worthLeaving))
    best = inMiddle;
  const centred = anywhere ? undefined : fitting.centred(best.placement, room, most);
  const { placement, part } = centred ?? best;
  const found = { placement: { ...placement, scale: Math.min(most, placement.scale) }, part };
  return fitting.settled(found, placement.scale > most, centred && 'y');
}

interface Found {
  readonly placement: Placement;
  readonly part: RoomPart;
}

class Fitting {
  readonly #close: Outline;
  readonly #rough: Outline;
  readonly #samples: Samples;

  readonly #baseline: number | undefined;
  readonly #free: Freedom;

  constructor(solid: MadeShape, own: Point, baseline?: number) {
    this.#baseline = baseline;
    this.#free = baseline === undefined ? 'all' : 'along x';
    this.#close = new Outline(silhouetteOf(solid, own, closeMm));
    this.#rough = new Outline(silhouetteOf(solid, own, roughMm));
    this.#samples = samplesOf(outermost(this.#rough.points), boundsOf(this.#close.solids.flat())!);
  }

  /** Where the middle of the room to the eye is, if it goes in there. */
  inMiddle({ parts, centre }: Room, home?: Point): Found | undefined {
    const { x, y } = home ?? centre!;
    const middle = { x, y: this.#baseline ?? y };
    // Beside home is as good as home, on the same line.
    const free = home ? 'along x' : 'size';
    const part = parts.find(({ walls }) => contains(walls.region, middle));
    if (!part) return undefined;
    const scale = largestAt(this.#samples, part, middle.x, middle.y, 0, mostIn(part, this.#samples), 0);
    const place = { ...middle, scale };
    const placement = this.#closely(part, this.#roughly(part, place, free) ?? place, free);
    return placement && { placement, part };
  }

  /** The largest on the axis of what is the same to both sides, where it gives up little for that. */
  centred({ x, scale }: Placement, room: Room, most: number, worth = worthCentring): Found | undefined {
    const { minX, maxX } = boundsOf(this.#close.solids.flat())!;
    const middle = room.parts.length > 0 ? room.axis : undefined;
    if (middle === undefined || Math.abs(x - middle) < onAxisShare * scale * (maxX - minX)) return undefined;
    const enough = worth * Math.min(most, scale);
    const tried = room.parts.flatMap((part) => {
      const { minY, maxY } = part.box;
      const heights = Array.from(
        { length: axisHeights },
        (_, index) => minY + ((index + 0.5) / axisHeights) * (maxY - minY),
      );
      return (this.#baseline === undefined ? heights : [this.#baseline]).map((y) => {
        const bound = largestAt(
          this.#samples,
          part,
          middle,
          y,
          (maxY - minY) / axisHeights,
          mostIn(part, this.#samples),
          enough,
        );
        return { placement: { x: middle, y, scale: bound }, part };
      });
    });
    const free = this.#baseline === undefined ? 'along y' : 'size';
    let best: Found | undefined;
    for (const { placement, part } of tried.sort((a, b) => b.placement.scale - a.placement.scale).slice(0, axisTries)) {
      if (placement.scale < enough) break;
      const close = this.#closely(part, this.#roughly(part, placement, free) ?? placement, free);
      if (close && close.scale > (best?.placement.scale ?? 0)) best = { placement: close, part };
    }
    return best && best.placement.scale >= enough ? best : undefined;
  }

  /** What is known, or what is better in that part of the room. */
  bestIn(part: RoomPart, known: Found | undefined, centre: Point): Found | undefined {
    const bar = known?.placement.scale ?? 1e-4;
    let most = bar;
    const tried: Placement[] = [];
    const found: Placement[] = [];
    const attempt = (place: Placement): number => {
      tried.push(place);
      const near = this.#roughly(part, place, this.#free);
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
    return placement && placement.scale > bar ? { placement, part } : known;
  }

  /** Of places that are about as large the one nearest to the middle, the others only where nothing comes of it. */
  #bestOf(found: readonly Placement[], part: RoomPart, centre: Point): Placement | undefined {
    const enough = asGood * Math.max(0, ...found.map(({ scale }) => scale));
    const off = ({ x, y }: Placement): number => Math.hypot(asideCounts * (x - centre.x), y - centre.y);
    const inTurn = [
      ...found.filter(({ scale }) => scale >= enough).sort((a, b) => off(a) - off(b)),
      ...found.filter(({ scale }) => scale < enough).sort((a, b) => b.scale - a.scale),
    ];
    let best: Placement | undefined;
    for (const place of inTurn) {
      if (best && place.scale <= best.scale / asGood) continue;
      const close = this.#closely(part, place, this.#free);
      if (close && close.scale > (best?.scale ?? 0)) best = close;
    }
    return best;
  }

  #freedom(only?: 'x' | 'y'): Freedom {
    return only === 'y' && this.#baseline === undefined ? 'along y' : this.#free;
  }

  #roughly({ rough, field }: RoomPart, place: Placement, free: Freedom): Placement | undefined {
    return largestNear({ outline: this.#rough, walls: rough, field, free, step: firstStep, still: roughStill }, place);
  }

  #closely({ walls, field }: RoomPart, place: Placement, free: Freedom): Placement | undefined {
    const search = { outline: this.#close, walls, field, free, step: lastStep };
    for (const share of beginnings) {
      const found = largestNear(search, { ...place, scale: share * place.scale });
      if (found) return found;
    }
    return undefined;
  }

  /** As far from everything as it can be, and in the middle of what way it has left. */
  settled({ placement, part }: Found, isRoomy: boolean, only?: 'x' | 'y'): Placement {
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
    const shift = settling(points, rings, around, at, this.#baseline === undefined ? only : 'x');
    const isStill = !isRoomy && Math.hypot(shift.x, shift.y) < stillMm;
    return isStill ? placement : { ...at, x: at.x + shift.x, y: at.y + shift.y };
  }
}

/** In each column the lowest and the highest, and in each row the leftmost and the rightmost. */
function outermost(points: readonly Point[]): Point[] {
  const box = boundsOf([points])!;
  const chosen = new Set<Point>();
  const sides = [
    { along: 'x', across: 'y', low: box.minX, high: box.maxX, count: sampleColumns },
    { along: 'y', across: 'x', low: box.minY, high: box.maxY, count: sampleRows },
  ] as const;
  for (const { along, across, low, high, count } of sides) {
    const ends: (readonly [Point, Point] | undefined)[] = Array<undefined>(count).fill(undefined);
    for (const point of points) {
      const at = Math.min(count - 1, Math.floor(((point[along] - low) / (high - low)) * count));
      const [least, most] = ends[at] ?? [point, point];
      ends[at] = [point[across] < least[across] ? point : least, point[across] > most[across] ? point : most];
    }
    for (const point of ends.flatMap((pair) => pair ?? [])) chosen.add(point);
  }
  return [...chosen];
}
