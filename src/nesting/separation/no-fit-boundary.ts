/**
 * Boundary of a no-fit polygon: the stretches of convolution edges (`convolution.ts`) with overlap on one side only.
 * Each edge is cut where others cross it, and the winding number is computed on both sides of each piece; past a clean
 * crossing it follows from the previous piece.
 */

import { convolve, cornerOf, edgeOf, isMovingEdge } from '../convolution.ts';
import type { Orientation } from '../orientation.ts';
import { EdgeGrid } from './edge-grid.ts';

/** Stretches as x, y, x, y, with the overlap on their left, relative to the centre of the resting part's box. */
export type Boundary = Float64Array;

/**
 * Distances beside a stretch at which its sides are tested, in mm: less than outlines are thinned, more than rounding.
 */
const besideMm = [2e-7, 1e-6, 2e-8] as const;
/** Shorter stretches, in mm, are rounding errors where several edges cross. */
const leastMm = 1e-7;
/** Only past longer pieces, in mm, are both sides certain to have been tested on the same side of the crossing edge. */
const clearMm = 1e-4;
/** Ends closer than this, in mm, count as equal. */
const sameMm = 1e-6;
/** Sine of the angle below which two edges count as parallel. */
const alongSine = 1e-4;
/** Distance below which two such edges count as coincident, in mm. */
const alongMm = 1e-3;

const grid = new EdgeGrid();

/** Cuts of an edge, as shares of its length, with the change of the winding number at each. */
const cuts = { count: 0, at: new Float64Array(256), adds: new Int8Array(256) };
const unclear = 127;

/** Positions of the moving part's box centre at which the two touch. `work`: number of edges visited. */
export function noFitBoundary(resting: Orientation, moving: Orientation): { boundary: Boundary; work: number } {
  collectEdges(resting, moving);
  grid.sort();
  let best = stretches(besideMm[0], false);
  // If edges nearly coincide, crossings may be unreliable, and so may points at a certain distance beside them.
  for (let i = 0; openness(best.found) > sameMm * best.found.length && i < besideMm.length; i += 1) {
    const found = stretches(besideMm[i]!, true);
    if (openness(found.found) < openness(best.found)) best = found;
  }
  return { boundary: Float64Array.from(best.found), work: best.work + 4 * grid.count };
}

/** A boundary is closed: the distance in mm between its start and its end. */
function openness(found: readonly number[]): number {
  let x = 0;
  let y = 0;
  for (let at = 0; at < found.length; at += 4) {
    x += found[at + 2]! - found[at]!;
    y += found[at + 3]! - found[at + 1]!;
  }
  return Math.abs(x) + Math.abs(y);
}

/** `isCareful`: tests each piece of an edge on both sides, without relying on the previous piece. */
function stretches(beside: number, isCareful: boolean): { found: number[]; work: number } {
  const { ends, count } = grid;
  let work = 0;
  const found: number[] = [];
  for (let i = 0; i < count; i += 1) {
    const at = 4 * i;
    const x = ends[at]!;
    const y = ends[at + 1]!;
    const dx = ends[at + 2]! - x;
    const dy = ends[at + 3]! - y;
    const length = Math.hypot(dx, dy);
    if (length < leastMm) continue;
    work += cutEdge(i);
    const nx = (-dy / length) * beside;
    const ny = (dx / length) * beside;
    let from = 0;
    let isKnown = false;
    let left = 0;
    let right = 0;
    for (let k = 0; k < cuts.count; k += 1) {
      const to = cuts.at[k]!;
      if ((to - from) * length < leastMm) {
        isKnown = false;
        continue;
      }
      if (!isKnown) {
        const mx = x + ((from + to) / 2) * dx;
        const my = y + ((from + to) / 2) * dy;
        left = grid.windingAt(mx + nx, my + ny);
        right = grid.windingAt(mx - nx, my - ny);
        work += 12;
      }
      if (left > 0 !== right > 0) {
        const start = left > 0 ? from : to;
        const end = left > 0 ? to : from;
        noteStretch(found, x + start * dx, y + start * dy, x + end * dx, y + end * dy);
      }
      isKnown = !isCareful && cuts.adds[k] !== unclear && (to - from) * length > clearMm;
      left += cuts.adds[k]!;
      right += cuts.adds[k]!;
      from = to;
    }
  }
  return { found, work };
}

/** Edges may coincide; the stretch is recorded once. */
function noteStretch(found: number[], x: number, y: number, tx: number, ty: number): void {
  for (let at = 0; at < found.length; at += 4) {
    if (Math.abs(found[at]! - x) + Math.abs(found[at + 1]! - y) > sameMm) continue;
    if (Math.abs(found[at + 2]! - tx) + Math.abs(found[at + 3]! - ty) < sameMm) return;
  }
  found.push(x, y, tx, ty);
}

function collectEdges(resting: Orientation, moving: Orientation): void {
  const { count, codes, signs } = convolve(resting, moving);
  grid.reserve(count);
  const { ends } = grid;
  // The origin of an orientation is the lower left corner of its box.
  const shiftX = (moving.width - resting.width) / 2;
  const shiftY = (moving.height - resting.height) / 2;
  for (let i = 0; i < count; i += 1) {
    const code = codes[i]!;
    const edge = edgeOf(code);
    const corner = cornerOf(code);
    const isMoving = isMovingEdge(code);
    const own = isMoving ? moving.opposite : resting.corners;
    const other = isMoving ? resting.corners : moving.opposite;
    const end = isMoving ? moving.next[edge]! : resting.next[edge]!;
    const ox = other.x[corner]!;
    const oy = other.y[corner]!;
    // Both edges at a corner get the same number, because addition is commutative.
    ends[4 * i] = own.x[edge]! + ox + shiftX;
    ends[4 * i + 1] = own.y[edge]! + oy + shiftY;
    ends[4 * i + 2] = own.x[end]! + ox + shiftX;
    ends[4 * i + 3] = own.y[end]! + oy + shiftY;
    grid.signs[i] = signs[i]!;
  }
}

/**
 * Finds the points where other edges cross an edge or end on it, ascending, with its own end last; returns the number
 * of edges visited.
 */
function cutEdge(i: number): number {
  const { ends, signs } = grid;
  cuts.count = 0;
  const x = ends[4 * i]!;
  const y = ends[4 * i + 1]!;
  const dx = ends[4 * i + 2]! - x;
  const dy = ends[4 * i + 3]! - y;
  const square = dx * dx + dy * dy;
  const { edges, count } = grid.nearTo(i);
  for (let k = 0; k < count; k += 1) {
    const other = 4 * edges[k]!;
    const ax = ends[other]! - x;
    const ay = ends[other + 1]! - y;
    const ex = ends[other + 2]! - ends[other]!;
    const ey = ends[other + 3]! - ends[other + 1]!;
    const cross = dx * ey - dy * ex;
    const otherSquare = ex * ex + ey * ey;
    const isAlong = cross * cross < alongSine * alongSine * square * otherSquare;
    if (isAlong && Math.abs(ax * dy - ay * dx) < alongMm * Math.sqrt(square)) {
      // The ends of the other edge may divide this one.
      addCut((ax * dx + ay * dy) / square, unclear);
      addCut(((ax + ex) * dx + (ay + ey) * dy) / square, unclear);
    }
    const t = (ax * ey - ay * ex) / cross;
    if (!(t > 0 && t < 1)) continue;
    const u = (ax * dy - ay * dx) / cross;
    const tolerance = sameMm / Math.sqrt(otherSquare);
    if (!(u >= -tolerance && u <= 1 + tolerance)) continue;
    if (isAlong || u < tolerance || u > 1 - tolerance) addCut(t, unclear);
    // The way along this edge leads from the other's right to its left if the other turns to the right of the way.
    else addCut(t, cross < 0 ? signs[other / 4]! : -signs[other / 4]!);
  }
  addCut(1, unclear, true);
  return count;
}

function addCut(t: number, adds: number, isEnd = false): void {
  if (!isEnd && !(t > 0 && t < 1)) return;
  if (cuts.count === cuts.at.length) {
    const at = new Float64Array(2 * cuts.count);
    const all = new Int8Array(2 * cuts.count);
    at.set(cuts.at);
    all.set(cuts.adds);
    [cuts.at, cuts.adds] = [at, all];
  }
  let slot = cuts.count++;
  for (; slot > 0 && cuts.at[slot - 1]! > t; slot -= 1) {
    cuts.at[slot] = cuts.at[slot - 1]!;
    cuts.adds[slot] = cuts.adds[slot - 1]!;
  }
  cuts.at[slot] = t;
  cuts.adds[slot] = adds;
}
