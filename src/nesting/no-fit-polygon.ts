/**
 * No-fit polygon: the region of all positions at which a moving part would overlap a resting one, represented by the
 * edges that wind around it (`convolution.ts`). It is queried level by level, so the edges are sorted into bands by
 * height.
 */

import { convolve, cornerOf, edgeOf, isMovingEdge } from './convolution.ts';
import type { Convolution } from './convolution.ts';
import type { Orientation } from './orientation.ts';

/** Limit on bands, and the target number of edges starting in each. */
const maxBands = 128;
const edgesPerBand = 12;

/** Buffers reused between calls: the crossings of a level, and the spans of edges during sorting. */
let crossingX = new Float64Array(1024);
let crossingUp = new Int8Array(1024);
let spans = new Float64Array(8192);

export class NoFitPolygon {
  /** Heights of the moving part between which the two can meet. */
  readonly minY: number;
  readonly maxY: number;
  readonly #resting: Orientation;
  readonly #moving: Orientation;
  /** Edges by band, from left to right within each; `starts` has the first index of each band. */
  readonly #codes: Int32Array;
  readonly #signs: Int8Array;
  readonly #starts: Int32Array;
  readonly #perMm: number;

  constructor(resting: Orientation, moving: Orientation) {
    this.#resting = resting;
    this.#moving = moving;
    this.minY = resting.bounds.minY - moving.bounds.maxY;
    this.maxY = resting.bounds.maxY - moving.bounds.minY;
    const made = convolve(resting, moving);
    const bands = Math.min(maxBands, Math.max(1, Math.ceil(made.count / edgesPerBand)));
    this.#perMm = bands / (this.maxY - this.minY);
    this.#measure(made);
    const counts = new Int32Array(bands + 1);
    for (let i = 0; i < made.count; i += 1) {
      if (spans[3 * i] === spans[3 * i + 1]) continue;
      const last = this.#bandOf(spans[3 * i + 1]!, bands);
      for (let band = this.#bandOf(spans[3 * i]!, bands); band <= last; band += 1) counts[band + 1]! += 1;
    }
    for (let band = 0; band < bands; band += 1) counts[band + 1]! += counts[band]!;
    this.#starts = counts.slice();
    this.#codes = new Int32Array(counts[bands]!);
    this.#signs = new Int8Array(counts[bands]!);
    for (const key of fromLeft(made.count)) {
      const i = key % indexLimit;
      if (spans[3 * i] === spans[3 * i + 1]) continue;
      const last = this.#bandOf(spans[3 * i + 1]!, bands);
      for (let band = this.#bandOf(spans[3 * i]!, bands); band <= last; band += 1) {
        this.#codes[counts[band]!] = made.codes[i]!;
        this.#signs[counts[band]!] = made.signs[i]!;
        counts[band]! += 1;
      }
    }
  }

  /** Number of stored edges, as a measure of memory. */
  get size(): number {
    return this.#codes.length;
  }

  /** Average number of edges visited for a level, as a measure of work. */
  get edgesPerLevel(): number {
    return this.#codes.length / (this.#starts.length - 1);
  }

  #bandOf(y: number, bands: number): number {
    return Math.min(bands - 1, Math.max(0, Math.floor((y - this.minY) * this.#perMm)));
  }

  /** Stores the start and end height of each edge, and the x of its middle. */
  #measure({ count, codes }: Convolution): void {
    if (3 * count > spans.length) spans = new Float64Array(6 * count);
    for (let i = 0; i < count; i += 1) {
      const code = codes[i]!;
      const edge = edgeOf(code);
      const corner = cornerOf(code);
      const isMoving = isMovingEdge(code);
      const own = isMoving ? this.#moving.opposite : this.#resting.corners;
      const other = isMoving ? this.#resting.corners : this.#moving.opposite;
      const end = isMoving ? this.#moving.next[edge]! : this.#resting.next[edge]!;
      const from = own.y[edge]! + other.y[corner]!;
      const to = own.y[end]! + other.y[corner]!;
      spans[3 * i] = Math.min(from, to);
      spans[3 * i + 1] = Math.max(from, to);
      spans[3 * i + 2] = (own.x[edge]! + own.x[end]!) / 2 + other.x[corner]!;
    }
  }

  /**
   * Writes the sections along the level `y` in which the moving part overlaps the resting one into `into` from `at`:
   * pairs of start and end, ascending, each with `dx` added. Returns the number of values written. Coordinates are
   * relative to the resting part's origin.
   */
  sectionsAt(y: number, dx: number, into: Float64Array, at: number): number {
    if (y < this.minY || y > this.maxY) return 0;
    const band = this.#bandOf(y, this.#starts.length - 1);
    const codes = this.#codes;
    const signs = this.#signs;
    const end = this.#starts[band + 1]!;
    const { corners: rest, next: restNext } = this.#resting;
    const { opposite: move, next: moveNext } = this.#moving;
    if (end - this.#starts[band]! > crossingX.length) {
      crossingX = new Float64Array(2 * (end - this.#starts[band]!));
      crossingUp = new Int8Array(crossingX.length);
    }
    const xs = crossingX;
    const ups = crossingUp;
    let count = 0;
    for (let i = this.#starts[band]!; i < end; i += 1) {
      const code = codes[i]!;
      const edge = edgeOf(code);
      const corner = cornerOf(code);
      const isMoving = isMovingEdge(code);
      const own = isMoving ? move : rest;
      const other = isMoving ? rest : move;
      const lift = other.y[corner]!;
      const from = own.y[edge]! + lift;
      // Half-open intervals, so that a corner on the level counts once. Both edges at a corner compute the same sum,
      // and so the same number.
      const isFromBelow = from <= y;
      if (isFromBelow === own.y[isMoving ? moveNext[edge]! : restNext[edge]!]! + lift <= y) continue;
      const x = own.x[edge]! + other.x[corner]! + (y - from) * own.slope[edge]!;
      let slot = count;
      for (; slot > 0 && xs[slot - 1]! > x; slot -= 1) {
        xs[slot] = xs[slot - 1]!;
        ups[slot] = ups[slot - 1]!;
      }
      xs[slot] = x;
      ups[slot] = isFromBelow ? signs[i]! : -signs[i]!;
      count += 1;
    }
    let winding = 0;
    let written = at;
    for (let i = 0; i < count; i += 1) {
      // An edge that goes up has the outside on its right.
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
}

/** More than the edges of any no-fit polygon. */
const indexLimit = 2 ** 24;
/** Resolution in mm for sorting edges from left to right, so that the crossings of a level come out nearly sorted. */
const sortMm = 0.1;

/** The edges from left to right, as keys whose remainder modulo `indexLimit` is the edge's index. */
function fromLeft(count: number): Float64Array {
  const keys = new Float64Array(count);
  let left = Infinity;
  for (let i = 0; i < count; i += 1) left = Math.min(left, spans[3 * i + 2]!);
  for (let i = 0; i < count; i += 1) keys[i] = Math.floor((spans[3 * i + 2]! - left) / sortMm) * indexLimit + i;
  return keys.sort();
}
