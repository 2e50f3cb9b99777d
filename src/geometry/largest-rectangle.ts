/** The largest upright rectangle within a region, to within a grid. */

import { difference, offset } from './clipper.ts';
import { area, boundsOf, boxRing } from './measure.ts';
import type { Bounds, Region } from './types.ts';

/** Most cells of the grid along the longer side of the region's box. */
const mostCells = 600;

/** Smallest cell, in mm: anything finer makes no difference on a sheet of wood. */
const leastCellMm = 0.5;

/**
 * A rectangle wholly within the region, its sides moved out to nearby corners of the region; otherwise at most two
 * cells short of the largest on each side. A cell is a six-hundredth of the region's longer side and at least half a
 * millimetre. Of equal rectangles the lowest wins, then the leftmost; `undefined` if no cell fits. Found row by row
 * from the number of free cells stacked above each other (largest rectangle in a histogram, with a stack).
 */
export function largestRectangle(region: Region): Bounds | undefined {
  const box = boundsOf(region);
  if (!box) return undefined;
  const cell = Math.max(leastCellMm, Math.max(box.maxX - box.minX, box.maxY - box.minY) / mostCells);
  const columns = Math.floor((box.maxX - box.minX) / cell + 1e-6);
  const rows = Math.floor((box.maxY - box.minY) / cell + 1e-6);
  // A cell is free if its middle is at least half its diagonal away from every edge.
  const inner = offset(region, (-Math.SQRT2 * cell) / 2 + 1e-4);
  const heights = Array.from({ length: columns }, () => 0);
  let best: { area: number; bounds: Bounds } | undefined;
  for (let row = 0; row < rows; row++) {
    const free = freeAlong(inner, box.minY + (row + 0.5) * cell, box.minX, cell, columns);
    for (let column = 0; column < columns; column++) heights[column] = free[column] ? heights[column]! + 1 : 0;
    const found = largestSpan(heights);
    if (!found || (best && found.area <= best.area)) continue;
    const top = box.minY + (row + 1) * cell;
    const [minX, maxX] = [box.minX + found.from * cell, box.minX + found.to * cell];
    best = { area: found.area, bounds: { minX, minY: top - found.height * cell, maxX, maxY: top } };
  }
  return best && outToCorners(best.bounds, region, 2 * cell);
}

/** Moves each side in turn to the furthest corner within `reach` that keeps the rectangle within the region. */
function outToCorners(found: Bounds, region: Region, reach: number): Bounds {
  const points = region.flat();
  let bounds = found;
  for (const side of ['minX', 'maxX', 'minY', 'maxY'] as const) {
    const outward = side.startsWith('min') ? -1 : 1;
    const lines = new Set(points.map(({ x, y }) => (side.endsWith('X') ? x : y)));
    const near = [...lines].filter(
      (line) => (line - bounds[side]) * outward > 0 && Math.abs(line - bounds[side]) <= reach,
    );
    near.sort((a, b) => (b - a) * outward);
    const line = near.find((each) => isWithin({ ...bounds, [side]: each }, region));
    if (line !== undefined) bounds = { ...bounds, [side]: line };
  }
  return bounds;
}

/** Whether the rectangle lies within the region; less than a thousandth of a square millimetre outside is rounding. */
function isWithin(rectangle: Bounds, region: Region): boolean {
  return area(difference([boxRing(rectangle)], [region])) < 1e-3;
}

/** Whether the middle of each cell of a row lies in the region. */
function freeAlong(region: Region, y: number, minX: number, cell: number, columns: number): boolean[] {
  const crossings: number[] = [];
  for (const ring of region) {
    let previous = ring.at(-1)!;
    for (const point of ring) {
      if (previous.y > y !== point.y > y)
        crossings.push(previous.x + ((y - previous.y) / (point.y - previous.y)) * (point.x - previous.x));
      previous = point;
    }
  }
  crossings.sort((a, b) => a - b);
  const free = Array.from({ length: columns }, () => false);
  for (let i = 0; i + 1 < crossings.length; i += 2) {
    const first = Math.max(0, Math.ceil((crossings[i]! - minX) / cell - 0.5));
    const last = Math.min(columns - 1, Math.floor((crossings[i + 1]! - minX) / cell - 0.5));
    for (let column = first; column <= last; column++) free[column] = true;
  }
  return free;
}

interface Span {
  readonly area: number;
  readonly height: number;
  /** Columns; the end is exclusive. */
  readonly from: number;
  readonly to: number;
}

function largestSpan(heights: readonly number[]): Span | undefined {
  let best: Span | undefined;
  const open: { from: number; height: number }[] = [];
  for (let column = 0; column <= heights.length; column++) {
    const height = heights[column] ?? 0;
    let from = column;
    for (let last = open.at(-1); last && last.height >= height; last = open.at(-1)) {
      open.pop();
      from = last.from;
      const area = last.height * (column - last.from);
      if (area > (best?.area ?? 0)) best = { area, height: last.height, from: last.from, to: column };
    }
    if (height > 0) open.push({ from, height });
  }
  return best;
}
