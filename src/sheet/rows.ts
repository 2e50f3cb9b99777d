/**
 * How wide a room there is on a sheet at each height, row by row. Where the widest stretch of a part does not go between what
 * lies there, the part does not either: that spares nine of ten levels the exact look. What passes is looked at exactly.
 */

import type { Pose } from './pose.ts';

/** From one row to the next, in mm, and how far apart the stretches of a pose are measured. */
const rowMm = 1;
const stretchMm = 0.5;
/** Narrower by less is as wide: an exact fit must not be lost by rounding. */
const sameMm = 1e-3;

/** The widest stretch of each pose by height above the bottom of its outline. */
const stretches = new WeakMap<Pose, Float64Array>();

/** Sections of a pose, kept between calls. */
const crossings: number[] = [];

export class Rows {
  readonly #from: number;
  readonly #to: number;
  readonly #taken: number[][] = [];
  readonly #widest: Float64Array;

  /** `overhang`: how far an outline may reach beyond the walls, as half the gap does. */
  constructor(width: number, height: number, overhang: number) {
    this.#from = -overhang;
    this.#to = width + overhang;
    this.#widest = new Float64Array(Math.ceil(height / rowMm)).fill(this.#to - this.#from);
  }

  lay(pose: Pose, x: number, y: number): void {
    const last = Math.min(this.#widest.length - 1, rowOf(y + pose.bounds.maxY));
    for (let row = Math.max(0, rowOf(y + pose.bounds.minY)); row <= last; row += 1) {
      sectionOf(pose, (row + 0.5) * rowMm - y);
      if (crossings.length === 0) continue;
      const taken = (this.#taken[row] ??= []);
      for (const crossing of crossings) taken.push(crossing + x);
      this.#widest[row] = widestBetween(taken, this.#from, this.#to);
    }
  }

  /** False where there is certainly no room for the pose on the level. */
  mayHold(pose: Pose, y: number): boolean {
    let widths = stretches.get(pose);
    if (!widths) stretches.set(pose, (widths = stretchesOf(pose)));
    const bottom = y + pose.bounds.minY;
    const last = Math.min(this.#widest.length - 1, rowOf(y + pose.bounds.maxY));
    for (let row = Math.max(0, rowOf(bottom)); row <= last; row += 1) {
      const stretch = Math.floor(((row + 0.5) * rowMm - bottom) / stretchMm);
      if (stretch >= 0 && stretch < widths.length && widths[stretch]! > this.#widest[row]! + sameMm) return false;
    }
    return true;
  }
}

const rowOf = (y: number): number => Math.floor(y / rowMm);

/** Leaves in `crossings` where the outline crosses a height above the pose's origin, ascending; every other one is an entry. */
function sectionOf({ corners: { x, y, slope }, next }: Pose, height: number): void {
  crossings.length = 0;
  for (let i = 0; i < x.length; i += 1) {
    const from = y[i]!;
    if (from <= height === y[next[i]!]! <= height) continue;
    crossings.push(x[i]! + (height - from) * slope[i]!);
  }
  crossings.sort((a, b) => a - b);
}

/** The widest gap between stretches, given as pairs from and to that do not overlap; they are sorted on the way. */
function widestBetween(taken: number[], from: number, to: number): number {
  taken.sort((a, b) => a - b);
  let [widest, free] = [0, from];
  for (let i = 0; i < taken.length; i += 2) {
    widest = Math.max(widest, taken[i]! - free);
    free = taken[i + 1]!;
  }
  return Math.max(widest, to - free);
}

/** Each the narrowest of the heights beside it, so that what lies between two heights is not taken for wider than it is. */
function stretchesOf(pose: Pose): Float64Array {
  const { minY, maxY } = pose.bounds;
  const widths: number[] = [];
  for (let height = minY + stretchMm / 2; height < maxY; height += stretchMm) {
    sectionOf(pose, height);
    let widest = 0;
    for (let i = 0; i + 1 < crossings.length; i += 2) widest = Math.max(widest, crossings[i + 1]! - crossings[i]!);
    widths.push(widest);
  }
  return Float64Array.from(widths, (width, i) => Math.min(width, widths[i - 1] ?? 0, widths[i + 1] ?? 0));
}
