/** Areas, lengths, boxes and centres of regions. */

import type { Bounds, Line, Point, Region, Ring } from './types.ts';

/** Signed area in mm², positive if the ring runs counter-clockwise (the shoelace formula). */
export function ringArea(ring: Ring): number {
  let twice = 0;
  let previous = ring[ring.length - 1];
  for (const point of ring) {
    twice += previous!.x * point.y - point.x * previous!.y;
    previous = point;
  }
  return twice / 2;
}

/** Area in mm², without the holes. */
export function area(region: Region): number {
  return region.reduce((sum, ring) => sum + ringArea(ring), 0);
}

/** Length of all outlines in mm, holes included. */
export function perimeter(region: Region): number {
  let sum = 0;
  for (const ring of region) {
    let previous = ring[ring.length - 1];
    for (const point of ring) {
      const [x, y] = [point.x - previous!.x, point.y - previous!.y];
      // A third of the time that Math.hypot takes, which guards against sizes that no tag has.
      sum += Math.sqrt(x * x + y * y);
      previous = point;
    }
  }
  return sum;
}

/** The smallest axis-parallel box round all rings; `undefined` for an empty region. */
export function boundsOf(region: Region): Bounds | undefined {
  let minX = Infinity;
  let minY = Infinity;
  let maxX = -Infinity;
  let maxY = -Infinity;
  for (const ring of region) {
    for (const { x, y } of ring) {
      if (x < minX) minX = x;
      if (x > maxX) maxX = x;
      if (y < minY) minY = y;
      if (y > maxY) maxY = y;
    }
  }
  return minX > maxX ? undefined : { minX, minY, maxX, maxY };
}

export function boundsArea({ minX, minY, maxX, maxY }: Bounds): number {
  return (maxX - minX) * (maxY - minY);
}

/** Corners of a box, counter-clockwise. */
export function boxRing({ minX, minY, maxX, maxY }: Bounds): Ring {
  return [
    { x: minX, y: minY },
    { x: maxX, y: minY },
    { x: maxX, y: maxY },
    { x: minX, y: maxY },
  ];
}

/** The box with a margin of `by` mm all round. */
export function widened({ minX, minY, maxX, maxY }: Bounds, by: number): Bounds {
  return { minX: minX - by, minY: minY - by, maxX: maxX + by, maxY: maxY + by };
}

/** Whether two boxes share more than an edge. */
export function boxesOverlap(a: Bounds, b: Bounds): boolean {
  return a.minX < b.maxX && b.minX < a.maxX && a.minY < b.maxY && b.minY < a.maxY;
}

export function boxCentre(bounds: Bounds): Point {
  return { x: (bounds.minX + bounds.maxX) / 2, y: (bounds.minY + bounds.maxY) / 2 };
}

/** The centre of mass of a sheet of even thickness (Green's theorem); `undefined` if there is no area. */
export function centroid(region: Region): Point | undefined {
  const bounds = boundsOf(region);
  if (!bounds) return undefined;
  // Relative to the centre of the box: far from the origin the products would lose digits to cancellation.
  const origin = boxCentre(bounds);
  let twiceArea = 0;
  let sumX = 0;
  let sumY = 0;
  for (const ring of region) {
    let previous = ring[ring.length - 1]!;
    for (const point of ring) {
      const ax = previous.x - origin.x;
      const ay = previous.y - origin.y;
      const bx = point.x - origin.x;
      const by = point.y - origin.y;
      const cross = ax * by - bx * ay;
      twiceArea += cross;
      sumX += (ax + bx) * cross;
      sumY += (ay + by) * cross;
      previous = point;
    }
  }
  if (twiceArea === 0) return undefined;
  return { x: origin.x + sumX / (3 * twiceArea), y: origin.y + sumY / (3 * twiceArea) };
}

export function distance(a: Point, b: Point): number {
  const dx = a.x - b.x;
  const dy = a.y - b.y;
  // A quarter of the time that Math.hypot takes, which guards against sizes that no tag has.
  return Math.sqrt(dx * dx + dy * dy);
}

/** Whether the point lies in material (an odd number of edges to its right); on an edge, either answer may come. */
export function contains(region: Region, point: Point): boolean {
  let inside = false;
  for (const ring of region) {
    let previous = ring[ring.length - 1]!;
    for (const current of ring) {
      if (current.y > point.y !== previous.y > point.y) {
        const x = current.x + ((point.y - current.y) * (previous.x - current.x)) / (previous.y - current.y);
        if (point.x < x) inside = !inside;
      }
      previous = current;
    }
  }
  return inside;
}

/** In mm. */
export function lineLength(line: Line): number {
  return line.slice(1).reduce((sum, to, index) => sum + distance(line[index]!, to), 0);
}

/** The point of the segment between two others that is nearest to a point. */
export function nearestOnSegment({ x, y }: Point, from: Point, to: Point): Point {
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  const length = dx * dx + dy * dy;
  const t = length === 0 ? 0 : Math.min(1, Math.max(0, ((x - from.x) * dx + (y - from.y) * dy) / length));
  return { x: from.x + t * dx, y: from.y + t * dy };
}

/** Distance in mm of a point from the segment between two others. */
export function distanceToSegment(point: Point, from: Point, to: Point): number {
  return distance(point, nearestOnSegment(point, from, to));
}
