/** The clearance between two outlines, and the length over which they are close. */

import { boundsOf, contains, distance, distanceToSegment } from '../../geometry/measure.ts';
import type { Bounds, Point, Region } from '../../geometry/types.ts';

type Edge = readonly [Point, Point];

/**
 * The least distance between the outlines of two regions in mm: 0 if they cross, `Infinity` if it is `reach` or more.
 * For a region inside the other without crossing it, the distance to the outline counts.
 */
export function clearance(a: Region, b: Region, reach: number): number {
  const [boxA, boxB] = [boundsOf(a), boundsOf(b)];
  if (!boxA || !boxB) return Infinity;
  const edgesOfB = edgesIn(b, boxA, reach);
  if (edgesOfB.length === 0) return Infinity;
  let least = reach;
  for (const edge of edgesIn(a, boxB, reach)) {
    for (const other of edgesOfB) {
      if (areApart(edge, other, least)) continue;
      if (doCross(edge, other)) return 0;
      least = Math.min(
        least,
        distanceToSegment(edge[0], ...other),
        distanceToSegment(edge[1], ...other),
        distanceToSegment(other[0], ...edge),
        distanceToSegment(other[1], ...edge),
      );
    }
  }
  return least < reach ? least : Infinity;
}

/** Length in mm of the outline of `a` that is inside `b` or nearer to it than `reach`, sampled every `step` mm. */
export function lengthNear(a: Region, b: Region, reach: number, step: number): number {
  const [boxA, boxB] = [boundsOf(a), boundsOf(b)];
  if (!boxA || !boxB) return 0;
  const edges = edgesIn(b, boxA, reach);
  if (edges.length === 0) return 0;
  let length = 0;
  for (const edge of edgesIn(a, boxB, reach)) {
    const [from, to] = edge;
    const whole = distance(to, from);
    const pieces = Math.ceil(whole / step);
    const facing = edges.filter((other) => !areApart(edge, other, reach));
    for (let i = 0; i < pieces; i++) {
      const t = (i + 0.5) / pieces;
      const at = { x: from.x + t * (to.x - from.x), y: from.y + t * (to.y - from.y) };
      const isNear = facing.some((other) => distanceToSegment(at, ...other) < reach);
      if (isNear || (isIn(boxB, at) && contains(b, at))) length += whole / pieces;
    }
  }
  return length;
}

function isIn({ minX, minY, maxX, maxY }: Bounds, { x, y }: Point): boolean {
  return x >= minX && x <= maxX && y >= minY && y <= maxY;
}

/** The edges whose own boxes are within `reach` of a box. */
function edgesIn(region: Region, box: Bounds, reach: number): Edge[] {
  const edges: Edge[] = [];
  for (const ring of region) {
    let from = ring[ring.length - 1]!;
    for (const to of ring) {
      if (
        Math.max(from.x, to.x) > box.minX - reach &&
        Math.min(from.x, to.x) < box.maxX + reach &&
        Math.max(from.y, to.y) > box.minY - reach &&
        Math.min(from.y, to.y) < box.maxY + reach
      )
        edges.push([from, to]);
      from = to;
    }
  }
  return edges;
}

function areApart([a, b]: Edge, [c, d]: Edge, reach: number): boolean {
  return (
    Math.min(a.x, b.x) - Math.max(c.x, d.x) > reach ||
    Math.min(c.x, d.x) - Math.max(a.x, b.x) > reach ||
    Math.min(a.y, b.y) - Math.max(c.y, d.y) > reach ||
    Math.min(c.y, d.y) - Math.max(a.y, b.y) > reach
  );
}

function doCross([a, b]: Edge, [c, d]: Edge): boolean {
  return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
}

function side(from: Point, to: Point, { x, y }: Point): number {
  return (to.x - from.x) * (y - from.y) - (to.y - from.y) * (x - from.x);
}
