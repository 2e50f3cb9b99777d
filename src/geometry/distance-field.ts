/**
 * Approximate distances of points to the outline of a region, inside or outside, from a grid: for thousands of queries
 * that need not be exact.
 */

import { boundsOf } from './measure.ts';
import type { Bounds, Region } from './types.ts';

/** Grid steps along the longer side of the region. */
const stepsAlong = 110;

/** Grid steps beyond the region's box on each side. */
const padSteps = 2;

export class DistanceField {
  /** Grid step, in mm. */
  readonly step: number;
  readonly box: Bounds;
  readonly #columns: number;
  readonly #rows: number;
  readonly #minX: number;
  readonly #minY: number;
  readonly #values: Float64Array;

  /** The region must have an area. */
  constructor(region: Region) {
    this.box = boundsOf(region)!;
    const { minX, minY, maxX, maxY } = this.box;
    this.step = Math.max(maxX - minX, maxY - minY) / stepsAlong;
    this.#minX = minX - padSteps * this.step;
    this.#minY = minY - padSteps * this.step;
    this.#columns = Math.ceil((maxX - minX) / this.step) + 2 * padSteps + 1;
    this.#rows = Math.ceil((maxY - minY) / this.step) + 2 * padSteps + 1;
    const edges = edgesOf(region);
    const nearest = this.#nearestEdges(edges);
    this.#values = this.#distances(edges, nearest);
  }

  /**
   * Distance to the outline in mm, positive inside. Between grid points it is off by a small share of a step, at
   * corners by a quarter of a step.
   */
  at(x: number, y: number): number {
    const { minX, minY, maxX, maxY } = this.box;
    const outX = x < minX ? minX - x : x > maxX ? x - maxX : 0;
    const outY = y < minY ? minY - y : y > maxY ? y - maxY : 0;
    if (outX > this.step || outY > this.step) return -Math.sqrt(outX * outX + outY * outY);
    const column = (x - this.#minX) / this.step;
    const row = (y - this.#minY) / this.step;
    const left = Math.floor(column);
    const below = Math.floor(row);
    const u = column - left;
    const v = row - below;
    const index = below * this.#columns + left;
    const values = this.#values;
    const lower = values[index]! * (1 - u) + values[index + 1]! * u;
    const upper = values[index + this.#columns]! * (1 - u) + values[index + this.#columns + 1]! * u;
    return lower * (1 - v) + upper * v;
  }

  /**
   * For each grid point, the nearest edge or one nearly as near: beside the outline it is searched for, and from there
   * passed on from point to point, in two sweeps over the grid (Danielsson 1980).
   */
  #nearestEdges(edges: Float64Array): Int32Array {
    const [columns, rows] = [this.#columns, this.#rows];
    const nearest = new Int32Array(columns * rows).fill(-1);
    const best = new Float64Array(columns * rows).fill(Infinity);
    const offer = (column: number, row: number, edge: number): void => {
      if (edge < 0 || column < 0 || row < 0 || column >= columns || row >= rows) return;
      const index = row * columns + column;
      if (nearest[index] === edge) return;
      const squared = squaredDistance(edges, edge, this.#minX + column * this.step, this.#minY + row * this.step);
      if (squared >= best[index]!) return;
      best[index] = squared;
      nearest[index] = edge;
    };
    for (let edge = 0; edge < edges.length / 4; edge++) {
      const [fromX, fromY, toX, toY] = edges.subarray(4 * edge, 4 * edge + 4) as unknown as number[];
      const pieces = Math.ceil((2 * Math.hypot(toX! - fromX!, toY! - fromY!)) / this.step) || 1;
      for (let piece = 0; piece <= pieces; piece++) {
        const column = Math.floor((fromX! + ((toX! - fromX!) * piece) / pieces - this.#minX) / this.step);
        const row = Math.floor((fromY! + ((toY! - fromY!) * piece) / pieces - this.#minY) / this.step);
        for (let i = 0; i < 4; i++) offer(column + (i & 1), row + (i >> 1), edge);
      }
    }
    for (let row = 0; row < rows; row++) {
      for (let column = 0; column < columns; column++) this.#handOn(nearest, offer, column, row, -1);
    }
    for (let row = rows - 1; row >= 0; row--) {
      for (let column = columns - 1; column >= 0; column--) this.#handOn(nearest, offer, column, row, 1);
    }
    return nearest;
  }

  /** Offers a point the edges of the four neighbours already visited, then passes its own back along the row. */
  #handOn(
    nearest: Int32Array,
    offer: (column: number, row: number, edge: number) => void,
    column: number,
    row: number,
    from: 1 | -1,
  ): void {
    const at = (x: number, y: number): number =>
      x < 0 || y < 0 || x >= this.#columns || y >= this.#rows ? -1 : nearest[y * this.#columns + x]!;
    offer(column, row, at(column + from, row));
    for (const beside of [-1, 0, 1]) offer(column, row, at(column + beside, row + from));
    offer(column + from, row, at(column, row));
  }

  #distances(edges: Float64Array, nearest: Int32Array): Float64Array {
    const values = new Float64Array(nearest.length);
    for (let row = 0; row < this.#rows; row++) {
      const y = this.#minY + row * this.step;
      const crossings = crossingsAt(edges, y);
      let passed = 0;
      for (let column = 0; column < this.#columns; column++) {
        const x = this.#minX + column * this.step;
        while (passed < crossings.length && crossings[passed]! <= x) passed++;
        const index = row * this.#columns + column;
        const distance = Math.sqrt(squaredDistance(edges, nearest[index]!, x, y));
        values[index] = passed % 2 === 1 ? distance : -distance;
      }
    }
    return values;
  }
}

/** Four numbers per edge: its start and its end. */
function edgesOf(region: Region): Float64Array {
  const edges = new Float64Array(4 * region.reduce((sum, ring) => sum + ring.length, 0));
  let at = 0;
  for (const ring of region) {
    let from = ring[ring.length - 1]!;
    for (const to of ring) {
      edges[at++] = from.x;
      edges[at++] = from.y;
      edges[at++] = to.x;
      edges[at++] = to.y;
      from = to;
    }
  }
  return edges;
}

function crossingsAt(edges: Float64Array, y: number): Float64Array {
  const found: number[] = [];
  for (let at = 0; at < edges.length; at += 4) {
    const [fromY, toY] = [edges[at + 1]!, edges[at + 3]!];
    if (fromY > y === toY > y) continue;
    found.push(edges[at]! + ((y - fromY) / (toY - fromY)) * (edges[at + 2]! - edges[at]!));
  }
  return Float64Array.from(found).sort();
}

function squaredDistance(edges: Float64Array, edge: number, x: number, y: number): number {
  const fromX = edges[4 * edge]!;
  const fromY = edges[4 * edge + 1]!;
  const alongX = edges[4 * edge + 2]! - fromX;
  const alongY = edges[4 * edge + 3]! - fromY;
  const length = alongX * alongX + alongY * alongY;
  const share = length === 0 ? 0 : ((x - fromX) * alongX + (y - fromY) * alongY) / length;
  const held = share < 0 ? 0 : share > 1 ? 1 : share;
  const dx = x - fromX - held * alongX;
  const dy = y - fromY - held * alongY;
  return dx * dx + dy * dy;
}
