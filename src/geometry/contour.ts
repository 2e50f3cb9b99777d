/**
 * Outlines of lines, circular arcs and cubic Béziers, as `fit-contours.ts` finds them in polygons and as cut files hold
 * them. Lengths are mm, y runs up, angles are radians, counter-clockwise positive.
 */

import { distance } from './measure.ts';
import type { Bounds, Point, Ring } from './types.ts';

/** One segment; it begins where the one before it ends. */
export type Segment =
  | { readonly type: 'line'; readonly to: Point }
  /** `sweep` is signed, in radians, and less than a full turn. */
  | { readonly type: 'arc'; readonly to: Point; readonly centre: Point; readonly sweep: number }
  | { readonly type: 'cubic'; readonly to: Point; readonly c1: Point; readonly c2: Point };

/** A chain of segments; the last segment of a closed one ends at `start`. */
export interface Contour {
  readonly start: Point;
  readonly segments: readonly Segment[];
  readonly closed: boolean;
}

/** The point at which each segment begins. */
export function startsOf({ start, segments }: Contour): Point[] {
  return [start, ...segments.slice(0, -1).map(({ to }) => to)];
}

export function endOf({ start, segments }: Contour): Point {
  return segments.at(-1)?.to ?? start;
}

export function radiusOf(from: Point, arc: Extract<Segment, { type: 'arc' }>): number {
  return Math.hypot(from.x - arc.centre.x, from.y - arc.centre.y);
}

/** The point at parameter `t`, from 0 to 1; along a line or an arc, `t` is the share of the length. */
export function pointOn(from: Point, segment: Segment, t: number): Point {
  switch (segment.type) {
    case 'line':
      return { x: from.x + t * (segment.to.x - from.x), y: from.y + t * (segment.to.y - from.y) };
    case 'arc':
      return turned(from, segment.centre, t * segment.sweep);
    case 'cubic': {
      const s = 1 - t;
      const [a, b, c, d] = [s * s * s, 3 * s * s * t, 3 * s * t * t, t * t * t];
      const { c1, c2, to } = segment;
      return { x: a * from.x + b * c1.x + c * c2.x + d * to.x, y: a * from.y + b * c1.y + c * c2.y + d * to.y };
    }
  }
}

/** The unit directions of travel at the beginning and the end of a segment. */
export function directionsOf(from: Point, segment: Segment): readonly [Point, Point] {
  switch (segment.type) {
    case 'line': {
      const direction = unit(from, segment.to);
      return [direction, direction];
    }
    case 'arc': {
      const side = Math.sign(segment.sweep);
      const at = ({ x, y }: Point): Point =>
        unit({ x: 0, y: 0 }, { x: -side * (y - segment.centre.y), y: side * (x - segment.centre.x) });
      return [at(from), at(segment.to)];
    }
    case 'cubic': {
      const { c1, c2, to } = segment;
      const differ = (a: Point, b: Point) => a.x !== b.x || a.y !== b.y;
      const first = [c1, c2, to].find((point) => differ(point, from)) ?? to;
      const last = [c2, c1, from].find((point) => differ(point, to)) ?? from;
      return [unit(from, first), unit(last, to)];
    }
  }
}

function unit(from: Point, to: Point): Point {
  const length = distance(to, from) || 1;
  return { x: (to.x - from.x) / length, y: (to.y - from.y) / length };
}

export function turned(point: Point, centre: Point, angle: number): Point {
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const [x, y] = [point.x - centre.x, point.y - centre.y];
  return { x: centre.x + cos * x - sin * y, y: centre.y + sin * x + cos * y };
}

/** The two parts of a segment cut at `t`; a cubic is cut by de Casteljau's construction. */
export function splitSegment(from: Point, segment: Segment, t: number): readonly [Segment, Segment] {
  const at = pointOn(from, segment, t);
  switch (segment.type) {
    case 'line':
      return [{ type: 'line', to: at }, segment];
    case 'arc': {
      const { centre, sweep } = segment;
      return [
        { type: 'arc', to: at, centre, sweep: sweep * t },
        { ...segment, sweep: sweep * (1 - t) },
      ];
    }
    case 'cubic': {
      const mix = (a: Point, b: Point): Point => ({ x: a.x + t * (b.x - a.x), y: a.y + t * (b.y - a.y) });
      const { c1, c2, to } = segment;
      const [a, b, c] = [mix(from, c1), mix(c1, c2), mix(c2, to)];
      const [d, e] = [mix(a, b), mix(b, c)];
      return [
        { type: 'cubic', c1: a, c2: d, to: at },
        { type: 'cubic', c1: e, c2: c, to },
      ];
    }
  }
}

/** Largest distance between a flattened segment and its chords, in mm. */
export const flatteningMm = 0.001;

/** Points along a segment, without its beginning but with its end, whose chords stay within `tolerance` mm of it. */
export function flattenSegment(from: Point, segment: Segment, tolerance = flatteningMm): Point[] {
  const steps = stepsOf(from, segment, tolerance);
  return [...Array.from({ length: steps - 1 }, (_, i) => pointOn(from, segment, (i + 1) / steps)), segment.to];
}

/**
 * Number of equal steps: for arcs from the sagitta of a chord; for cubics from Wang's formula, √(0.75 · max|Δ²| / ε),
 * an upper bound.
 */
function stepsOf(from: Point, segment: Segment, tolerance: number): number {
  switch (segment.type) {
    case 'line':
      return 1;
    case 'arc': {
      const radius = radiusOf(from, segment);
      const step = 2 * Math.acos(Math.max(0, 1 - tolerance / radius));
      return Math.max(1, Math.ceil(Math.abs(segment.sweep) / step));
    }
    case 'cubic': {
      const { c1, c2, to } = segment;
      const bend = Math.max(
        Math.hypot(from.x - 2 * c1.x + c2.x, from.y - 2 * c1.y + c2.y),
        Math.hypot(c1.x - 2 * c2.x + to.x, c1.y - 2 * c2.y + to.y),
      );
      return Math.max(1, Math.ceil(Math.sqrt((0.75 * bend) / tolerance)));
    }
  }
}

/** The contour as a polygon; the last point of a closed contour is its first and is not repeated. */
export function flattenContour(contour: Contour, tolerance = flatteningMm): Ring {
  const starts = startsOf(contour);
  const points = contour.segments.flatMap((segment, i) => flattenSegment(starts[i]!, segment, tolerance));
  return contour.closed ? [contour.start, ...points.slice(0, -1)] : [contour.start, ...points];
}

export function segmentLength(from: Point, segment: Segment): number {
  switch (segment.type) {
    case 'line':
      return Math.hypot(segment.to.x - from.x, segment.to.y - from.y);
    case 'arc':
      return radiusOf(from, segment) * Math.abs(segment.sweep);
    case 'cubic': {
      let length = 0;
      let last = from;
      for (const point of flattenSegment(from, segment)) {
        length += distance(point, last);
        last = point;
      }
      return length;
    }
  }
}

export function contourLength(contour: Contour): number {
  const starts = startsOf(contour);
  return contour.segments.reduce((sum, segment, i) => sum + segmentLength(starts[i]!, segment), 0);
}

export function moved(contour: Contour, dx: number, dy: number): Contour {
  const by = ({ x, y }: Point): Point => ({ x: x + dx, y: y + dy });
  return {
    ...contour,
    start: by(contour.start),
    segments: contour.segments.map((segment): Segment => {
      switch (segment.type) {
        case 'line':
          return { type: 'line', to: by(segment.to) };
        case 'arc':
          return { ...segment, to: by(segment.to), centre: by(segment.centre) };
        case 'cubic':
          return { type: 'cubic', to: by(segment.to), c1: by(segment.c1), c2: by(segment.c2) };
      }
    }),
  };
}

/** A closed contour that begins on another of its segments, which is cut at `t` unless that is one of its ends. */
export function startingAt(contour: Contour, index: number, t: number): Contour {
  const starts = startsOf(contour);
  const { segments } = contour;
  const rest = [...segments.slice(index + 1), ...segments.slice(0, index)];
  if (t <= 0) return { ...contour, start: starts[index]!, segments: [segments[index]!, ...rest] };
  const [before, after] = splitSegment(starts[index]!, segments[index]!, t);
  return { ...contour, start: before.to, segments: [after, ...rest, before] };
}

/** The box of the flattened contours. */
export function contourBounds(contours: readonly Contour[]): Bounds | undefined {
  let bounds: { minX: number; minY: number; maxX: number; maxY: number } | undefined;
  for (const contour of contours) {
    for (const { x, y } of flattenContour(contour)) {
      bounds ??= { minX: x, minY: y, maxX: x, maxY: y };
      bounds.minX = Math.min(bounds.minX, x);
      bounds.minY = Math.min(bounds.minY, y);
      bounds.maxX = Math.max(bounds.maxX, x);
      bounds.maxY = Math.max(bounds.maxY, y);
    }
  }
  return bounds;
}
