/** Where a piece's number hides least of it on the picture of a sheet: on free material if there is any. Pure. */

import { transform, translation } from '../geometry/affine.ts';
import { boundsOf } from '../geometry/measure.ts';
import type { Bounds, Region } from '../geometry/types.ts';
import { lineAt, rowsOf } from '../tag/overlap/runs.ts';

export interface NumberPlace {
  /** The ground below the number. */
  readonly box: Bounds;
  /** Height of its font. */
  readonly size: number;
}

/** Smallest and largest height, in mm: legible with the whole sheet in view, without hiding a small piece. */
const numberMm = [1.5, 9] as const;
/** Sizes to try for free material, as shares of the wanted one; where there is none, the last but one. */
const shares = [1, 0.85, 0.7, 0.55] as const;
const shareThatCovers = 0.7;
/** What is marked is worth more than the edge of a piece. */
const markCost = 3;
/** Left free all round a number. */
const airMm = 0.5;
/** Squares along the longer side of a piece, and the least side of one in mm. */
const squares = 140;
const leastSquareMm = 0.3;

/** `solid`, `marks`: as they lie on the sheet; a number stands upright however its piece is turned. `undefined`: of nothing. */
export function numberPlace(solid: Region, marks: Region, text: string): NumberPlace | undefined {
  const box = boundsOf(solid);
  if (!box) return undefined;
  const [width, height] = [box.maxX - box.minX, box.maxY - box.minY];
  const wanted = Math.max(numberMm[0], Math.min(numberMm[1], 0.3 * Math.min(width, height)));
  const costs = new CostMap(box, solid, marks);
  const best = (share: number): NumberPlace & { readonly cost: number } => {
    const size = Math.max(numberMm[0], share * wanted);
    return { size, ...costs.cheapest((0.62 * text.length + 0.4) * size, 1.2 * size, airMm) };
  };
  const { box: place, size } = firstFree(best) ?? best(shareThatCovers);
  return { box: place, size };
}

function firstFree<T extends { readonly cost: number }>(best: (share: number) => T): T | undefined {
  for (const share of shares) {
    const found = best(share);
    if (found.cost === 0) return found;
  }
  return undefined;
}

/** What a box hides, wherever it is put: squares beside the material, and those with marks. */
class CostMap {
  readonly #box: Bounds;
  readonly #side: number;
  readonly #columns: number;
  readonly #rows: number;
  /** Of all squares below and to the left of a corner. */
  readonly #sums: Float64Array;
  /** From the middle of each square to what may not be hidden, in squares. */
  readonly #clear: Float64Array;

  constructor(box: Bounds, solid: Region, marks: Region) {
    this.#box = box;
    const [width, height] = [box.maxX - box.minX, box.maxY - box.minY];
    this.#side = Math.max(leastSquareMm, Math.max(width, height) / squares);
    this.#columns = Math.max(1, Math.ceil(width / this.#side));
    this.#rows = Math.max(1, Math.ceil(height / this.#side));
    const costs = new Uint8Array(this.#columns * this.#rows).fill(1);
    this.#eachWithin(solid, (cell) => (costs[cell] = 0));
    this.#eachWithin(marks, (cell) => (costs[cell] = markCost));
    const stride = this.#columns + 1;
    this.#sums = new Float64Array(stride * (this.#rows + 1));
    for (let row = 0; row < this.#rows; row++)
      for (let column = 0; column < this.#columns; column++) {
        const at = (row + 1) * stride + column + 1;
        const others = this.#sums[at - 1]! + this.#sums[at - stride]! - this.#sums[at - stride - 1]!;
        this.#sums[at] = costs[row * this.#columns + column]! + others;
      }
    this.#clear = this.#clearances(costs);
  }

  /** The box that hides least, with some air all round; of several, the one that is farthest from everything. */
  cheapest(width: number, height: number, air: number): { readonly box: Bounds; readonly cost: number } {
    const wide = Math.min(this.#columns, Math.ceil((width + 2 * air) / this.#side));
    const high = Math.min(this.#rows, Math.ceil((height + 2 * air) / this.#side));
    const stride = this.#columns + 1;
    let [cost, clear, left, bottom] = [Infinity, 0, 0, 0];
    for (let row = 0; row + high <= this.#rows; row++)
      for (let column = 0; column + wide <= this.#columns; column++) {
        const [low, top] = [row * stride + column, (row + high) * stride + column];
        const own = this.#sums[top + wide]! - this.#sums[top]! - this.#sums[low + wide]! + this.#sums[low]!;
        const room = this.#clear[(row + (high >> 1)) * this.#columns + column + (wide >> 1)]!;
        if (own < cost || (own === cost && room > clear)) [cost, clear, left, bottom] = [own, room, column, row];
      }
    const { minX, minY } = this.#box;
    const x = minX + (left + wide / 2) * this.#side;
    const y = minY + (bottom + high / 2) * this.#side;
    const around = { minX: x - width / 2, maxX: x + width / 2, minY: y - height / 2, maxY: y + height / 2 };
    return { box: around, cost };
  }

  /** By steps to the side and across, there and back. */
  #clearances(costs: Uint8Array): Float64Array {
    const [columns, rows] = [this.#columns, this.#rows];
    const clear = Float64Array.from(costs, (cost) => (cost === 0 ? Infinity : 0));
    const at = (column: number, row: number): number =>
      column < 0 || row < 0 || column >= columns || row >= rows ? 0 : clear[row * columns + column]!;
    const relax = (column: number, row: number, way: 1 | -1): void => {
      const cell = row * columns + column;
      clear[cell] = Math.min(
        clear[cell]!,
        at(column - way, row) + 1,
        at(column, row - way) + 1,
        at(column - way, row - way) + Math.SQRT2,
        at(column + way, row - way) + Math.SQRT2,
      );
    };
    for (let row = 0; row < rows; row++) for (let column = 0; column < columns; column++) relax(column, row, 1);
    for (let row = rows - 1; row >= 0; row--)
      for (let column = columns - 1; column >= 0; column--) relax(column, row, -1);
    return clear;
  }

  /** Squares whose middle lies in a region. */
  #eachWithin(region: Region, visit: (cell: number) => void): void {
    const { minX, minY } = this.#box;
    const rows = rowsOf(transform(region, translation(-minX, -minY)), this.#side);
    for (let row = 0; row < this.#rows; row++) {
      const runs = lineAt(rows, row);
      for (let at = 0; at < runs.length; at += 2) {
        const last = Math.min(this.#columns - 1, Math.floor(runs[at + 1]! / this.#side - 0.5));
        for (let column = Math.max(0, Math.ceil(runs[at]! / this.#side - 0.5)); column <= last; column++)
          visit(row * this.#columns + column);
      }
    }
  }
}
