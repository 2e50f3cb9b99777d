/**
 * Free width on a sheet at each height, row by row. If the widest stretch of a part does not fit between what lies in a
 * row, the part does not fit either; this saves nine of ten exact checks. Levels that pass are checked exactly.
 */

import { oncePer } from '../core/once-per.ts';
import type { BinSize } from './layout.ts';
import type { Orientation } from './orientation.ts';

/** Spacing of rows, and of the sections of an orientation, in mm. */
const rowMm = 1;
const sectionMm = 0.5;
/** Tolerance in mm: sections lie beside a row, not on it, and an exact fit must not be missed. */
const sameMm = 0.5;

/** Horizontal sections of an orientation at regular heights above the bottom of its outline. */
interface CrossSections {
  /** Crossings of each section, ascending; even ones enter material, odd ones leave it. */
  readonly sections: readonly (readonly number[])[];
  /** Length of material on each, in mm. */
  readonly lengths: Float64Array;
  /**
   * Widest stretch of material on each: the least of it and its neighbours, so that it is not overestimated between
   * sections.
   */
  readonly widths: Float64Array;
}

export class Rows {
  readonly #from: number;
  readonly #to: number;
  readonly #taken: number[][] = [];
  readonly #widest: Float64Array;

  constructor({ width, height, gap }: BinSize) {
    // Outlines extend half a gap beyond their parts, and beyond the walls.
    this.#from = -gap;
    this.#to = width + gap;
    this.#widest = new Float64Array(Math.ceil(height / rowMm)).fill(this.#to - this.#from);
  }

  lay(orientation: Orientation, x: number, y: number): void {
    const { sections, lengths } = profileOf(orientation);
    const bottom = y + orientation.bounds.minY;
    const last = Math.min(this.#widest.length - 1, rowOf(y + orientation.bounds.maxY));
    for (let row = Math.max(0, rowOf(bottom)); row <= last; row += 1) {
      const below = Math.floor(((row + 0.5) * rowMm - bottom) / sectionMm - 0.5);
      // The row is between two sections; the smaller one counts, so that no room is missed.
      if (below < 0 || below + 1 >= sections.length) continue;
      const section = sections[lengths[below]! <= lengths[below + 1]! ? below : below + 1]!;
      const taken = (this.#taken[row] ??= []);
      for (let i = 0; i < section.length; i += 2) insertStretch(taken, section[i]! + x, section[i + 1]! + x);
      this.#widest[row] = widestBetween(taken, this.#from, this.#to);
    }
  }

  /** False only if there is certainly no room for the orientation on the level. */
  mayHold(orientation: Orientation, y: number): boolean {
    const { widths } = profileOf(orientation);
    const bottom = y + orientation.bounds.minY;
    const last = Math.min(this.#widest.length - 1, rowOf(y + orientation.bounds.maxY));
    for (let row = Math.max(0, rowOf(bottom)); row <= last; row += 1) {
      const section = Math.floor(((row + 0.5) * rowMm - bottom) / sectionMm);
      if (section >= 0 && section < widths.length && widths[section]! > this.#widest[row]! + sameMm) return false;
    }
    return true;
  }
}

const rowOf = (y: number): number => Math.floor(y / rowMm);

/** Inserts a stretch, sorted by start. */
function insertStretch(taken: number[], from: number, to: number): void {
  let slot = taken.length;
  taken.push(0, 0);
  for (; slot > 0 && taken[slot - 2]! > from; slot -= 2) {
    taken[slot] = taken[slot - 2]!;
    taken[slot + 1] = taken[slot - 1]!;
  }
  taken[slot] = from;
  taken[slot + 1] = to;
}

function widestBetween(taken: readonly number[], from: number, to: number): number {
  let [widest, free] = [0, from];
  for (let i = 0; i < taken.length; i += 2) {
    widest = Math.max(widest, taken[i]! - free);
    free = Math.max(free, taken[i + 1]!);
  }
  return Math.max(widest, to - free);
}

const profileOf = oncePer((orientation: Orientation): CrossSections => {
  const { minY, maxY } = orientation.bounds;
  const count = Math.max(1, Math.floor((maxY - minY) / sectionMm));
  const sections = Array.from({ length: count }, (_, i) => sectionOf(orientation, minY + (i + 0.5) * sectionMm));
  const stretches = sections.map((section) => section.flatMap((to, i) => (i % 2 === 1 ? [to - section[i - 1]!] : [])));
  const widest = stretches.map((lengths) => Math.max(0, ...lengths));
  const profile = {
    sections,
    lengths: Float64Array.from(stretches, (lengths) => lengths.reduce((sum, length) => sum + length, 0)),
    widths: Float64Array.from(widest, (width, i) => Math.min(width, widest[i - 1] ?? 0, widest[i + 1] ?? 0)),
  };
  return profile;
});

function sectionOf({ corners: { x, y, slope }, next }: Orientation, height: number): number[] {
  const crossings: number[] = [];
  for (let i = 0; i < x.length; i += 1) {
    const from = y[i]!;
    if (from <= height !== y[next[i]!]! <= height) crossings.push(x[i]! + (height - from) * slope[i]!);
  }
  return crossings.sort((a, b) => a - b);
}
