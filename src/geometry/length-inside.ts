/** Stretches of outlines that run through the inside of a region. */

import { EdgeIndex } from './edge-index.ts';
import { boundsOf } from './measure.ts';
import type { Point, Region } from './types.ts';

export interface InsideStretch {
  /** In mm. */
  readonly length: number;
  /** The point halfway. */
  readonly middle: Point;
}

/** Every stretch of the outlines that is inside the region, in the order of the outlines. */
export function stretchesInside(lines: Region, region: Region): InsideStretch[] {
  const box = boundsOf(region);
  if (!box) return [];
  const edges = new EdgeIndex(region);
  return lines.flatMap((ring) => {
    const own = boundsOf([ring]);
    const isNear = own && own.minX < box.maxX && own.maxX > box.minX && own.minY < box.maxY && own.maxY > box.minY;
    return isNear ? insideRuns(ring, edges) : [];
  });
}

/** The stretches of one ring: followed round, each crossing of an edge leads in or out. */
function insideRuns(ring: readonly Point[], edges: EdgeIndex): InsideStretch[] {
  const runs: Point[][] = [];
  let isInside = edges.contains(ring[0]!);
  const startsInside = isInside;
  let run: Point[] | undefined = isInside ? [ring[0]!] : undefined;
  for (const [index, from] of ring.entries()) {
    const to = ring[(index + 1) % ring.length]!;
    for (const share of crossings(from, to, edges)) {
      const at = { x: from.x + share * (to.x - from.x), y: from.y + share * (to.y - from.y) };
      if (isInside) runs.push([...run!, at]);
      isInside = !isInside;
      run = isInside ? [at] : undefined;
    }
    run?.push(to);
  }
  if (run) {
    // The ring is closed, so if it began inside, the last run is the beginning of the first.
    const [first] = startsInside ? runs : [];
    if (first) runs[0] = [...run, ...first];
    else runs.push(run);
  }
  return runs.map(stretchAlong);
}

/** The crossings of an edge with those of the region, as shares of its length in ascending order. */
export function crossings(from: Point, to: Point, edges: EdgeIndex): number[] {
  const middle = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
  const reach = Math.max(Math.abs(to.x - from.x), Math.abs(to.y - from.y)) / 2;
  const shares: number[] = [];
  for (const [a, b] of edges.near(middle, reach)) {
    const [sideA, sideB] = [side(from, to, a), side(from, to, b)];
    // An edge counts without its end, so that a crossing at a corner is found once.
    if (sideA > 0 === sideB > 0) continue;
    const [sideFrom, sideTo] = [side(a, b, from), side(a, b, to)];
    if (sideFrom > 0 === sideTo > 0) continue;
    shares.push(sideFrom / (sideFrom - sideTo));
  }
  return shares.sort((p, q) => p - q);
}

/** Positive if the point is left of the line from a to b. */
function side(a: Point, b: Point, { x, y }: Point): number {
  return (b.x - a.x) * (y - a.y) - (b.y - a.y) * (x - a.x);
}

function stretchAlong(points: readonly Point[]): InsideStretch {
  const steps = points.slice(1).map((to, index) => Math.hypot(to.x - points[index]!.x, to.y - points[index]!.y));
  const length = steps.reduce((sum, step) => sum + step, 0);
  let left = length / 2;
  for (const [index, step] of steps.entries()) {
    if (step > 0 && left <= step) {
      const [from, to] = [points[index]!, points[index + 1]!];
      const share = left / step;
      return { length, middle: { x: from.x + share * (to.x - from.x), y: from.y + share * (to.y - from.y) } };
    }
    left -= step;
  }
  return { length, middle: points[0]! };
}
