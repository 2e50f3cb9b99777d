/** Simplifies outlines outwards: fewer points, with no material left outside, for collision tests. */

import { distinct, samePointMm } from '../geometry/raw-offset.ts';
import type { Region, Ring } from '../geometry/types.ts';

/** Rounds of removal, with the tolerance doubled each time, so that the smallest deviations come first. */
const rounds = 6;

/**
 * A region that covers the given one with fewer points, and whose outline is nowhere further from it than `tolerance`
 * mm.
 *
 * Two steps are repeated: a concave corner is cut off by its chord, and an edge between two convex corners is removed
 * by extending its neighbours until they meet. Each adds a triangle of material, so the winding number of every point
 * stays the same or grows by one, even where the triangle overlaps other material: what was inside stays inside.
 * Straight stretches between corners stay exactly where they are. Holes are simplified in the same way, as material is
 * to the left of every ring.
 */
export function simplifyOutward(region: Region, tolerance: number): Region {
  return region.map((ring) => new LinkedRing(ring).simplified(tolerance)).filter((ring) => ring.length > 2);
}

/** A ring as a linked list, from which points can be removed. */
class LinkedRing {
  readonly #x: Float64Array;
  readonly #y: Float64Array;
  readonly #next: Int32Array;
  readonly #previous: Int32Array;
  /** Upper bound on the distance of the edge that starts here from the given ring, in mm. */
  readonly #strayed: Float64Array;
  #count: number;
  #first = 0;

  constructor(ring: Ring) {
    const points = distinct(ring);
    const count = points.length;
    this.#count = count;
    this.#x = new Float64Array(count);
    this.#y = new Float64Array(count);
    this.#next = new Int32Array(count);
    this.#previous = new Int32Array(count);
    for (let i = 0; i < count; i += 1) {
      const { x, y } = points[i]!;
      this.#x[i] = x;
      this.#y[i] = y;
      this.#next[i] = i + 1 < count ? i + 1 : 0;
      this.#previous[i] = i > 0 ? i - 1 : count - 1;
    }
    this.#strayed = new Float64Array(count);
  }

  simplified(tolerance: number): Ring {
    for (let round = 1; round <= rounds; round += 1) {
      const allowed = tolerance / 2 ** (rounds - round);
      let before: number;
      do {
        before = this.#count;
        let at = this.#first;
        // Once around, however many points are removed on the way.
        for (let steps = this.#count; steps > 0 && this.#count > 3; steps -= 1) {
          at = this.#next[at]!;
          if (this.#turn(at) <= 0) this.#cutShort(at, allowed);
          else this.#takeEdge(at, allowed);
        }
      } while (this.#count < before);
    }
    const ring = [];
    for (let i = 0, at = this.#first; i < this.#count; i += 1, at = this.#next[at]!) {
      ring.push({ x: this.#x[at]!, y: this.#y[at]! });
    }
    return ring;
  }

  /** Twice the signed area of the triangle of a point and its neighbours: positive for a convex corner. */
  #turn(at: number): number {
    const [x, y] = [this.#x, this.#y];
    const [p, n] = [this.#previous[at]!, this.#next[at]!];
    return (x[at]! - x[p]!) * (y[n]! - y[at]!) - (y[at]! - y[p]!) * (x[n]! - x[at]!);
  }

  #cutShort(at: number, allowed: number): void {
    const [x, y] = [this.#x, this.#y];
    const [p, n] = [this.#previous[at]!, this.#next[at]!];
    const far = toSegment(x[at]!, y[at]!, x[p]!, y[p]!, x[n]!, y[n]!);
    const strayed = far + Math.max(this.#strayed[p]!, this.#strayed[at]!);
    // A spike that returns on itself has no chord.
    if (strayed > allowed || Math.hypot(x[n]! - x[p]!, y[n]! - y[p]!) < samePointMm) return;
    this.#strayed[p] = strayed;
    this.#remove(at);
  }

  /** Removes the edge from here to the next point if both are convex and the adjacent edges meet not far beyond it. */
  #takeEdge(at: number, allowed: number): void {
    const to = this.#next[at]!;
    if (this.#count < 4 || this.#turn(to) <= 0) return;
    const [x, y] = [this.#x, this.#y];
    const [p, n] = [this.#previous[at]!, this.#next[to]!];
    const [ax, ay] = [x[at]! - x[p]!, y[at]! - y[p]!];
    const [bx, by] = [x[to]! - x[n]!, y[to]! - y[n]!];
    const cross = ay * bx - ax * by;
    // Extension of the previous edge, as a multiple of its own length.
    const longer = (by * (x[at]! - x[to]!) - bx * (y[at]! - y[to]!)) / cross;
    if (!(cross > 0) || !(longer > 0) || !Number.isFinite(longer)) return;
    const [px, py] = [x[at]! + longer * ax, y[at]! + longer * ay];
    const far = toSegment(px, py, x[at]!, y[at]!, x[to]!, y[to]!) + this.#strayed[at]!;
    const strayed = Math.max(far, this.#strayed[p]!, this.#strayed[to]!);
    if (strayed > allowed) return;
    [x[at], y[at]] = [px, py];
    this.#strayed[p] = Math.max(far, this.#strayed[p]!);
    this.#strayed[at] = Math.max(far, this.#strayed[to]!);
    this.#remove(to);
  }

  #remove(at: number): void {
    const [p, n] = [this.#previous[at]!, this.#next[at]!];
    this.#next[p] = n;
    this.#previous[n] = p;
    this.#count -= 1;
    if (this.#first === at) this.#first = n;
  }
}

function toSegment(x: number, y: number, ax: number, ay: number, bx: number, by: number): number {
  const [dx, dy] = [bx - ax, by - ay];
  const t = Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy || 1)));
  const [offX, offY] = [ax + t * dx - x, ay + t * dy - y];
  // Many times as fast as `Math.hypot`, which minds lengths beyond all numbers.
  return Math.sqrt(offX * offX + offY * offY);
}
