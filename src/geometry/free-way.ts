/** How far points can move along an axis until they meet an edge. */

import type { Point, Region } from './types.ts';

/** The distances that something can move in either direction before it meets something. */
export interface FreeWay {
  readonly back: number;
  readonly ahead: number;
}

/** Things nearer than this touch, in mm. */
export const touchingMm = 1e-4;

/** Points in the order of their levels, for many questions about what is level with an edge. */
export class Levels {
  /** Level and place of each, in that order. */
  readonly at: Float64Array;
  readonly place: Float64Array;

  constructor(points: readonly Point[], along: 'x' | 'y', across: 'x' | 'y') {
    const sorted = [...points].sort((a, b) => a[across] - b[across]);
    this.at = Float64Array.from(sorted, (point) => point[across]);
    this.place = Float64Array.from(sorted, (point) => point[along]);
  }

  /** Index of the first level that is not below `low`. */
  firstFrom(low: number): number {
    let [start, end] = [0, this.at.length];
    while (start < end) {
      const middle = (start + end) >> 1;
      if (this.at[middle]! < low) start = middle + 1;
      else end = middle;
    }
    return start;
  }
}

/**
 * The way of moved points until one of them meets an edge that is level with it. Things that already touch meet at
 * once, despite rounding.
 * @param edges They enclose what is on their left; `isWithin`: which the points are in, rather than beside.
 */
export function wayToEdges(
  levels: Levels,
  edges: Region,
  isWithin: boolean,
  along: 'x' | 'y',
  across: 'x' | 'y',
  moved: { readonly along: number; readonly across: number },
): FreeWay {
  const { at, place } = levels;
  let back = Infinity;
  let ahead = Infinity;
  for (const ring of at.length > 0 ? edges : []) {
    let from = ring[ring.length - 1]!;
    for (const to of ring) {
      const rise = to[across] - from[across];
      if (rise !== 0) {
        const isAhead = (rise > 0 === (along === 'x')) === isWithin;
        const slope = (to[along] - from[along]) / rise;
        const first = from[along] - moved.along + slope * (moved.across - from[across]);
        const low = (rise > 0 ? from : to)[across] - moved.across;
        const high = (rise > 0 ? to : from)[across] - moved.across;
        for (let i = levels.firstFrom(low); i < at.length && at[i]! < high; i++) {
          const distance = first + slope * at[i]! - place[i]!;
          if (isAhead && distance > -touchingMm && distance < ahead) ahead = distance;
          if (!isAhead && distance < touchingMm && -distance < back) back = -distance;
        }
      }
      from = to;
    }
  }
  return { back: Math.max(0, back - touchingMm), ahead: Math.max(0, ahead - touchingMm) };
}
