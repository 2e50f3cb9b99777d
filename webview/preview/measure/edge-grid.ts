/** Grid index of outlines: finds what a box touches without visiting every edge. Pure; any one unit of length. */

import type { Rings } from '../scene/outline-points.ts';
import type { Box, XY } from '../../common/camera/viewport.ts';

/** Cells along each side: with a few thousand edges, a handful fall into each. */
const cellsAlong = 48;

export class EdgeGrid {
  /** x and y of both ends of each edge, in sequence. */
  private readonly edges: Float64Array;
  private readonly cells: number[][] = [];
  /** Edges in each row of cells, each once. */
  private readonly rows: number[][] = [];
  private readonly box: Box;
  private readonly cell: XY;

  constructor(rings: Rings) {
    this.edges = edgesOf(rings);
    this.box = boundsOfEdges(this.edges);
    const [minX, minY, maxX, maxY] = this.box;
    this.cell = [Math.max(maxX - minX, 1e-9) / cellsAlong, Math.max(maxY - minY, 1e-9) / cellsAlong];
    for (let edge = 0; edge < this.edges.length; edge += 4) this.sortIn(edge);
  }

  /** Whether an edge crosses the box, or lies within it. */
  meets(box: Box): boolean {
    if (!overlap(box, this.box)) return false;
    const { edges } = this;
    const [left, right] = [this.column(box[0]), this.column(box[2])];
    const bottom = this.row(box[3]);
    for (let row = this.row(box[1]); row <= bottom; row++) {
      for (let column = left; column <= right; column++) {
        for (const edge of this.cells[row * cellsAlong + column] ?? []) {
          if (runsThrough(edges[edge]!, edges[edge + 1]!, edges[edge + 2]!, edges[edge + 3]!, box)) return true;
        }
      }
    }
    return false;
  }

  /** Whether the point is inside, by the even-odd rule. */
  encloses([x, y]: XY): boolean {
    if (!overlap([x, y, x, y], this.box)) return false;
    const { edges } = this;
    let isInside = false;
    for (const edge of this.rows[this.row(y)] ?? []) {
      const [ay, by] = [edges[edge + 1]!, edges[edge + 3]!];
      if (ay > y === by > y) continue;
      const ax = edges[edge]!;
      if (x < ax + ((y - ay) / (by - ay)) * (edges[edge + 2]! - ax)) isInside = !isInside;
    }
    return isInside;
  }

  private sortIn(edge: number): void {
    const { edges } = this;
    const [ax, ay, bx, by] = [edges[edge]!, edges[edge + 1]!, edges[edge + 2]!, edges[edge + 3]!];
    const [left, right] = [this.column(Math.min(ax, bx)), this.column(Math.max(ax, bx))];
    const bottom = this.row(Math.max(ay, by));
    for (let row = this.row(Math.min(ay, by)); row <= bottom; row++) {
      (this.rows[row] ??= []).push(edge);
      for (let column = left; column <= right; column++) (this.cells[row * cellsAlong + column] ??= []).push(edge);
    }
  }

  private column(x: number): number {
    return Math.min(Math.max(Math.floor((x - this.box[0]) / this.cell[0]), 0), cellsAlong - 1);
  }

  private row(y: number): number {
    return Math.min(Math.max(Math.floor((y - this.box[1]) / this.cell[1]), 0), cellsAlong - 1);
  }
}

/** Whether the line between two points meets the box. */
export function crosses([ax, ay]: XY, [bx, by]: XY, box: Box): boolean {
  return runsThrough(ax, ay, bx, by, box);
}

export function overlap(a: Box, b: Box): boolean {
  return a[0] <= b[2] && b[0] <= a[2] && a[1] <= b[3] && b[1] <= a[3];
}

/** True if the boxes overlap and the corners of `box` are not all on one side of the line. */
function runsThrough(ax: number, ay: number, bx: number, by: number, [minX, minY, maxX, maxY]: Box): boolean {
  if ((ax < minX && bx < minX) || (ax > maxX && bx > maxX)) return false;
  if ((ay < minY && by < minY) || (ay > maxY && by > maxY)) return false;
  const [dx, dy] = [bx - ax, by - ay];
  const topLeft = dx * (minY - ay) - dy * (minX - ax);
  const topRight = dx * (minY - ay) - dy * (maxX - ax);
  const bottomRight = dx * (maxY - ay) - dy * (maxX - ax);
  const bottomLeft = dx * (maxY - ay) - dy * (minX - ax);
  const least = Math.min(topLeft, topRight, bottomRight, bottomLeft);
  const most = Math.max(topLeft, topRight, bottomRight, bottomLeft);
  return least <= 0 && most >= 0;
}

function edgesOf(rings: Rings): Float64Array {
  const edges = new Float64Array(4 * rings.reduce((sum, ring) => sum + ring.length, 0));
  let at = 0;
  for (const ring of rings) {
    let from = ring.at(-1);
    for (const to of ring) {
      edges[at++] = from![0];
      edges[at++] = from![1];
      edges[at++] = to[0];
      edges[at++] = to[1];
      from = to;
    }
  }
  return edges;
}

/** Bounds of all edges; without edges, a box that meets nothing. */
function boundsOfEdges(edges: Float64Array): Box {
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  for (let at = 0; at < edges.length; at += 2) {
    const [x, y] = [edges[at]!, edges[at + 1]!];
    if (x < minX) minX = x;
    if (x > maxX) maxX = x;
    if (y < minY) minY = y;
    if (y > maxY) maxY = y;
  }
  return [minX, minY, maxX, maxY];
}
