/**
 * Penetration depth of two parts and the shortest way out: the distance from a position to the boundary of the no-fit
 * polygon.
 *
 * A grid over the no-fit polygon is filled on demand. Each cell knows either that all of it is outside, or which
 * stretches of the boundary may be nearest to a point in it, so that a query visits only a few; it also knows the depth
 * at its centre, for approximate answers.
 */

import type { Boundary } from './no-fit-boundary.ts';

const cells = 24;

/** Contents of a cell: not yet known, or outside; otherwise twice the place of its list, and one more if it is crossed. */
const unknown = 0;
const outside = -1;

/** Way out for the last exact query, in mm, and the number of stretches visited since `work` was last set to 0. */
export const last = { exitX: 0, exitY: 0, work: 0 };

/** Distance of the nearest stretch. */
const near = { distance: 0 };

export class PenetrationField {
  /** Bounding box of the no-fit polygon. */
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
  readonly #cellsPerMmX: number;
  readonly #cellsPerMmY: number;
  /** For each stretch: its start, its vector, and the inverse of its squared length. */
  readonly #edges: Float64Array;
  readonly #all: Uint16Array;
  readonly #cells = new Int32Array(cells * cells);
  readonly #depths = new Float32Array(cells * cells);
  /** For each filled cell: the number of stretches, and their indices. */
  #lists = new Uint16Array(256);
  #used = 1;

  /** The boundary closed, its stretches as x, y, x, y with the overlap on their left; `work` that finding it took. */
  constructor({ boundary, work }: { readonly boundary: Boundary; readonly work: number }) {
    last.work += 2 * work;
    const count = boundary.length / 4;
    this.#edges = new Float64Array(5 * count);
    let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
    for (let i = 0; i < count; i += 1) {
      const [x, y, tx, ty] = boundary.subarray(4 * i, 4 * i + 4) as unknown as [number, number, number, number];
      this.#edges.set([x, y, tx - x, ty - y, 1 / ((tx - x) ** 2 + (ty - y) ** 2)], 5 * i);
      [minX, minY, maxX, maxY] = [Math.min(minX, x), Math.min(minY, y), Math.max(maxX, x), Math.max(maxY, y)];
    }
    [this.minX, this.minY, this.maxX, this.maxY] = [minX, minY, maxX, maxY];
    this.#all = Uint16Array.from({ length: count }, (_, i) => i);
    this.#cellsPerMmX = cells / (maxX - minX);
    this.#cellsPerMmY = cells / (maxY - minY);
  }

  /** Approximate depth in mm, to within a cell. */
  roughDepth(x: number, y: number): number {
    last.work += 1;
    if (!(x > this.minX && x < this.maxX && y > this.minY && y < this.maxY)) return 0;
    const cell = this.#cellAt(x, y);
    if (this.#cells[cell] === unknown) this.#fill(cell);
    return this.#depths[cell]!;
  }

  /** Exact depth in mm; the way out is in `last`. */
  depth(x: number, y: number): number {
    last.work += 1;
    if (!(x > this.minX && x < this.maxX && y > this.minY && y < this.maxY)) return 0;
    const cell = this.#cellAt(x, y);
    let content = this.#cells[cell]!;
    if (content === unknown) content = this.#fill(cell);
    if (content === outside) return 0;
    const start = content >> 1;
    const isInside = this.#nearest(x, y, this.#lists, start + 1, this.#lists[start]!);
    return isInside || (content & 1) === 0 ? near.distance : 0;
  }

  #cellAt(x: number, y: number): number {
    const column = Math.min(cells - 1, ((x - this.minX) * this.#cellsPerMmX) | 0);
    const row = Math.min(cells - 1, ((y - this.minY) * this.#cellsPerMmY) | 0);
    return row * cells + column;
  }

  /** Writes the way to the nearest of some stretches into `last`; returns whether it is the way out. */
  #nearest(x: number, y: number, list: Uint16Array, from: number, count: number): boolean {
    const edges = this.#edges;
    last.work += count;
    let least = Infinity;
    let exitX = 0;
    let exitY = 0;
    let side = 1;
    let sideSquare = -1;
    for (let k = from, end = from + count; k < end; k += 1) {
      const at = 5 * list[k]!;
      const dx = x - edges[at]!;
      const dy = y - edges[at + 1]!;
      const ex = edges[at + 2]!;
      const ey = edges[at + 3]!;
      let t = (dx * ex + dy * ey) * edges[at + 4]!;
      t = t < 0 ? 0 : t > 1 ? 1 : t;
      const wayX = t * ex - dx;
      const wayY = t * ey - dy;
      const square = wayX * wayX + wayY * wayY;
      if (square > least + 1e-7 * least + 1e-20) continue;
      // Where two stretches meet, both are equally near; the side is decided by the one whose line is further away.
      const cross = ex * dy - ey * dx;
      const crossSquare = cross * cross * edges[at + 4]!;
      if (square < least - 1e-7 * least - 1e-20 || crossSquare > sideSquare) {
        side = cross;
        sideSquare = crossSquare;
      }
      if (square < least) {
        least = square;
        exitX = wayX;
        exitY = wayY;
      }
    }
    last.exitX = exitX;
    last.exitY = exitY;
    near.distance = Math.sqrt(least);
    return side > 0;
  }

  /** Returns the cell's content. */
  #fill(cell: number): number {
    const column = cell % cells;
    const row = (cell - column) / cells;
    const x = this.minX + (column + 0.5) / this.#cellsPerMmX;
    const y = this.minY + (row + 0.5) / this.#cellsPerMmY;
    const reach = Math.hypot(1 / this.#cellsPerMmX, 1 / this.#cellsPerMmY) / 2;
    const count = this.#all.length;
    const isInside = this.#nearest(x, y, this.#all, 0, count);
    const away = near.distance;
    const isCrossed = away <= reach;
    this.#depths[cell] = isInside ? Math.max(away, reach / 4) : isCrossed ? reach / 8 : 0;
    if (!isCrossed && !isInside) return (this.#cells[cell] = outside);
    if (this.#used + count + 1 > this.#lists.length) {
      const longer = new Uint16Array(2 * this.#lists.length + count);
      longer.set(this.#lists);
      this.#lists = longer;
    }
    const start = this.#used;
    const limit = (away + 2 * reach) ** 2;
    let end = start + 1;
    for (let i = 0; i < count; i += 1) if (this.#squareTo(5 * i, x, y) <= limit) this.#lists[end++] = i;
    this.#lists[start] = end - start - 1;
    this.#used = end;
    return (this.#cells[cell] = 2 * start + (isCrossed ? 1 : 0));
  }

  #squareTo(at: number, x: number, y: number): number {
    const edges = this.#edges;
    const dx = x - edges[at]!;
    const dy = y - edges[at + 1]!;
    const t = Math.min(1, Math.max(0, (dx * edges[at + 2]! + dy * edges[at + 3]!) * edges[at + 4]!));
    return (dx - t * edges[at + 2]!) ** 2 + (dy - t * edges[at + 3]!) ** 2;
  }
}
