/** The middle of a plate, as somebody takes it who letters signs by hand. */

import { oncePer } from '../../core/once-per.ts';
import { axesOf } from '../../geometry/axes.ts';
import type { Axes } from '../../geometry/axes.ts';
import { intersection } from '../../geometry/clipper.ts';
import { area, boundsOf, boxRing, centroid, contains, ringArea } from '../../geometry/measure.ts';
import { simplified } from '../../geometry/simplify.ts';
import type { Point, Region } from '../../geometry/types.ts';
import type { CentreRule } from '../../spec/model/shape-model.ts';
import { centreOf } from '../made-shape.ts';
import type { MadeShape } from '../made-shape.ts';

/** From one level to another, in mm. */
export interface Span {
  readonly low: number;
  readonly high: number;
}

/** The part of a plate that words belong to, where the eye sees the plate in parts: the wall of a house, the shaft of an arrow. */
export interface MainPart {
  readonly x?: Span;
  readonly y?: Span;
}

/** Where words stand on a plate. */
export interface Seat {
  readonly middle: Point;
  /** Along the axes on which the plate is not symmetrical. */
  readonly part: MainPart;
}

/** An inward corner turns by at least this, in degrees: a curve is made of chords. */
const sharpDegrees = 30;

/** Corners face each other that are level to this share of the plate's size. */
const levelShare = 0.01;

/** Of the plate's area, what a part has at least that words belong to (our own judgement). */
const mainShare = 0.6;

/** Outlines are looked at to this, in mm. */
const roughMm = 0.02;

/** Points looked at along a cut. */
const pointsAlong = 8;

/** Where the centre of a shape goes on another under a rule. */
export function middleFor(made: MadeShape, target: MadeShape, by: CentreRule): Point | undefined {
  const isOnPlate = by === 'eye' && made.lettering && !target.lettering;
  return isOnPlate ? seatOf(target.region)?.middle : centreOf({ region: target.region }, by);
}

/**
 * The middle is on axes of symmetry; else at the centroid, near which people put the middle of a shape (Baud-Bovy and
 * Soechting 2001), and half-way from there to the middle of the part that words belong to. `undefined` without material. Found once for a
 * plate, which may carry several words, on each tag of a batch.
 */
export const seatOf = oncePer((plate: Region): Seat | undefined => {
  const mass = centroid(plate);
  if (!mass) return undefined;
  const axes = axesOf(plate);
  const part = mainPartOf(plate, axes);
  const along = (axis: 'x' | 'y'): number => {
    const span = part[axis];
    return axes[axis] ?? (span ? (mass[axis] + (span.low + span.high) / 2) / 2 : mass[axis]);
  };
  return { middle: { x: along('x'), y: along('y') }, part };
});

/** The eye divides a shape between inward corners that face each other (Hoffman and Richards 1984, “Parts of recognition”). */
function mainPartOf(plate: Region, axes: Axes): MainPart {
  const outline = simplified(
    plate.filter((ring) => ringArea(ring) > 0),
    roughMm,
  );
  const corners = inwardCorners(outline);
  const [x, y] = (['x', 'y'] as const).map((axis) =>
    axes[axis] === undefined ? largestBetween(cutsAcross(outline, corners, axis), outline, axis) : undefined,
  );
  return { ...(x ? { x } : {}), ...(y ? { y } : {}) };
}

function inwardCorners(outline: Region): Point[] {
  const least = Math.sin((sharpDegrees * Math.PI) / 180);
  return outline.flatMap((ring) =>
    ring.filter((here, index) => {
      const before = ring[(index + ring.length - 1) % ring.length]!;
      const after = ring[(index + 1) % ring.length]!;
      const [ax, ay, bx, by] = [here.x - before.x, here.y - before.y, after.x - here.x, after.y - here.y];
      const [sine, cosine] = [ax * by - ay * bx, ax * bx + ay * by];
      const size = Math.hypot(ax, ay) * Math.hypot(bx, by);
      return sine < 0 && (cosine < 0 || -sine > least * size);
    }),
  );
}

/** Levels along an axis at which two corners face each other through the plate. */
function cutsAcross(outline: Region, corners: readonly Point[], axis: 'x' | 'y'): number[] {
  const box = boundsOf(outline);
  if (!box) return [];
  const near = levelShare * Math.max(box.maxX - box.minX, box.maxY - box.minY);
  return corners.flatMap((from, index) =>
    corners.slice(index + 1).flatMap((to) => {
      if (Math.abs(from[axis] - to[axis]) > near) return [];
      const isThrough = Array.from({ length: pointsAlong }, (_, i) => (i + 0.5) / pointsAlong).every((share) =>
        contains(outline, { x: from.x + share * (to.x - from.x), y: from.y + share * (to.y - from.y) }),
      );
      return isThrough ? [(from[axis] + to[axis]) / 2] : [];
    }),
  );
}

function largestBetween(cuts: readonly number[], outline: Region, axis: 'x' | 'y'): Span | undefined {
  const box = boundsOf(outline);
  if (!box || cuts.length === 0) return undefined;
  const [first, last] = axis === 'x' ? [box.minX, box.maxX] : [box.minY, box.maxY];
  const levels = [first, ...cuts.toSorted((a, b) => a - b), last];
  const least = mainShare * area(outline);
  return levels
    .slice(1)
    .map((high, index) => ({ low: levels[index]!, high }))
    .find(({ low, high }) => {
      const band = axis === 'x' ? { ...box, minX: low, maxX: high } : { ...box, minY: low, maxY: high };
      return area(intersection(outline, [boxRing(band)])) >= least;
    });
}
