/**
 * Convolution: the edges that contain the outline of a Minkowski sum, here of a resting outline and a moving one
 * rotated by half a turn.
 *
 * The *convolution* of two outlines is every edge of one, carried to every corner of the other that turns through the
 * edge's direction, counted −1 where that corner is concave (Guibas, Ramshaw and Stolfi 1983, A kinetic framework for
 * computational geometry). The winding number of these edges around a position is the number of pieces of the overlap
 * there, less their holes (the Euler characteristic). So no union is needed, and the number of edges is a small
 * multiple of the number of corners, not their product.
 *
 * An overlap has a hole only if it is a ring around a hole of one of the two. A hole is therefore treated as filled if
 * the bounding box of the other part does not fit into the hole's; a part that fits cannot cover the hole, so no
 * overlap runs around it.
 */

import { cornerBits, maxCorners } from './part-outline.ts';
import type { CornerArrays, Island, Orientation, RingRange } from './orientation.ts';

const movingBit = 1 << 30;

/**
 * An edge carried to a corner, packed into a number: which outline the edge belongs to, its index, and the corner of
 * the other outline.
 */
export const isMovingEdge = (code: number): boolean => code >= movingBit;
export const edgeOf = (code: number): number => (code & ~movingBit) >> cornerBits;
export const cornerOf = (code: number): number => code & maxCorners;

/** Result buffer, written by `convolve` and to be read before the next call. */
const made = { count: 0, codes: new Int32Array(4096), signs: new Int8Array(4096) };
export type Convolution = Readonly<typeof made>;

/** A ring of an orientation, in the form that `addTurnedEdges` reads. */
interface RingToTurn {
  readonly corners: CornerArrays;
  readonly previous: Int32Array;
  readonly ring: RingRange;
}

/** Valid until the next call. */
export function convolve(resting: Orientation, moving: Orientation): Convolution {
  made.count = 0;
  for (const still of resting.islands) {
    for (const island of moving.islands) {
      for (const [i, ring] of still.rings.entries()) {
        if (i > 0 && !couldFit(island.bounds, ring.bounds)) continue;
        const a = { corners: resting.corners, previous: resting.previous, ring };
        for (const [j, other] of island.rings.entries()) {
          if (j > 0 && !couldFit(still.bounds, other.bounds)) continue;
          const b = { corners: moving.opposite, previous: moving.previous, ring: other };
          addTurnedEdges(a, b, false);
          addTurnedEdges(b, a, true);
        }
      }
    }
  }
  return made;
}

/**
 * Whether something could fit into a hole, by bounding boxes. What could not might cover the hole, which must then
 * count as filled.
 */
function couldFit(bounds: Island['bounds'], hole: Island['bounds']): boolean {
  return bounds.maxX - bounds.minX <= hole.maxX - hole.minX && bounds.maxY - bounds.minY <= hole.maxY - hole.minY;
}

/**
 * Carries the edges of one ring to the corners of the other that turn through their direction. If directions are equal,
 * the moving edge counts as rotated infinitesimally further at every corner, so that no pair is counted twice or
 * omitted.
 */
function addTurnedEdges(from: RingToTurn, to: RingToTurn, isMoving: boolean): void {
  const { angle } = to.corners;
  const first = from.ring.from;
  const count = from.ring.to - first;
  for (let corner = to.ring.from; corner < to.ring.to; corner += 1) {
    const before = angle[to.previous[corner]!]!;
    const after = angle[corner]!;
    let turn = after - before;
    if (turn > Math.PI) turn -= 2 * Math.PI;
    else if (turn < -Math.PI) turn += 2 * Math.PI;
    if (turn === 0) continue;
    const [low, high] = turn > 0 ? [before, after] : [after, before];
    const start = edgesUpTo(from, low, isMoving);
    const end = edgesUpTo(from, high, isMoving);
    let left = low > high ? count - start + end : end - start;
    if (made.count + left > made.codes.length) enlarge(made.count + left);
    const sign = turn > 0 ? 1 : -1;
    for (let i = start; left > 0; left -= 1) {
      if (i === count) i = 0;
      made.codes[made.count] = (from.corners.byAngle[first + i]! << cornerBits) | corner | (isMoving ? movingBit : 0);
      made.signs[made.count] = sign;
      made.count += 1;
      i += 1;
    }
  }
}

/**
 * Number of edges of a ring, in order of angle, up to a direction; an edge with exactly that direction counts if it is
 * the resting outline's.
 */
function edgesUpTo({ corners, ring }: RingToTurn, direction: number, isMoving: boolean): number {
  const { angle, byAngle } = corners;
  let [low, high] = [ring.from, ring.to];
  while (low < high) {
    const middle = (low + high) >> 1;
    const found = angle[byAngle[middle]!]!;
    if (isMoving ? found < direction : found <= direction) low = middle + 1;
    else high = middle;
  }
  return low - ring.from;
}

function enlarge(atLeast: number): void {
  const { codes, signs } = made;
  const length = Math.max(atLeast, 2 * codes.length);
  made.codes = new Int32Array(length);
  made.signs = new Int8Array(length);
  made.codes.set(codes);
  made.signs.set(signs);
}
