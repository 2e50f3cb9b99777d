/** A map of a sheet as squares that are free or taken, for finding room on it. */

import type { Bounds, Point, Region } from '../../geometry/types.ts';

/** Side of a square, in mm on paper. */
const cellMm = 0.2;

export class MapGrid {
  readonly #area: Bounds;
  readonly #columns: number;
  readonly #rows: number;
  readonly #taken: Uint8Array;
  /** For each square the region that it is nearest to, from 1. */
  readonly #nearest: Uint16Array;
  readonly #regions: readonly (readonly number[])[];

  constructor(area: Bounds, regions: readonly Region[]) {
    this.#area = area;
    this.#columns = Math.ceil((area.maxX - area.minX) / cellMm);
    this.#rows = Math.ceil((area.maxY - area.minY) / cellMm);
    this.#taken = new Uint8Array(this.#columns * this.#rows);
    this.#nearest = new Uint16Array(this.#columns * this.#rows);
    this.#regions = regions.map((region) => this.#cellsOf(region));
    let front: number[] = [];
    for (const [index, cells] of this.#regions.entries())
      for (const cell of cells) {
        this.#taken[cell] = 1;
        this.#nearest[cell] = index + 1;
        front.push(cell);
      }
    while (front.length > 0) {
      const next: number[] = [];
      for (const cell of front)
        for (const beside of this.#beside(cell))
          if (this.#nearest[beside] === 0) {
            this.#nearest[beside] = this.#nearest[cell]!;
            next.push(beside);
          }
      front = next;
    }
  }

  takeBox(box: Bounds): void {
    this.#everyCell(box, (cell) => {
      if (cell !== undefined) this.#taken[cell] = 1;
      return true;
    });
  }

  /** Whether a box lies on a region, by its index, clear of the marks on it. */
  isWithin(box: Bounds, region: number, marks: Region): boolean {
    const inside = new Set(this.#regions[region]);
    for (const cell of this.#cellsOf(marks)) inside.delete(cell);
    return this.#everyCell(box, (cell) => cell !== undefined && inside.has(cell));
  }

  /**
   * The place nearest to a region where a box of a size is free, and the point of the region that it is nearest to.
   * `own`: all of the box is nearer to this region than to any other. Otherwise the way there may lead over others.
   */
  nearestFree(
    region: number,
    size: { readonly width: number; readonly height: number },
    { reachMm, own: isOwn }: { readonly reachMm: number; readonly own: boolean },
  ): { readonly at: Point; readonly from: Point } | undefined {
    const own = this.#regions[region]!;
    const isFree = (cell: number | undefined): boolean =>
      cell !== undefined && this.#taken[cell] === 0 && (!isOwn || this.#nearest[cell] === region + 1);
    // Breadth first from the edge outwards; `start` leads back to the square of the region, -1 is not yet visited.
    const start = new Int32Array(this.#taken.length).fill(-1);
    for (const cell of own) start[cell] = cell;
    let front: readonly number[] = own;
    for (let step = 0; step * cellMm < reachMm && front.length > 0; step++) {
      const next: number[] = [];
      let best: { readonly cell: number; readonly far: number } | undefined;
      for (const cell of front) {
        if (isFree(cell) && this.#everyCell(this.#boxAround(cell, size), isFree)) {
          const far = this.#distance(cell, start[cell]!);
          if (!best || far < best.far) best = { cell, far };
        }
        for (const beside of this.#beside(cell))
          if (start[beside] === -1 && (!isOwn || this.#nearest[beside] === region + 1)) {
            start[beside] = start[cell]!;
            next.push(beside);
          }
      }
      if (best) return { at: this.#pointOf(best.cell), from: this.#pointOf(start[best.cell]!) };
      front = next;
    }
    return undefined;
  }

  #boxAround(cell: number, { width, height }: { readonly width: number; readonly height: number }): Bounds {
    const { x, y } = this.#pointOf(cell);
    return { minX: x - width / 2, minY: y - height / 2, maxX: x + width / 2, maxY: y + height / 2 };
  }

  #distance(a: number, b: number): number {
    const [p, q] = [this.#pointOf(a), this.#pointOf(b)];
    return Math.hypot(p.x - q.x, p.y - q.y);
  }

  #pointOf(cell: number): Point {
    const [column, row] = [cell % this.#columns, Math.floor(cell / this.#columns)];
    return { x: this.#area.minX + (column + 0.5) * cellMm, y: this.#area.minY + (row + 0.5) * cellMm };
  }

  #beside(cell: number): number[] {
    const column = cell % this.#columns;
    return [
      ...(column > 0 ? [cell - 1] : []),
      ...(column < this.#columns - 1 ? [cell + 1] : []),
      ...(cell >= this.#columns ? [cell - this.#columns] : []),
      ...(cell < this.#taken.length - this.#columns ? [cell + this.#columns] : []),
    ];
  }

  /** Whether something is true of all squares that a box touches; `undefined` for those beyond the area. */
  #everyCell({ minX, minY, maxX, maxY }: Bounds, isSo: (cell: number | undefined) => boolean): boolean {
    const { minX: left, minY: bottom } = this.#area;
    for (let row = Math.floor((minY - bottom) / cellMm); row * cellMm < maxY - bottom; row++)
      for (let column = Math.floor((minX - left) / cellMm); column * cellMm < maxX - left; column++) {
        const isInside = row >= 0 && row < this.#rows && column >= 0 && column < this.#columns;
        if (!isSo(isInside ? row * this.#columns + column : undefined)) return false;
      }
    return true;
  }

  /** Squares whose middle lies in a region, by the even-odd rule, and those that its edges go through. */
  #cellsOf(region: Region): number[] {
    const cells = new Set<number>();
    const crossings = new Map<number, number[]>();
    const { minX: left, minY: bottom } = this.#area;
    for (const ring of region) {
      const points = thinned(ring).map(({ x, y }): Point => ({ x: (x - left) / cellMm, y: (y - bottom) / cellMm }));
      for (const [index, a] of points.entries()) {
        const b = points[(index + 1) % points.length]!;
        for (let row = Math.ceil(Math.min(a.y, b.y) - 0.5); row + 0.5 < Math.max(a.y, b.y); row++) {
          const x = a.x + ((row + 0.5 - a.y) / (b.y - a.y)) * (b.x - a.x);
          const found = crossings.get(row);
          if (found) found.push(x);
          else crossings.set(row, [x]);
        }
        const steps = Math.ceil(2 * Math.hypot(b.x - a.x, b.y - a.y));
        for (let step = 0; step < steps; step++)
          this.#add(cells, a.x + (step / steps) * (b.x - a.x), a.y + (step / steps) * (b.y - a.y));
      }
    }
    for (const [row, found] of crossings) {
      found.sort((a, b) => a - b);
      for (let at = 0; at + 1 < found.length; at += 2)
        for (let column = Math.ceil(found[at]! - 0.5); column + 0.5 <= found[at + 1]!; column++)
          this.#add(cells, column, row);
    }
    return [...cells];
  }

  #add(cells: Set<number>, x: number, y: number): void {
    const [column, row] = [Math.floor(x), Math.floor(y)];
    if (column >= 0 && column < this.#columns && row >= 0 && row < this.#rows) cells.add(row * this.#columns + column);
  }
}

/** Without points nearer to the one before than half a square: outlines have hundreds in a square. */
function thinned(ring: readonly Point[]): Point[] {
  const kept: Point[] = [];
  for (const point of ring) {
    const last = kept.at(-1);
    if (!last || Math.hypot(point.x - last.x, point.y - last.y) >= cellMm / 2) kept.push(point);
  }
  return kept;
}
