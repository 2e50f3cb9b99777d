/** Contours as others see them: curves evaluated by bezier-js, arcs walked by their equation, distances from every point to every edge. */

import { Bezier } from 'bezier-js';
import type { Contour, Segment } from '../../../src/geometry/contour.ts';
import type { Point, Ring } from '../../../src/geometry/types.ts';
import { Outlines } from './distance.ts';

/** Points along a contour, its own nodes among them; chords stay within 0.0005 mm of arcs, and of cubics about as near. */
export function walked({ start, segments }: Contour): Ring {
  const points: Point[] = [start];
  let from = start;
  for (const segment of segments) {
    const at = evaluator(from, segment);
    const count = pieces(from, segment);
    for (let i = 1; i <= count; i++) points.push(at(i / count));
    from = segment.to;
  }
  const [first, last] = [points[0]!, points.at(-1)!];
  return Math.hypot(first.x - last.x, first.y - last.y) < 1e-9 ? points.slice(0, -1) : points;
}

/** Points at most `step` mm apart along a contour, its nodes among them; the last is where it ends. */
export function stepped({ start, segments }: Contour, step: number): Point[] {
  const points: Point[] = [start];
  let from = start;
  for (const segment of segments) {
    const at = evaluator(from, segment);
    const count = Math.max(1, Math.ceil(lengthOf(from, segment) / step));
    for (let i = 1; i <= count; i++) points.push(at(i / count));
    from = segment.to;
  }
  return points;
}

function lengthOf(from: Point, segment: Segment): number {
  switch (segment.type) {
    case 'line':
      return Math.hypot(segment.to.x - from.x, segment.to.y - from.y);
    case 'arc':
      return Math.abs(segment.sweep) * Math.hypot(from.x - segment.centre.x, from.y - segment.centre.y);
    case 'cubic':
      return new Bezier([from, segment.c1, segment.c2, segment.to].map(({ x, y }) => ({ x, y }))).length();
  }
}

function pieces(from: Point, segment: Segment): number {
  switch (segment.type) {
    case 'line':
      return 1;
    case 'arc': {
      const radius = Math.hypot(from.x - segment.centre.x, from.y - segment.centre.y);
      return Math.ceil(Math.abs(segment.sweep) / (2 * Math.acos(Math.max(0, 1 - 0.0005 / radius))));
    }
    case 'cubic':
      return 8 + Math.ceil(10 * Math.sqrt(Math.hypot(segment.to.x - from.x, segment.to.y - from.y)));
  }
}

function evaluator(from: Point, segment: Segment): (t: number) => Point {
  switch (segment.type) {
    case 'line':
      return (t) => ({ x: from.x + t * (segment.to.x - from.x), y: from.y + t * (segment.to.y - from.y) });
    case 'arc': {
      const { centre, sweep } = segment;
      const radius = Math.hypot(from.x - centre.x, from.y - centre.y);
      const first = Math.atan2(from.y - centre.y, from.x - centre.x);
      return (t) => ({
        x: centre.x + radius * Math.cos(first + t * sweep),
        y: centre.y + radius * Math.sin(first + t * sweep),
      });
    }
    case 'cubic': {
      const curve = new Bezier([from, segment.c1, segment.c2, segment.to].map(({ x, y }) => ({ x, y })));
      return (t) => {
        const { x, y } = curve.get(t);
        return { x, y };
      };
    }
  }
}

/** The greatest distance in mm from any point of one closed outline to the other, the worse way round (Hausdorff's). */
export function hausdorff(a: Ring, b: Ring): number {
  return Math.max(oriented(dense(a), b), oriented(dense(b), a));
}

function oriented(from: Ring, to: Ring): number {
  const outline = new Outlines([to]);
  return Math.max(...from.map((point) => outline.distance(point)));
}

/** With points between those that are far apart: distances are measured from points only. */
function dense(ring: Ring): Ring {
  return ring.flatMap((point, i) => {
    const next = ring[(i + 1) % ring.length]!;
    const steps = Math.min(8, Math.max(2, Math.ceil(Math.hypot(next.x - point.x, next.y - point.y) / 0.1)));
    return Array.from({ length: steps }, (_, k) => ({
      x: point.x + (k / steps) * (next.x - point.x),
      y: point.y + (k / steps) * (next.y - point.y),
    }));
  });
}
