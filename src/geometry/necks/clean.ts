/**
 * Removes the debris of earlier booleans from outlines, which would look like necks a hundred-thousandth of a mm wide.
 */

import { vectorLength } from './lengths.ts';
import type { Point, Region } from '../types.ts';

/**
 * Grid units per mm. The analysis runs on whole numbers: coordinates then compare exactly, and the orientation of three
 * points is exact in double precision for points up to 900 mm apart.
 */
export const gridPerMm = 100_000;

/** Vertices nearer than this, and spikes or slits narrower than this, are debris (units). */
const debris = 10;

/** A ring is a speck if it is smaller than this (units²: 0.01 mm × 0.01 mm) … */
const speckArea = 1e6;
/** … or if its area shared out along its outline is thinner than this (units). */
const speckThickness = 50;

/** A closed outline in grid units; x and y are parallel. Material is on the left. */
export interface GridRing {
  readonly xs: readonly number[];
  readonly ys: readonly number[];
}

/**
 * Angle by which the grid is turned against the axes (radians). Long exactly straight rows of points, common on upright
 * plates, make delaunator's time grow with their square; on a turned grid, rounding breaks them up.
 */
const turn = 0.618;
const cosine = Math.cos(turn);
const sine = Math.sin(turn);

/** The rings of a region on the grid. Rings with a coordinate that is not finite are left out. */
export function toGrid(region: Region): GridRing[] {
  return region
    .filter((ring) => ring.every(({ x, y }) => Number.isFinite(x) && Number.isFinite(y)))
    .map((ring) => ({
      xs: ring.map(({ x, y }) => Math.round((cosine * x - sine * y) * gridPerMm)),
      ys: ring.map(({ x, y }) => Math.round((sine * x + cosine * y) * gridPerMm)),
    }));
}

/** A grid position in mm. */
export function fromGrid([x, y]: readonly [number, number]): Point {
  return { x: (cosine * x + sine * y) / gridPerMm, y: (cosine * y - sine * x) / gridPerMm };
}

/** The rings without doubled vertices, spikes, hair slits and specks. */
export function cleanRings(rings: readonly GridRing[]): GridRing[] {
  return rings.map(cleanRing).filter((ring) => ring.xs.length >= 3 && !isSpeck(ring));
}

function cleanRing(ring: GridRing): GridRing {
  let { xs, ys } = ring;
  // A spike can straddle the seam between the last point and the first, so each further pass starts half a ring on.
  for (let pass = 0; pass < 8 && xs.length >= 3; pass += 1) {
    const before = xs.length;
    const seam = pass === 0 ? 0 : before >> 1;
    ({ xs, ys } = withoutDebris(rotated(xs, seam), rotated(ys, seam)));
    if (pass > 0 && xs.length === before) break;
  }
  return { xs, ys };
}

const rotated = (values: readonly number[], by: number): number[] => [...values.slice(by), ...values.slice(0, by)];

/** One pass over the open chain; `kept` works as a stack, so that a long spike is removed from its tip. */
function withoutDebris(xs: readonly number[], ys: readonly number[]): { xs: number[]; ys: number[] } {
  const kx: number[] = [];
  const ky: number[] = [];
  for (let i = 0; i < xs.length; i += 1) {
    const x = xs[i]!;
    const y = ys[i]!;
    for (;;) {
      const n = kx.length;
      if (n > 0 && vectorLength(x - kx[n - 1]!, y - ky[n - 1]!) < debris) break;
      if (n > 1 && isSpike(kx[n - 2]!, ky[n - 2]!, kx[n - 1]!, ky[n - 1]!, x, y)) {
        kx.pop();
        ky.pop();
        continue;
      }
      kx.push(x);
      ky.push(y);
      break;
    }
  }
  return { xs: kx, ys: ky };
}

/** Whether the path a → b → c turns back on itself at b. */
function isSpike(ax: number, ay: number, bx: number, by: number, cx: number, cy: number): boolean {
  const ux = bx - ax;
  const uy = by - ay;
  const vx = cx - bx;
  const vy = cy - by;
  if (ux * vx + uy * vy >= 0) return false;
  const cross = Math.abs(ux * vy - uy * vx);
  return cross < debris * Math.max(vectorLength(ux, uy), vectorLength(vx, vy));
}

function isSpeck({ xs, ys }: GridRing): boolean {
  let twiceArea = 0;
  let outline = 0;
  let j = xs.length - 1;
  for (let i = 0; i < xs.length; i += 1) {
    // Relative to the first vertex, so that no digits cancel far from the origin.
    const ax = xs[j]! - xs[0]!;
    const ay = ys[j]! - ys[0]!;
    const bx = xs[i]! - xs[0]!;
    const by = ys[i]! - ys[0]!;
    twiceArea += ax * by - bx * ay;
    outline += vectorLength(bx - ax, by - ay);
    j = i;
  }
  const area = Math.abs(twiceArea) / 2;
  return area < speckArea || area < (speckThickness / 2) * outline;
}
