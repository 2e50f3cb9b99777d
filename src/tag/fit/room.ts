/** The room that a fitted shape may fill. */

import { axesOf } from '../../geometry/axes.ts';
import type { Axes } from '../../geometry/axes.ts';
import { difference, offset } from '../../geometry/clipper.ts';
import { DistanceField } from '../../geometry/distance-field.ts';
import { EdgeIndex } from '../../geometry/edge-index.ts';
import { boundsOf, boxCentre, contains } from '../../geometry/measure.ts';
import { partsOf } from '../../geometry/parts.ts';
import { poleOf } from '../../geometry/pole.ts';
import { simplified } from '../../geometry/simplify.ts';
import type { Bounds, Point, Region } from '../../geometry/types.ts';
import type { CentreRule } from '../../spec/model/shape-model.ts';
import { centreOf } from '../made-shape.ts';
import type { MainPart, Seat } from '../shapes/seat.ts';

/** Tolerance of the room's outline, in mm: in the close and in the rough search. */
const closeMm = 0.002;
const roughMm = 0.03;

/** Most parts of a room that are searched, the largest first: the part cut off behind a hole is no place for a name. */
const mostParts = 3;

/** The outline that keeps a shape in. */
export class Walls {
  readonly region: Region;
  /** Corners that point into the room, and points of obstacles in it. */
  readonly corners: readonly Point[];
  #edges: EdgeIndex | undefined;

  constructor(region: Region, offMm: number) {
    this.region = simplified(region, offMm);
    this.corners = this.region.flatMap((ring) => ring.filter((_, index) => turnsBack(ring, index)));
  }

  get edges(): EdgeIndex {
    return (this.#edges ??= new EdgeIndex(this.region));
  }
}

/** One part of a room; expensive results are computed on demand. */
export class RoomPart {
  readonly box: Bounds;
  readonly walls: Walls;
  readonly rough: Walls;
  #field: DistanceField | undefined;

  constructor(region: Region) {
    this.walls = new Walls(region, closeMm);
    this.rough = new Walls(region, roughMm);
    this.box = boundsOf(this.walls.region)!;
  }

  get field(): DistanceField {
    return (this.#field ??= new DistanceField(this.rough.region));
  }
}

export interface FitRoom {
  readonly region: Region;
  readonly parts: readonly RoomPart[];
  /** The centre of the target by the given rule or, if that is outside the room, of the largest disc. */
  readonly centre: Point | undefined;
  /**
   * Axes of symmetry, what stands in it included: `x` of the one that it is the same to the left and to the right of, `y` of
   * the one that it is the same above and below. A shape without an upright axis has that of what stands about in its middle.
   */
  readonly axes: Axes;
  /** What a shape gives up at most to stand on the upright axis: the size that it keeps, as a share of the largest. */
  readonly worthAxis: number;
  /** The part of a plate that words belong to. */
  readonly part: MainPart;
}

/** How much of its size a shape keeps where other words stand on the upright axis, or what stands about there on a plate that is even itself, where the room is the same on both sides, and where it is not (our own judgement, by looking). */
const worth = { words: 0.7, even: 0.85, uneven: 0.98 };

/** What stands in a room is about in its middle if it is off by less than this, as a share of the room's width. */
const aboutShare = 0.1;

/** Words that a window or a hole has pushed aside still lead the lines below them if they are off by less than this share (our own judgement). */
const pushedShare = 0.25;

/** The upright axis of what stands about in the middle of a shape that has none, such as the holes of a label or a word at its top. */
function uprightAxis(target: Region, obstacles: Region): number | undefined {
  const box = boundsOf(target);
  if (!box) return undefined;
  const isAbout = (x: number): boolean => Math.abs(x - boxCentre(box).x) < aboutShare * (box.maxX - box.minX);
  const { x } = axesOf(obstacles);
  if (x !== undefined && isAbout(x)) return x;
  const inMiddle = boundsOf(obstacles.filter((ring) => isAbout(boxCentre(boundsOf([ring])!).x)));
  return inMiddle && boxCentre(inMiddle).x;
}

/** What a room is for. */
export interface RoomFor {
  readonly by: CentreRule;
  /** Where words stand in it, if it is for words. */
  readonly seat?: Seat | undefined;
  /** Middles of the other words that stand there. */
  readonly others?: readonly Point[];
  /** Of those, what found its place by itself and leads the lines below it. */
  readonly leading?: Point | undefined;
}

/** @param obstacles What stands in it, grown by the distance to keep. */
export function roomIn(
  target: Region,
  margin: number,
  obstacles: Region,
  { by, seat, others = [], leading }: RoomFor,
): FitRoom {
  const inner = offset(target, -margin);
  const region = obstacles.length === 0 || inner.length === 0 ? inner : difference(inner, [obstacles]);
  const parts = partsOf(region)
    .slice(0, mostParts)
    .map((part) => new RoomPart(part))
    // Where nothing is left of it but its outline, nothing goes in.
    .filter(({ rough }) => rough.region.length > 0);
  const centre = seat && by === 'eye' ? seat.middle : centreOf({ region: target }, by);
  let upright: Pick<FitRoom, 'axes' | 'worthAxis'> | undefined;
  const findUpright = (): Pick<FitRoom, 'axes' | 'worthAxis'> => {
    const own = axesOf(region);
    const beside = seat && axisOfWords(target, seat.middle, others, leading);
    if (beside !== undefined) return { axes: { ...own, x: beside }, worthAxis: worth.words };
    if (own.x !== undefined) return { axes: own, worthAxis: worth.even };
    const x = uprightAxis(inner, obstacles);
    if (x !== undefined)
      return { axes: { ...own, x }, worthAxis: axesOf(target).x === undefined ? worth.even : worth.words };
    // Level with the words beside it comes before the middle of an uneven room.
    const isLevel = others.length > 0 && own.y !== undefined;
    if (!seat || !centre || isLevel) return { axes: own, worthAxis: worth.uneven };
    return { axes: { ...own, x: centre.x }, worthAxis: seat.part.x ? worth.even : worth.uneven };
  };
  return {
    region,
    parts,
    centre: centre && contains(region, centre) ? centre : poleOf(region),
    part: seat?.part ?? {},
    get axes() {
      return (upright ??= findUpright()).axes;
    },
    get worthAxis() {
      return (upright ??= findUpright()).worthAxis;
    },
  };
}

/** The upright line on which other words stand, about in the middle: of several the one nearest to it; further aside, that of words that were pushed there. */
function axisOfWords(
  target: Region,
  centre: Point,
  others: readonly Point[],
  leading: Point | undefined,
): number | undefined {
  const box = boundsOf(target)!;
  const width = box.maxX - box.minX;
  const off = others.map(({ x }) => x - centre.x).filter((x) => Math.abs(x) < aboutShare * width);
  if (off.length === 0 && leading && Math.abs(leading.x - centre.x) < pushedShare * width) return leading.x;
  return off.length === 0 ? undefined : centre.x + off.reduce((a, b) => (Math.abs(b) < Math.abs(a) ? b : a));
}

/** Whether the outline of a room, which has the room on its left, turns right at a point. */
function turnsBack(ring: Region[number], index: number): boolean {
  const before = ring[(index + ring.length - 1) % ring.length]!;
  const here = ring[index]!;
  const after = ring[(index + 1) % ring.length]!;
  return (here.x - before.x) * (after.y - here.y) - (here.y - before.y) * (after.x - here.x) < 0;
}
