/**
 * Envelopes: the upper and the lower outline of a part as functions of x, between knots at equal steps. What lies between them is all that a part
 * takes up if nothing is to go into its bays from the side. Two parts are compared in a few steps for each knot, where their outlines would
 * take the product of their corners.
 */

import type { TurnedOutline } from '../orientation.ts';

/** Heights in mm at the knots, relative to the centre of the part's box; between knots they are joined by straight lines. */
export interface Envelope {
  /** One more than there are steps; the knots are symmetrical about the centre. */
  readonly upper: Float64Array;
  readonly lower: Float64Array;
}

/** Distance of the knots, in mm. */
export const envelopeStep = 0.5;

/** The outline is nowhere above the upper envelope, nor below the lower one. */
export function envelopeOf({ bounds, width, height, thin }: TurnedOutline): Envelope {
  const [middleX, middleY] = [width / 2, height / 2];
  const half = Math.max(bounds.maxX - middleX, middleX - bounds.minX);
  const steps = Math.max(1, Math.ceil((2 * half) / envelopeStep - 1e-9));
  const edges = new Float64Array(4 * thin.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const ring of thin) {
    let from = ring[ring.length - 1]!;
    for (const to of ring) {
      const [one, other] = from.x <= to.x ? [from, to] : [to, from];
      edges[at] = (one.x - middleX) / envelopeStep + steps / 2;
      edges[at + 1] = one.y - middleY;
      edges[at + 2] = (other.x - middleX) / envelopeStep + steps / 2;
      edges[at + 3] = other.y - middleY;
      at += 4;
      from = to;
    }
  }
  const upper = above(edges, steps);
  for (let i = 1; i < edges.length; i += 2) edges[i] = -edges[i]!;
  return { upper, lower: above(edges, steps).map((height) => -height) };
}

/** The same part turned by half a turn. */
export function halfTurned({ upper, lower }: Envelope): Envelope {
  return { upper: lower.map((height) => -height).reverse(), lower: upper.map((height) => -height).reverse() };
}

/** Heights at the knots so that no edge is above the lines between them. Edges run to the right, their x in steps from the first knot. */
function above(edges: Float64Array, steps: number): Float64Array {
  const heights = new Float64Array(steps + 1).fill(-Infinity);
  forEachColumn(edges, steps, (column, fromX, fromY, toX, toY) => {
    if (fromX <= column) heights[column] = Math.max(heights[column]!, fromY);
    if (toX >= column + 1) heights[column + 1] = Math.max(heights[column + 1]!, toY);
  });
  bridge(heights);
  // What rises above the line between two knots lifts both.
  const lifts = new Float64Array(steps);
  forEachColumn(edges, steps, (column, fromX, fromY, toX, toY) => {
    const [low, rise] = [heights[column]!, heights[column + 1]! - heights[column]!];
    const lift = Math.max(fromY - low - rise * (fromX - column), toY - low - rise * (toX - column));
    if (lift > lifts[column]!) lifts[column] = lift;
  });
  return heights.map((height, knot) => height + Math.max(lifts[knot - 1] ?? 0, lifts[knot] ?? 0));
}

/** Calls with the part of each edge in each column that it passes through. */
function forEachColumn(
  edges: Float64Array,
  steps: number,
  visit: (column: number, fromX: number, fromY: number, toX: number, toY: number) => void,
): void {
  for (let at = 0; at < edges.length; at += 4) {
    const [ax, ay, bx, by] = [edges[at]!, edges[at + 1]!, edges[at + 2]!, edges[at + 3]!];
    const last = Math.min(steps - 1, Math.floor(bx));
    for (let column = Math.max(0, Math.min(steps - 1, Math.ceil(ax) - 1)); column <= last; column += 1) {
      const fromX = Math.min(Math.max(ax, column), column + 1);
      const toX = Math.max(Math.min(bx, column + 1), column);
      if (bx === ax) visit(column, ax, Math.max(ay, by), ax, Math.max(ay, by));
      else {
        const slope = (by - ay) / (bx - ax);
        visit(column, fromX, ay + slope * (fromX - ax), toX, ay + slope * (toX - ax));
      }
    }
  }
}

/** Fills knots without a height: the ends as their neighbours, gaps by straight lines. Of a part narrower than a step none has a height. */
function bridge(heights: Float64Array): void {
  const known = [...heights.keys()].filter((knot) => heights[knot]! > -Infinity);
  if (known.length === 0) known.push(0);
  if (heights[known[0]!] === -Infinity) heights[known[0]!] = -1e3;
  for (let knot = 0; knot < heights.length; knot += 1) {
    if (heights[knot]! > -Infinity) continue;
    const after = known.find((other) => other > knot);
    const before = known.findLast((other) => other < knot);
    const [from, to] = [before ?? after!, after ?? before!];
    const share = from === to ? 0 : (knot - from) / (to - from);
    heights[knot] = heights[from]! + share * (heights[to]! - heights[from]!);
  }
}

/** Whether one envelope lies wholly above the other, where both are; `dx` and `dy` from the centre of the first to that of the second, in mm. */
export function envelopesApart(one: Envelope, other: Envelope, dx: number, dy: number): boolean {
  const [a, b] = [one.upper.length - 1, other.upper.length - 1];
  // Knots of the other, in steps of the one.
  const shift = dx / envelopeStep + (a - b) / 2;
  const from = Math.max(0, shift);
  const to = Math.min(a, shift + b);
  if (from >= to) return true;
  let [above, below] = [true, true];
  const compare = (at: number): void => {
    if (heightAt(other.lower, at - shift) + dy < heightAt(one.upper, at) - apartMm) above = false;
    if (heightAt(other.upper, at - shift) + dy > heightAt(one.lower, at) + apartMm) below = false;
  };
  compare(from);
  compare(to);
  for (let k = Math.ceil(from); k <= to && (above || below); k += 1) compare(k);
  for (let k = Math.max(0, Math.ceil(-shift)); k <= Math.min(b, a - shift) && (above || below); k += 1)
    compare(k + shift);
  return above || below;
}

/** Rounding of heights, in mm. */
const apartMm = 1e-9;

function heightAt(heights: Float64Array, at: number): number {
  const knot = Math.min(heights.length - 2, Math.max(0, Math.floor(at)));
  return heights[knot]! + (at - knot) * (heights[knot + 1]! - heights[knot]!);
}

/** In mm². */
export function envelopeArea({ upper, lower }: Envelope): number {
  return upper.reduce((sum, height, knot) => {
    const isEnd = knot === 0 || knot === upper.length - 1;
    return sum + (isEnd ? 0.5 : 1) * envelopeStep * (height - lower[knot]!);
  }, 0);
}
