/** The ellipse along whose edge lines run round: the largest in the middle of a shape, or the one whose end is the edge of the shape. */

import { boundsOf, boxCentre, contains } from '../../geometry/measure.ts';
import type { Point, Region, Ring } from '../../geometry/types.ts';
import type { HalfAxes, RoundSide } from '../curve-outline.ts';

export interface PlacedEllipse {
  readonly centre: Point;
  readonly axes: HalfAxes;
}

/** Places across a shape at which its edge is compared with an ellipse, over so much of its width. */
const columns = 64;
const compared = 0.8;

/** Places nearer to the middle than this share of half the width say nothing of how wide an ellipse is. */
const leastAside = 0.2;

/** What the ellipse keeps from the edge for rounding. */
const hairMm = 0.005;

/** Half heights that are tried, from the least to the most as shares of the height of the shape, each by the same factor larger. */
const halfHeights = { from: 0.15, to: 3.5, count: 90 };

/** Halvings of that factor, round the best. */
const refinements = 10;

/** An edge is the end of an ellipse if it is no further from it, as a share of the width of the shape. */
const followedShare = 0.015;

/** It runs round if it falls by so much to both sides, as a share of that width. */
const leastFall = 0.06;

/** Heights of the middle and proportions that are tried, these by factors on those of the box. */
const upShares = Array.from({ length: 33 }, (_, step) => step / 32);
const proportions = [1, 0.9, 0.8, 0.7, 0.6, 1.12, 1.25, 1.4, 1.6];

/** An ellipse out of the middle of the box has so much more area at least. */
const worthShifting = 1.06;

/** The largest ellipse round the middle of its box that is as wide to its height as that, or one above or below it that is plainly larger. */
export function ellipseIn(region: Region): PlacedEllipse | undefined {
  const box = boundsOf(region);
  if (!box) return undefined;
  const middle = boxCentre(box);
  const [a, b] = [(box.maxX - box.minX) / 2, (box.maxY - box.minY) / 2];
  const inMiddle = ellipseAbout(region, middle, { a, b });
  let best = inMiddle;
  const areaOf = (each: PlacedEllipse | undefined): number => (each ? each.axes.a * each.axes.b : 0);
  const known = areaOf(inMiddle) * worthShifting;
  for (const share of upShares)
    for (const wide of proportions) {
      const centre = { x: middle.x, y: box.minY + 2 * b * share };
      const found = ellipseAbout(region, centre, { a: a * wide, b });
      if (areaOf(found) > Math.max(known, areaOf(best))) best = found;
    }
  return best;
}

function ellipseAbout(region: Region, centre: Point, { a, b }: HalfAxes): PlacedEllipse | undefined {
  if (!contains(region, centre)) return undefined;
  // In a picture squeezed to where it is a circle, the edge comes as near as the nearest of its sides.
  const squeezed = region.map((ring) => ring.map(({ x, y }) => ({ x: (x - centre.x) / a, y: (y - centre.y) / b })));
  const share = Math.min(...squeezed.map(nearest));
  return { centre, axes: { a: a * share, b: b * share } };
}

/**
 * The ellipse that the edge over the top of a shape, or along its bottom, is the end of: its other end may lie outside. `undefined` where there
 * is none, or the one in its middle is that.
 */
export function edgeEllipse(
  region: Region,
  side: RoundSide,
  middle: PlacedEllipse | undefined,
): PlacedEllipse | undefined {
  const box = boundsOf(region);
  if (!box) return undefined;
  const turn = side === 'top' ? 1 : -1;
  const x = boxCentre(box).x;
  const half = (box.maxX - box.minX) / 2;
  const [top, high] = [turn > 0 ? box.maxY : -box.minY, box.maxY - box.minY];
  const edge = edgeOver(region, turn, x, half);
  const apex = edge.find((point) => Math.abs(point.x) < 1e-9);
  if (!apex || top - apex.y > followedShare * half) return undefined;
  const sides = edge.filter((point) => Math.abs(point.x) <= compared * half);
  if (apex.y - Math.min(sides[0]!.y, sides.at(-1)!.y) < leastFall * 2 * half) return undefined;
  const off = (centre: number, { a, b }: HalfAxes): number =>
    Math.max(...sides.map((point) => Math.abs(point.y - centre - heightAt({ a, b }, point.x))));
  const isGood = (each: number): boolean => each <= followedShare * 2 * half;
  if (middle && isGood(off(turn * middle.centre.y, middle.axes))) return undefined;
  // Near its top a hair of height is much of width.
  const outer = edge.filter((point) => Math.abs(point.x) > leastAside * half);
  const ending = (b: number) => {
    const centre = apex.y - b;
    // As wide as the edge lets it be: no point of that lies within.
    const a = Math.min(...outer.map((point) => widthAt(Math.abs(point.x), (point.y - centre) / b)));
    return { centre, axes: { a, b }, off: Number.isFinite(a) ? off(centre, { a, b }) : Infinity };
  };
  const { from, to, count } = halfHeights;
  let factor = (to / from) ** (1 / count);
  let best = ending(high * from);
  const attempt = (b: number): void => {
    const found = ending(b);
    if (found.off < best.off) best = found;
  };
  for (let step = 1; step <= count; step++) attempt(high * from * factor ** step);
  for (let round = 0; round < refinements; round++) {
    factor = Math.sqrt(factor);
    const { b } = best.axes;
    attempt(b * factor);
    attempt(b / factor);
  }
  if (!isGood(best.off)) return undefined;
  const { a, b } = best.axes;
  const over = Math.max(0, ...sides.map((point) => heightAt(best.axes, point.x) + best.centre - point.y));
  return { centre: { x, y: turn * best.centre }, axes: { a, b: b - over - hairMm } };
}

/** Half the height of an ellipse so far aside. */
function heightAt({ a, b }: HalfAxes, aside: number): number {
  return b * Math.sqrt(Math.max(0, 1 - (aside / a) ** 2));
}

/** Half the width of an ellipse that passes so far aside, as a share of its half height above its middle. */
function widthAt(aside: number, up: number): number {
  return up >= 1 ? Infinity : aside / Math.sqrt(1 - Math.max(0, up) ** 2);
}

/** The highest points of a shape from left to right, `x` from its middle; upside down for its bottom. */
function edgeOver(region: Region, turn: number, middle: number, half: number): Point[] {
  const found: Point[] = [];
  for (let column = -columns / 2; column <= columns / 2; column++) {
    // Just inside, where the sides are upright.
    const x = (column / (columns / 2)) * half * (1 - 1e-6);
    let y = -Infinity;
    for (const ring of region) {
      let from = ring.at(-1)!;
      for (const to of ring) {
        const [a, b] = [from.x - middle, to.x - middle];
        if (a > x !== b > x) y = Math.max(y, turn * (from.y + ((x - a) / (b - a)) * (to.y - from.y)));
        from = to;
      }
    }
    if (y > -Infinity) found.push({ x, y });
  }
  return found;
}

/** From the origin to the ring. */
function nearest(ring: Ring): number {
  let least = Infinity;
  let from = ring.at(-1)!;
  for (const to of ring) {
    const [dx, dy] = [to.x - from.x, to.y - from.y];
    const along = Math.min(1, Math.max(0, -(from.x * dx + from.y * dy) / (dx * dx + dy * dy || 1)));
    least = Math.min(least, Math.hypot(from.x + along * dx, from.y + along * dy));
    from = to;
  }
  return least;
}
