/**
 * Outlines of lines and Béziers as fonts and drawings hold them, before they become polygons. y runs up, as everywhere.
 *
 * Coordinates are in whatever unit the source has (em, mm); an affine map brings them to mm. Every contour counts as
 * closed, with or without its `Z`, because only areas matter here.
 */

import type { Affine, Bounds, Line, Point, Ring } from './types.ts';

export type CurveCommand =
  | { readonly type: 'M'; readonly x: number; readonly y: number }
  | { readonly type: 'L'; readonly x: number; readonly y: number }
  | { readonly type: 'Q'; readonly x1: number; readonly y1: number; readonly x: number; readonly y: number }
  | {
      readonly type: 'C';
      readonly x1: number;
      readonly y1: number;
      readonly x2: number;
      readonly y2: number;
      readonly x: number;
      readonly y: number;
    }
  | { readonly type: 'Z' };

export type CurvePath = readonly CurveCommand[];

/**
 * Largest distance between a polygon and the curve it stands for, in mm. The width of a neck can be no more exact than
 * this, and necks are reported to 0.01 mm.
 */
export const flatteningToleranceMm = 0.002;

export interface FlattenOptions {
  /** Applied before flattening, so that the tolerance is in the units of the result. */
  readonly affine?: Affine;
  /** Largest distance between curve and polygon, in the units of the result; > 0. */
  readonly tolerance?: number;
}

/**
 * The polygons of a path, one per contour, in the path's own directions. Contours with fewer than three distinct points
 * enclose nothing and are left out.
 *
 * Each curve is cut into equal steps of its parameter, their number by Wang's formula (G. Wang 1984; the form used is n
 * = √(d(d−1)/8 · max|Δ²| / ε) for degree d).
 *
 * @throws RangeError for a coordinate that is not finite or is kilometres away, or a tolerance that is not above 0.
 */
export function flatten(path: CurvePath, options: FlattenOptions = {}): Ring[] {
  return traced(path, options, (ring) => {
    const [first, last] = [ring[0], ring.at(-1)];
    if (ring.length > 1 && first!.x === last!.x && first!.y === last!.y) ring.pop();
    return ring.length > 2;
  });
}

/** Like `flatten`, but as lines, which may be open; a closed one ends in its first point. */
export function flattenLines(path: CurvePath, options: FlattenOptions = {}): Line[] {
  return traced(path, options, (line, isClosed) => {
    if (isClosed && line.length > 1) line.push(line[0]!);
    return line.length > 1;
  });
}

/** Flattens each contour. `finished` completes a contour and returns whether to keep it. */
function traced(
  path: CurvePath,
  options: FlattenOptions,
  finished: (points: Point[], isClosed: boolean) => boolean,
): Ring[] {
  const tolerance = options.tolerance ?? flatteningToleranceMm;
  if (!(tolerance > 0)) throw new RangeError(`Flattening tolerance must be above 0, not ${tolerance}.`);
  const rings: Ring[] = [];
  let ring: Point[] = [];
  let start: Point = { x: 0, y: 0 };
  let at: Point = start;

  const add = (point: Point): void => {
    if (!Number.isFinite(point.x) || !Number.isFinite(point.y)) {
      throw new RangeError('An outline has a coordinate that is not a number.');
    }
    const last = ring.at(-1);
    if (last?.x !== point.x || last.y !== point.y) ring.push(point);
    at = point;
  };
  const finish = (isClosed = false): void => {
    if (finished(ring, isClosed)) rings.push(ring);
    ring = [];
    at = start;
  };

  for (const command of options.affine ? transformCurves(path, options.affine) : path) {
    if (command.type === 'Z') {
      finish(true);
      continue;
    }
    if (command.type === 'M') {
      finish();
      start = { x: command.x, y: command.y };
    } else if (ring.length === 0) {
      add(start);
    }
    switch (command.type) {
      case 'M':
      case 'L':
        add({ x: command.x, y: command.y });
        break;
      case 'Q': {
        const from = at;
        const steps = quadraticSteps(from, command, tolerance);
        for (let i = 1; i < steps; i++) add(quadraticAt(from, command, i / steps));
        add({ x: command.x, y: command.y });
        break;
      }
      case 'C': {
        const from = at;
        const steps = cubicSteps(from, command, tolerance);
        for (let i = 1; i < steps; i++) add(cubicAt(from, command, i / steps));
        add({ x: command.x, y: command.y });
        break;
      }
    }
  }
  finish();
  return rings;
}

type Quadratic = Extract<CurveCommand, { type: 'Q' }>;
type Cubic = Extract<CurveCommand, { type: 'C' }>;

/** More steps than any curve on a sheet can need; the limit keeps one absurd coordinate from running forever. */
const maxSteps = 100_000;

function stepCount(exact: number): number {
  if (!(exact <= maxSteps)) throw new RangeError('An outline has a curve that is too large to draw.');
  return Math.max(1, Math.ceil(exact));
}

function quadraticSteps(from: Point, c: Quadratic, tolerance: number): number {
  const bend = Math.hypot(from.x - 2 * c.x1 + c.x, from.y - 2 * c.y1 + c.y);
  return stepCount(Math.sqrt(bend / (4 * tolerance)));
}

function cubicSteps(from: Point, c: Cubic, tolerance: number): number {
  const bend = Math.max(
    Math.hypot(from.x - 2 * c.x1 + c.x2, from.y - 2 * c.y1 + c.y2),
    Math.hypot(c.x1 - 2 * c.x2 + c.x, c.y1 - 2 * c.y2 + c.y),
  );
  return stepCount(Math.sqrt((0.75 * bend) / tolerance));
}

function quadraticAt(from: Point, c: Quadratic, t: number): Point {
  const s = 1 - t;
  return {
    x: s * s * from.x + 2 * s * t * c.x1 + t * t * c.x,
    y: s * s * from.y + 2 * s * t * c.y1 + t * t * c.y,
  };
}

function cubicAt(from: Point, c: Cubic, t: number): Point {
  const s = 1 - t;
  return {
    x: s * s * s * from.x + 3 * s * s * t * c.x1 + 3 * s * t * t * c.x2 + t * t * t * c.x,
    y: s * s * s * from.y + 3 * s * s * t * c.y1 + 3 * s * t * t * c.y2 + t * t * t * c.y,
  };
}

export function transformCurves(path: CurvePath, m: Affine): CurveCommand[] {
  const mapX = (x: number, y: number): number => m.a * x + m.c * y + m.e;
  const mapY = (x: number, y: number): number => m.b * x + m.d * y + m.f;
  return path.map((c): CurveCommand => {
    switch (c.type) {
      case 'M':
      case 'L':
        return { type: c.type, x: mapX(c.x, c.y), y: mapY(c.x, c.y) };
      case 'Q':
        return { type: 'Q', x1: mapX(c.x1, c.y1), y1: mapY(c.x1, c.y1), x: mapX(c.x, c.y), y: mapY(c.x, c.y) };
      case 'C':
        return {
          type: 'C',
          x1: mapX(c.x1, c.y1),
          y1: mapY(c.x1, c.y1),
          x2: mapX(c.x2, c.y2),
          y2: mapY(c.x2, c.y2),
          x: mapX(c.x, c.y),
          y: mapY(c.x, c.y),
        };
      case 'Z':
        return c;
    }
  });
}

/** The same contours in the opposite direction. */
export function reverseCurves(path: CurvePath): CurveCommand[] {
  const out: CurveCommand[] = [];
  let contour: Exclude<CurveCommand, { type: 'Z' }>[] = [];
  const finish = (): void => {
    const last = contour.at(-1);
    if (!last) return;
    out.push({ type: 'M', x: last.x, y: last.y });
    for (let i = contour.length - 1; i > 0; i--) {
      const command = contour[i]!;
      const { x, y } = contour[i - 1]!;
      if (command.type === 'Q') out.push({ type: 'Q', x1: command.x1, y1: command.y1, x, y });
      else if (command.type === 'C') {
        out.push({ type: 'C', x1: command.x2, y1: command.y2, x2: command.x1, y2: command.y1, x, y });
      } else out.push({ type: 'L', x, y });
    }
    out.push({ type: 'Z' });
    contour = [];
  };
  let start: Point = { x: 0, y: 0 };
  for (const command of path) {
    if (command.type === 'M' || command.type === 'Z') finish();
    if (command.type === 'Z') continue;
    if (command.type === 'M') start = command;
    else if (contour.length === 0) contour.push({ type: 'M', x: start.x, y: start.y });
    contour.push(command);
  }
  finish();
  return out;
}

/** The exact box of a path, from the extrema of its curves; `undefined` if nothing is drawn. */
export function curveBounds(path: CurvePath): Bounds | undefined {
  let minX = Infinity;
  let minY = Infinity;
  let maxX = -Infinity;
  let maxY = -Infinity;
  let start: Point = { x: 0, y: 0 };
  let at = start;
  const addX = (x: number): void => {
    minX = Math.min(minX, x);
    maxX = Math.max(maxX, x);
  };
  const addY = (y: number): void => {
    minY = Math.min(minY, y);
    maxY = Math.max(maxY, y);
  };
  for (const c of path) {
    if (c.type === 'Z') {
      at = start;
      continue;
    }
    if (c.type === 'M') start = c;
    else {
      // A lone `M` draws nothing, so a point counts once something starts from it.
      for (const x of extrema(at.x, c, 'x')) addX(x);
      for (const y of extrema(at.y, c, 'y')) addY(y);
    }
    at = c;
  }
  return minX <= maxX && minY <= maxY ? { minX, minY, maxX, maxY } : undefined;
}

/** Candidates for the extremes of one coordinate of a segment: its ends, and where its derivative is zero. */
function extrema(p0: number, c: Exclude<CurveCommand, { type: 'Z' }>, axis: 'x' | 'y'): number[] {
  const values = [p0, c[axis]];
  if (c.type === 'Q') {
    const p1 = axis === 'x' ? c.x1 : c.y1;
    const p2 = c[axis];
    const t = (p0 - p1) / (p0 - 2 * p1 + p2);
    if (t > 0 && t < 1) values.push((1 - t) * (1 - t) * p0 + 2 * (1 - t) * t * p1 + t * t * p2);
  } else if (c.type === 'C') {
    const p1 = axis === 'x' ? c.x1 : c.y1;
    const p2 = axis === 'x' ? c.x2 : c.y2;
    const p3 = c[axis];
    for (const t of unitRoots(p3 - 3 * p2 + 3 * p1 - p0, 2 * (p0 - 2 * p1 + p2), p1 - p0)) {
      const s = 1 - t;
      values.push(s * s * s * p0 + 3 * s * s * t * p1 + 3 * s * t * t * p2 + t * t * t * p3);
    }
  }
  return values;
}

/** Real roots of a·t² + b·t + c in (0, 1), by the form that does not cancel when a is small. */
function unitRoots(a: number, b: number, c: number): number[] {
  const discriminant = b * b - 4 * a * c;
  if (discriminant < 0) return [];
  const q = -0.5 * (b + (b < 0 ? -1 : 1) * Math.sqrt(discriminant));
  return [q / a, c / q].filter((t) => t > 0 && t < 1);
}
