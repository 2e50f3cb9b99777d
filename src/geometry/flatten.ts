/** From curves to polygons and lines. */

import type { Affine, Line, Point, Ring } from './types.ts';
import { transformCurves } from './curves.ts';
import type { CurveCommand, CurvePath } from './curves.ts';

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
