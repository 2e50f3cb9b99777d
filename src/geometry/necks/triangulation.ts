/**
 * A constrained Delaunay triangulation of points on an integer grid: Delaunay's from `delaunator`, with the missing
 * boundary edges forced in by flips (S. W. Sloan, "A fast algorithm for generating constrained Delaunay
 * triangulations", Computers & Structures 47, 1993). Constrained rather than refined, so that a hair slit between two
 * outlines costs nothing extra.
 *
 * Half-edges are numbered as in delaunator: edge e belongs to triangle ⌊e/3⌋ and starts at vertex `starts[e]`.
 * Triangles run counter-clockwise.
 */

import Delaunator from 'delaunator';

/** A vertex this near to an edge (units) lies on it: clipping rounds to the grid, so touching outlines may miss by one unit. */
const onEdge = 2;

export const nextEdge = (e: number): number => (e % 3 === 2 ? e - 2 : e + 1);
export const previousEdge = (e: number): number => (e % 3 === 0 ? e + 2 : e - 1);

export class Triangulation {
  readonly starts: Uint32Array;
  /** The same edge in the neighbouring triangle, or −1 on the hull. */
  readonly twins: Int32Array;
  /** Winding number inside the edge's triangle less the one beyond the edge. */
  readonly steps: Int8Array;
  /** Some half-edge that starts at the vertex, or −1. */
  readonly #edgeAt: Int32Array;

  readonly xs: Float64Array;
  readonly ys: Float64Array;

  /** The points must be distinct. */
  constructor(xs: Float64Array, ys: Float64Array) {
    this.xs = xs;
    this.ys = ys;
    const coordinates = new Float64Array(xs.length * 2);
    for (let i = 0; i < xs.length; i += 1) {
      // Delaunator's triangles run counter-clockwise with y down; swapping the axes makes them ours.
      coordinates[2 * i] = ys[i]!;
      coordinates[2 * i + 1] = xs[i]!;
    }
    const { triangles, halfedges } = new Delaunator(coordinates);
    this.starts = triangles;
    this.twins = halfedges;
    this.steps = new Int8Array(triangles.length);
    this.#edgeAt = new Int32Array(xs.length).fill(-1);
    for (let e = 0; e < triangles.length; e += 1) this.#edgeAt[triangles[e]!] = e;
  }

  /** Twice the signed area of a, b, c: positive if c is on the left of a → b. Exact for neighbouring points. */
  turn(a: number, b: number, c: number): number {
    const { xs, ys } = this;
    return (xs[b]! - xs[a]!) * (ys[c]! - ys[a]!) - (ys[b]! - ys[a]!) * (xs[c]! - xs[a]!);
  }

  /** All half-edges that start at the vertex, in either direction of rotation where the hull interrupts it. */
  *edgesFrom(vertex: number): Generator<number> {
    const first = this.#edgeAt[vertex]!;
    if (first < 0) return;
    let e = first;
    do {
      yield e;
      e = this.twins[previousEdge(e)]!;
    } while (e >= 0 && e !== first);
    if (e === first) return;
    for (e = this.twins[first]!; e >= 0; e = this.twins[e]!) {
      e = nextEdge(e);
      yield e;
    }
  }

  /** The half-edge from a to b, or −1. */
  find(a: number, b: number): number {
    const first = this.#edgeAt[a]!;
    if (first < 0) return -1;
    let e = first;
    do {
      if (this.starts[nextEdge(e)] === b) return e;
      e = this.twins[previousEdge(e)]!;
    } while (e >= 0 && e !== first);
    if (e === first) return -1;
    for (e = this.twins[first]!; e >= 0; e = this.twins[e]!) {
      e = nextEdge(e);
      if (this.starts[nextEdge(e)] === b) return e;
    }
    return -1;
  }

  /**
   * Makes a → b an edge (or a chain of edges through the vertices on it) with material on its left. An edge that would
   * cross an earlier one, which no valid region has, is left out.
   */
  addBoundary(a: number, b: number): void {
    let from = a;
    for (let rounds = 0; from !== b && rounds < this.xs.length; rounds += 1) {
      const reached = this.#connect(from, b);
      if (reached < 0) return;
      this.#mark(from, reached);
      from = reached;
    }
  }

  #mark(a: number, b: number): void {
    const there = this.find(a, b);
    const back = this.find(b, a);
    if (there >= 0) this.steps[there]! += 1;
    if (back >= 0) this.steps[back]! -= 1;
  }

  /**
   * Makes an edge from a towards b, as far as the first vertex on the way; returns that vertex, or −1 if there is none.
   */
  #connect(a: number, b: number): number {
    if (this.find(a, b) >= 0 || this.find(b, a) >= 0) return b;
    let across = -1;
    for (const e of this.edgesFrom(a)) {
      const right = this.starts[nextEdge(e)]!;
      const left = this.starts[previousEdge(e)]!;
      if (this.#liesOn(a, b, right)) return right;
      if (this.#liesOn(a, b, left)) return left;
      if (this.turn(a, b, right) < 0 && this.turn(a, b, left) > 0) across = nextEdge(e);
    }
    const crossed: [number, number][] = [];
    while (crossed.length < this.starts.length) {
      const beyond = across < 0 ? -1 : this.twins[across]!;
      if (beyond < 0 || this.steps[across] !== 0) return -1;
      crossed.push([this.starts[across]!, this.starts[beyond]!]);
      const apex = this.starts[previousEdge(beyond)]!;
      if (apex === b || this.#liesOn(a, b, apex)) {
        return this.#clearWay(a, apex, crossed) ? apex : -1;
      }
      across = this.turn(a, b, apex) > 0 ? nextEdge(beyond) : previousEdge(beyond);
    }
    return -1;
  }

  #liesOn(a: number, b: number, v: number): boolean {
    const { xs, ys } = this;
    const dx = xs[b]! - xs[a]!;
    const dy = ys[b]! - ys[a]!;
    const square = dx * dx + dy * dy;
    const along = dx * (xs[v]! - xs[a]!) + dy * (ys[v]! - ys[a]!);
    return along > 0 && along < square && this.turn(a, b, v) ** 2 <= onEdge * onEdge * square;
  }

  /**
   * Flips the crossed edges until a–b is an edge, then restores the Delaunay property of the new edges as far as
   * constraints allow.
   */
  #clearWay(a: number, b: number, crossed: [number, number][]): boolean {
    const made: [number, number][] = [];
    const limit = 100 + 10 * crossed.length ** 2;
    let head = 0;
    for (; head < crossed.length && head < limit; head += 1) {
      const [u, v] = crossed[head]!;
      const e = this.find(u, v);
      const twin = e < 0 ? -1 : this.twins[e]!;
      if (twin < 0) return false;
      const p = this.starts[previousEdge(e)]!;
      const q = this.starts[previousEdge(twin)]!;
      // Opposite sides of p–q: the four points are convex, so the flip is sound.
      if (this.turn(p, q, u) * this.turn(p, q, v) >= 0) {
        crossed.push([u, v]);
        continue;
      }
      this.#flip(e);
      const touches = p === a || p === b || q === a || q === b;
      if (!touches && this.turn(a, b, p) * this.turn(a, b, q) < 0) crossed.push([p, q]);
      else made.push([p, q]);
    }
    if (head < crossed.length) return false;
    for (let pass = 0, changed = true; changed && pass < 20; pass += 1) {
      changed = false;
      for (const pair of made) {
        const [u, v] = pair;
        const e = this.find(u, v);
        if (e < 0 || (u === a && v === b) || (u === b && v === a)) continue;
        const twin = this.twins[e]!;
        if (twin < 0 || this.steps[e] !== 0 || !this.#encroached(e, twin)) continue;
        pair[0] = this.starts[previousEdge(e)]!;
        pair[1] = this.starts[previousEdge(twin)]!;
        this.#flip(e);
        changed = true;
      }
    }
    return true;
  }

  /**
   * Whether the apex beyond the edge lies in the circumcircle of the edge's triangle, and the two triangles form a
   * convex quadrilateral.
   */
  #encroached(e: number, twin: number): boolean {
    const { xs, ys, starts } = this;
    const d = starts[previousEdge(twin)]!;
    const c = starts[previousEdge(e)]!;
    const u = starts[e]!;
    const v = starts[twin]!;
    if (this.turn(c, d, u) * this.turn(c, d, v) >= 0) return false;
    const ax = xs[u]! - xs[d]!;
    const ay = ys[u]! - ys[d]!;
    const bx = xs[v]! - xs[d]!;
    const by = ys[v]! - ys[d]!;
    const cx = xs[c]! - xs[d]!;
    const cy = ys[c]! - ys[d]!;
    const a2 = ax * ax + ay * ay;
    const b2 = bx * bx + by * by;
    const c2 = cx * cx + cy * cy;
    const determinant = ax * (by * c2 - b2 * cy) - ay * (bx * c2 - b2 * cx) + a2 * (bx * cy - by * cx);
    // The margin keeps rounding from flipping four cocircular points back and forth.
    return determinant > 1e-12 * (a2 + b2 + c2) ** 2;
  }

  /** Replaces the diagonal of the two triangles at the edge with the other one. */
  #flip(e: number): void {
    const { starts, twins, steps } = this;
    const f = twins[e]!;
    const er = previousEdge(e);
    const fl = previousEdge(f);
    const top = starts[er]!;
    const bottom = starts[fl]!;
    const beyondFl = twins[fl]!;
    const beyondEr = twins[er]!;
    starts[e] = bottom;
    starts[f] = top;
    this.#link(e, beyondFl);
    this.#link(f, beyondEr);
    this.#link(er, fl);
    steps[e] = steps[fl]!;
    steps[f] = steps[er]!;
    steps[er] = 0;
    steps[fl] = 0;
    for (const edge of [e, nextEdge(e), er, f, nextEdge(f), fl]) this.#edgeAt[starts[edge]!] = edge;
  }

  #link(e: number, f: number): void {
    this.twins[e] = f;
    if (f >= 0) this.twins[f] = e;
  }
}
