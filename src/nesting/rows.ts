/**
 * How wide a room there is on a sheet at each height, row by row. Where the widest stretch of a part does not go between what
 * lies there, the part does not either: that spares nine of ten levels the exact look. What passes is looked at exactly.
 */

import type { BinSize } from './layout.ts';
import type { Orientation } from './orientation.ts';

/** From one row to the next, in mm, and from one section of an orientation to the next. */
const rowMm = 1;
const sectionMm = 0.5;
/** Narrower by less is as wide: sections lie beside a row, not on it, and an exact fit must not be lost. */
const sameMm = 0.5;

/** A orientation cut level at even heights above the bottom of its outline. */
interface Profile {
  /** Where it is crossed, ascending; every other one is an entry. */
  readonly sections: readonly (readonly number[])[];
  /** mm of material on each. */
  readonly lengths: Float64Array;
  /** The widest stretch of each and its neighbours, by the narrowest: what lies between two is not taken for wider. */
  readonly widths: Float64Array;
}

const profiles = new WeakMap<Orientation, Profile>();

export class Rows {
  readonly #from: number;
  readonly #to: number;
  readonly #taken: number[][] = [];
  readonly #widest: Float64Array;

  constructor({ width, height, gap }: BinSize) {
    // Outlines reach half a gap beyond their parts, and beyond the walls.
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
      // The row is between two sections: the smaller counts, so that no room is lost that there is.
      if (below < 0 || below + 1 >= sections.length) continue;
      const section = sections[lengths[below]! <= lengths[below + 1]! ? below : below + 1]!;
      const taken = (this.#taken[row] ??= []);
      for (let i = 0; i < section.length; i += 2) take(taken, section[i]! + x, section[i + 1]! + x);
      this.#widest[row] = widestBetween(taken, this.#from, this.#to);
    }
  }

  /** False where there is certainly no room for the orientation on the level. */
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

/** Puts a stretch where it belongs among those taken, by where they begin. */
function take(taken: number[], from: number, to: number): void {
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

function profileOf(orientation: Orientation): Profile {
  const known = profiles.get(orientation);
  if (known) return known;
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
  profiles.set(orientation, profile);
  return profile;
}

function sectionOf({ corners: { x, y, slope }, next }: Orientation, height: number): number[] {
  const crossings: number[] = [];
  for (let i = 0; i < x.length; i += 1) {
    const from = y[i]!;
    if (from <= height !== y[next[i]!]! <= height) crossings.push(x[i]! + (height - from) * slope[i]!);
  }
  return crossings.sort((a, b) => a - b);
}
