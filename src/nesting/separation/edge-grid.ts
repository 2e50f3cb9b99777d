/** Spatial index of the edges of a convolution: cells to find crossing edges, bands to compute winding numbers. */

/** Target number of edges in a band and in a cell. */
const edgesPerBand = 6;
const edgesPerCell = 2;
const maxBands = 256;
const maxAcross = 64;

/** Amount by which boxes are enlarged beyond their edges, in mm. */
const roundingMm = 2e-7;

export class EdgeGrid {
  /** x, y, x, y of each edge, and what it adds to the winding number on its left. */
  ends = new Float64Array(4096);
  signs = new Int8Array(1024);
  count = 0;
  #minX = 0;
  #minY = 0;
  #bands = 1;
  #bandsPerMm = 0;
  #bandStarts = new Int32Array(maxBands + 1);
  #bandEdges = new Int32Array(4096);
  #across = 1;
  #cellsPerMmX = 0;
  #cellsPerMmY = 0;
  readonly #cellStarts = new Int32Array(maxAcross * maxAcross + 1);
  #cellEdges = new Int32Array(4096);
  #seen = new Int32Array(1024);
  #met = new Int32Array(1024);

  reserve(count: number): void {
    if (4 * count > this.ends.length) {
      this.ends = new Float64Array(8 * count);
      this.signs = new Int8Array(2 * count);
      this.#seen = new Int32Array(2 * count);
      this.#met = new Int32Array(2 * count);
    }
    this.count = count;
  }

  /** Call after writing `ends` and `signs`. */
  sort(): void {
    const { ends, count } = this;
    let minX = Infinity;
    let minY = Infinity;
    let maxX = -Infinity;
    let maxY = -Infinity;
    for (let at = 0; at < 4 * count; at += 4) {
      minX = Math.min(minX, ends[at]!);
      maxX = Math.max(maxX, ends[at]!);
      minY = Math.min(minY, ends[at + 1]!);
      maxY = Math.max(maxY, ends[at + 1]!);
    }
    this.#minX = minX;
    this.#minY = minY;
    this.#bands = Math.min(maxBands, Math.ceil(count / edgesPerBand));
    this.#bandsPerMm = this.#bands / (maxY - minY);
    this.#across = Math.max(1, Math.min(maxAcross, Math.floor(Math.sqrt(count / edgesPerCell))));
    this.#cellsPerMmX = this.#across / (maxX - minX);
    this.#cellsPerMmY = this.#across / (maxY - minY);
    this.#seen.fill(-1, 0, count);
    this.#sortBands();
    this.#sortCells();
  }

  #sortBands(): void {
    const { ends, count } = this;
    const starts = this.#bandStarts.fill(0, 0, this.#bands + 1);
    for (let round = 0; round < 2; round += 1) {
      for (let i = 0; i < count; i += 1) {
        const a = ends[4 * i + 1]!;
        const b = ends[4 * i + 3]!;
        const to = this.#bandOf((a < b ? b : a) + roundingMm);
        for (let band = this.#bandOf((a < b ? a : b) - roundingMm); band <= to; band += 1) {
          if (round === 0) starts[band + 1]! += 1;
          else this.#bandEdges[starts[band]!++] = i;
        }
      }
      if (round === 0) {
        for (let band = 0; band < this.#bands; band += 1) starts[band + 1]! += starts[band]!;
        if (starts[this.#bands]! > this.#bandEdges.length) this.#bandEdges = new Int32Array(2 * starts[this.#bands]!);
      }
    }
    starts.copyWithin(1, 0, this.#bands);
    starts[0] = 0;
  }

  #sortCells(): void {
    const { count } = this;
    const across = this.#across;
    const starts = this.#cellStarts.fill(0, 0, across * across + 1);
    for (let round = 0; round < 2; round += 1) {
      for (let i = 0; i < count; i += 1) {
        this.#box(i);
        for (let row = box.fromRow; row <= box.toRow; row += 1) {
          for (let cell = row * across + box.fromColumn; cell <= row * across + box.toColumn; cell += 1) {
            if (round === 0) starts[cell + 1]! += 1;
            else this.#cellEdges[starts[cell]!++] = i;
          }
        }
      }
      if (round === 0) {
        for (let cell = 0; cell < across * across; cell += 1) starts[cell + 1]! += starts[cell]!;
        const all = starts[across * across]!;
        if (all > this.#cellEdges.length) this.#cellEdges = new Int32Array(2 * all);
      }
    }
    starts.copyWithin(1, 0, across * across);
    starts[0] = 0;
  }

  #bandOf(y: number): number {
    const band = Math.floor((y - this.#minY) * this.#bandsPerMm);
    return band < 0 ? 0 : band >= this.#bands ? this.#bands - 1 : band;
  }

  /** Writes the cells touched by the box of an edge into `box`. */
  #box(i: number): void {
    const { ends } = this;
    const ax = ends[4 * i]!;
    const ay = ends[4 * i + 1]!;
    const bx = ends[4 * i + 2]!;
    const by = ends[4 * i + 3]!;
    const most = this.#across - 1;
    box.fromColumn = Math.max(
      0,
      Math.min(most, Math.floor(((ax < bx ? ax : bx) - roundingMm - this.#minX) * this.#cellsPerMmX)),
    );
    box.toColumn = Math.max(
      0,
      Math.min(most, Math.floor(((ax < bx ? bx : ax) + roundingMm - this.#minX) * this.#cellsPerMmX)),
    );
    box.fromRow = Math.max(
      0,
      Math.min(most, Math.floor(((ay < by ? ay : by) - roundingMm - this.#minY) * this.#cellsPerMmY)),
    );
    box.toRow = Math.max(
      0,
      Math.min(most, Math.floor(((ay < by ? by : ay) + roundingMm - this.#minY) * this.#cellsPerMmY)),
    );
  }

  /** Writes the edges whose boxes come near that of an edge into `into`, each once; returns their number. */
  near(i: number, into: Int32Array): number {
    this.#box(i);
    const across = this.#across;
    const starts = this.#cellStarts;
    const edges = this.#cellEdges;
    const seen = this.#seen;
    let count = 0;
    seen[i] = i;
    for (let row = box.fromRow; row <= box.toRow; row += 1) {
      for (
        let k = starts[row * across + box.fromColumn]!, to = starts[row * across + box.toColumn + 1]!;
        k < to;
        k += 1
      ) {
        const other = edges[k]!;
        if (seen[other] === i) continue;
        seen[other] = i;
        into[count++] = other;
      }
    }
    return count;
  }

  /** Like `near`, into an array that is reused by the next call. */
  nearTo(i: number): { readonly edges: Int32Array; readonly count: number } {
    return { edges: this.#met, count: this.near(i, this.#met) };
  }

  /** Winding number of the edges around a point: those to its right, upward minus downward. */
  windingAt(x: number, y: number): number {
    const { ends, signs } = this;
    const edges = this.#bandEdges;
    const band = this.#bandOf(y);
    let winding = 0;
    for (let k = this.#bandStarts[band]!, to = this.#bandStarts[band + 1]!; k < to; k += 1) {
      const i = edges[k]!;
      const ay = ends[4 * i + 1]!;
      const by = ends[4 * i + 3]!;
      const isUp = ay <= y;
      if (isUp === by <= y) continue;
      const ax = ends[4 * i]!;
      if (ax + ((y - ay) / (by - ay)) * (ends[4 * i + 2]! - ax) > x) winding += isUp ? signs[i]! : -signs[i]!;
    }
    return winding;
  }
}

const box = { fromColumn: 0, toColumn: 0, fromRow: 0, toRow: 0 };
