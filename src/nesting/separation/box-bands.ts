/**
 * Boxes on a rectangle, found by the bands that they reach into: for each band across and along, one bit for each box. What
 * may meet a box is in one of its columns and in one of its rows, 32 boxes at a time.
 */

/** Bands in either direction. Boxes beyond the rectangle count to the outermost. */
const bands = 32;

export class BoxBands {
  readonly words: number;
  readonly #columns: Int32Array;
  readonly #rows: Int32Array;
  readonly #bandsPerMmX: number;
  readonly #bandsPerMmY: number;
  /** For each box: its first and last column and row; the first is −1 before it lies anywhere. */
  readonly #spans: Int16Array;

  constructor(count: number, width: number, height: number) {
    this.words = Math.ceil(count / 32);
    this.#columns = new Int32Array(bands * this.words);
    this.#rows = new Int32Array(bands * this.words);
    this.#bandsPerMmX = bands / width;
    this.#bandsPerMmY = bands / height;
    this.#spans = new Int16Array(4 * count).fill(-1);
  }

  /** Moves a box, given by its centre and half its size. */
  put(box: number, x: number, y: number, halfWidth: number, halfHeight: number): void {
    const spans = this.#spans;
    const at = 4 * box;
    const left = bandOf((x - halfWidth) * this.#bandsPerMmX);
    const right = bandOf((x + halfWidth) * this.#bandsPerMmX);
    const bottom = bandOf((y - halfHeight) * this.#bandsPerMmY);
    const top = bandOf((y + halfHeight) * this.#bandsPerMmY);
    if (spans[at] !== left || spans[at + 1] !== right) {
      if (spans[at]! >= 0) this.#flip(this.#columns, box, spans[at]!, spans[at + 1]!);
      this.#flip(this.#columns, box, left, right);
    }
    if (spans[at + 2] !== bottom || spans[at + 3] !== top) {
      if (spans[at + 2]! >= 0) this.#flip(this.#rows, box, spans[at + 2]!, spans[at + 3]!);
      this.#flip(this.#rows, box, bottom, top);
    }
    spans[at] = left;
    spans[at + 1] = right;
    spans[at + 2] = bottom;
    spans[at + 3] = top;
  }

  #flip(lines: Int32Array, box: number, from: number, to: number): void {
    const bit = 1 << (box & 31);
    for (let band = from; band <= to; band += 1) lines[band * this.words + (box >> 5)]! ^= bit;
  }

  /** Writes the boxes that may meet this one, ascending; returns their number. */
  near(x: number, y: number, halfWidth: number, halfHeight: number, into: Int32Array): number {
    const { words } = this;
    const columns = this.#columns;
    const rows = this.#rows;
    const left = bandOf((x - halfWidth) * this.#bandsPerMmX);
    const right = bandOf((x + halfWidth) * this.#bandsPerMmX);
    const bottom = bandOf((y - halfHeight) * this.#bandsPerMmY);
    const top = bandOf((y + halfHeight) * this.#bandsPerMmY);
    let count = 0;
    for (let word = 0; word < words; word += 1) {
      let across = 0;
      for (let at = left * words + word, end = right * words + word; at <= end; at += words) across |= columns[at]!;
      let along = 0;
      for (let at = bottom * words + word, end = top * words + word; at <= end; at += words) along |= rows[at]!;
      for (let bits = across & along; bits !== 0; bits &= bits - 1) {
        into[count++] = 32 * word + 31 - Math.clz32(bits & -bits);
      }
    }
    return count;
  }
}

function bandOf(position: number): number {
  return position < 0 ? 0 : position >= bands ? bands - 1 : position | 0;
}
