/**
 * Where a part that moves would overlap one that rests: the region of all its positions that do, known by its outline only.
 *
 * That region is the Minkowski sum of the resting outline and the moving one turned by half a turn. Its outline is among the
 * edges of the *convolution* of the two: every edge of one, carried to every corner of the other that turns through the edge's
 * direction, counted −1 where that corner is concave (Guibas, Ramshaw and Stolfi 1983, A kinetic framework for computational
 * geometry). The winding number of these edges round a position is how many pieces the overlap has there, less their holes
 * (the Euler characteristic); so they need no union, and are some times as many as the corners, not their product.
 *
 * Nothing but a ring round a hole has an overlap with a hole. A hole is filled, therefore, where the box of what comes to it does
 * not fit into the hole's; what does fit cannot cover it, and no overlap runs round it.
 */

import type { Corners, Island, Pose } from './pose.ts';
import { slackMm } from './pose.ts';

/** Bands by height that the edges are sorted into, at most. */
const maxBands = 256;
/** So many edges to a band, about. */
const edgesPerBand = 10;

/** Corners must be countable in 15 bits for an edge and a corner to go into one number. */
export const maxCorners = 32_767;
const cornerBits = 15;
const ofMoving = 1 << 30;

/** What `sectionsAt` reads of crossings, kept between calls. */
const crossings = { x: new Float64Array(1024), up: new Int8Array(1024) };

export class Meeting {
  /** Moving heights at which the two touch along something level, or at the top or the bottom: exact ones, not to be missed. */
  readonly levels: readonly number[];
  readonly minY: number;
  readonly maxY: number;
  readonly #resting: Pose;
  readonly #moving: Pose;
  /** Edges by band; `starts` says where each band begins. The corner is in the low bits, then the edge, then whose edge it is. */
  readonly #edges: Int32Array;
  readonly #signs: Int8Array;
  readonly #starts: Int32Array;
  readonly #perMm: number;

  constructor(resting: Pose, moving: Pose) {
    this.#resting = resting;
    this.#moving = moving;
    this.minY = resting.bounds.minY - moving.bounds.maxY;
    this.maxY = resting.bounds.maxY - moving.bounds.minY;
    const made = new Convolution(resting, moving);
    const bands = Math.min(maxBands, Math.max(1, Math.ceil(made.count / edgesPerBand)));
    this.#perMm = bands / (this.maxY - this.minY);
    const levels = new Set([this.minY, this.maxY]);
    const counts = new Int32Array(bands + 1);
    const spans = new Int32Array(2 * made.count);
    for (let i = 0; i < made.count; i += 1) {
      const [from, to, level] = this.#spanOf(made.edges[i]!, made.signs[i]!);
      if (level !== undefined) levels.add(level);
      const [first, last] = from === to ? [1, 0] : [this.#bandOf(from, bands), this.#bandOf(to, bands)];
      spans[2 * i] = first;
      spans[2 * i + 1] = last;
      for (let band = first; band <= last; band += 1) counts[band + 1]! += 1;
    }
    for (let band = 0; band < bands; band += 1) counts[band + 1]! += counts[band]!;
    this.#starts = counts.slice();
    this.#edges = new Int32Array(counts[bands]!);
    this.#signs = new Int8Array(counts[bands]!);
    for (let i = 0; i < made.count; i += 1) {
      for (let band = spans[2 * i]!; band <= spans[2 * i + 1]!; band += 1) {
        this.#edges[counts[band]!] = made.edges[i]!;
        this.#signs[counts[band]!] = made.signs[i]!;
        counts[band]! += 1;
      }
    }
    this.levels = [...levels];
  }

  get size(): number {
    return this.#edges.length;
  }

  #bandOf(y: number, bands: number): number {
    return Math.min(bands - 1, Math.max(0, Math.floor((y - this.minY) * this.#perMm)));
  }

  /** From which height to which an edge goes; for a level one, the height at which the two touch there. */
  #spanOf(code: number, sign: number): [number, number, number?] {
    const edge = (code & ~ofMoving) >> cornerBits;
    const corner = code & maxCorners;
    const isMoving = (code & ofMoving) !== 0;
    const [own, next] = isMoving
      ? [this.#moving.opposite, this.#moving.next]
      : [this.#resting.corners, this.#resting.next];
    const other = isMoving ? this.#resting.corners : this.#moving.opposite;
    const [from, to] = [own.y[edge]! + other.y[corner]!, own.y[next[edge]!]! + other.y[corner]!];
    if (Math.abs(from - to) > slackMm / 100) return [Math.min(from, to), Math.max(from, to)];
    // Material is to the left, so an edge that runs to the left is a top; both outlines are thinned.
    const isTop = own.x[next[edge]!]! < own.x[edge]! === sign > 0;
    return [Math.min(from, to), Math.max(from, to), from + (isTop ? 2 : -2) * slackMm];
  }

  /**
   * Writes where along the level `y` the moving part overlaps the resting one, as pairs from, to into `into`, ascending, each
   * with `dx` added. How many numbers it has written. Both relative to the resting part's origin.
   */
  sectionsAt(y: number, dx: number, into: Float64Array, at: number): number {
    const bands = this.#starts.length - 1;
    if (y < this.minY || y > this.maxY) return 0;
    const band = this.#bandOf(y, bands);
    const [edges, signs] = [this.#edges, this.#signs];
    const { corners: rest, next: restNext } = this.#resting;
    const { opposite: move, next: moveNext } = this.#moving;
    let { x: xs, up: ups } = crossings;
    let count = 0;
    for (let i = this.#starts[band]!, end = this.#starts[band + 1]!; i < end; i += 1) {
      const code = edges[i]!;
      const corner = code & maxCorners;
      const edge = (code & ~ofMoving) >> cornerBits;
      const isMoving = code >= ofMoving;
      const own = isMoving ? move : rest;
      const other = isMoving ? rest : move;
      const lift = other.y[corner]!;
      const from = own.y[edge]! + lift;
      const to = own.y[isMoving ? moveNext[edge]! : restNext[edge]!]! + lift;
      // Half open, so that a corner on the level counts once.
      if (from <= y === to <= y) continue;
      const x = own.x[edge]! + other.x[corner]! + (y - from) * own.slope[edge]!;
      const up = to > from ? signs[i]! : -signs[i]!;
      if (count === xs.length) ({ x: xs, up: ups } = enlarged());
      let slot = count;
      for (; slot > 0 && xs[slot - 1]! > x; slot -= 1) {
        xs[slot] = xs[slot - 1]!;
        ups[slot] = ups[slot - 1]!;
      }
      xs[slot] = x;
      ups[slot] = up;
      count += 1;
    }
    let winding = 0;
    let written = at;
    for (let i = 0; i < count; i += 1) {
      // To the right of an edge that goes up is what is outside of it.
      const after = winding - ups[i]!;
      if (winding <= 0 && after > 0) into[written] = xs[i]! + dx;
      else if (winding > 0 && after <= 0) {
        into[written + 1] = xs[i]! + dx;
        written += 2;
      }
      winding = after;
    }
    return written - at;
  }

  /** How many edges are looked at for a level: a measure of the work. */
  get edgesPerLevel(): number {
    return this.#edges.length / (this.#starts.length - 1);
  }
}

function enlarged(): typeof crossings {
  const [x, up] = [crossings.x, crossings.up];
  crossings.x = new Float64Array(2 * x.length);
  crossings.up = new Int8Array(2 * x.length);
  crossings.x.set(x);
  crossings.up.set(up);
  return crossings;
}

/** The edges of the convolution of a resting pose and a moving one turned by half a turn. */
class Convolution {
  edges = new Int32Array(1024);
  signs = new Int8Array(1024);
  count = 0;

  constructor(resting: Pose, moving: Pose) {
    for (const still of resting.islands) {
      for (const island of moving.islands) {
        const ofStill = still.rings.filter((ring, i) => i === 0 || fits(island, ring.bounds));
        const ofIsland = island.rings.filter((ring, i) => i === 0 || fits(still, ring.bounds));
        for (const ring of ofStill) {
          for (const other of ofIsland) {
            const a = { corners: resting.corners, previous: resting.previous, ...ring };
            const b = { corners: moving.opposite, previous: moving.previous, ...other };
            // Of edges with the same direction the resting one's come first; so no pair is counted twice or left out.
            this.#carry(a, b, false);
            this.#carry(b, a, true);
          }
        }
      }
    }
  }

  /** The edges of one ring at the corners of the other that turn through their direction. */
  #carry(from: Turning, to: Turning, isMoving: boolean): void {
    const order = Array.from({ length: from.to - from.from }, (_, i) => from.from + i);
    const { angle } = from.corners;
    order.sort((p, q) => angle[p]! - angle[q]! || p - q);
    const angles = Float64Array.from(order, (edge) => angle[edge]!);
    // The first of the edges that lies behind a direction, where one in it counts as behind (resting) or not (moving).
    const firstBehind = (direction: number): number => {
      let [low, high] = [0, angles.length];
      while (low < high) {
        const middle = (low + high) >> 1;
        if (isMoving ? angles[middle]! < direction : angles[middle]! <= direction) low = middle + 1;
        else high = middle;
      }
      return low;
    };
    for (let corner = to.from; corner < to.to; corner += 1) {
      const before = to.corners.angle[to.previous[corner]!]!;
      const after = to.corners.angle[corner]!;
      let turn = after - before;
      if (turn > Math.PI) turn -= 2 * Math.PI;
      else if (turn < -Math.PI) turn += 2 * Math.PI;
      if (turn === 0) continue;
      const sign = turn > 0 ? 1 : -1;
      const [first, last] = turn > 0 ? [before, after] : [after, before];
      const start = firstBehind(first);
      const end = firstBehind(last);
      const wraps = first > last;
      for (let i = start, left = wraps ? angles.length - start + end : end - start; left > 0; left -= 1, i += 1) {
        this.#add(order[i % angles.length]!, corner, sign, isMoving);
      }
    }
  }

  #add(edge: number, corner: number, sign: number, isMoving: boolean): void {
    if (this.count === this.edges.length) {
      const [edges, signs] = [this.edges, this.signs];
      this.edges = new Int32Array(2 * edges.length);
      this.signs = new Int8Array(2 * edges.length);
      this.edges.set(edges);
      this.signs.set(signs);
    }
    this.edges[this.count] = (edge << cornerBits) | corner | (isMoving ? ofMoving : 0);
    this.signs[this.count] = sign;
    this.count += 1;
  }
}

interface Turning {
  readonly corners: Corners;
  readonly previous: Int32Array;
  readonly from: number;
  readonly to: number;
}

/** Whether the island, by its box, could go into a hole. What does not fit might cover the hole and must find it filled. */
function fits({ bounds }: Island, hole: Island['bounds']): boolean {
  return (
    bounds.maxX - bounds.minX <= hole.maxX - hole.minX && bounds.maxY - bounds.minY <= hole.maxY - hole.minY
  );
}
