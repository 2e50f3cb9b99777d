/**
 * Outlines of lines and Béziers as fonts and drawings hold them, before they become polygons. y runs up, as everywhere.
 *
 * Coordinates are in whatever unit the source has (em, mm); an affine map brings them to mm. Every contour counts as
 * closed, with or without its `Z`, because only areas matter here.
 */

import type { Affine, Bounds, Point } from './types.ts';

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
