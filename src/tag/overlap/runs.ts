/** The stretches of a region on parallel lines: cheap to shift along them, and cheap to compare. */

import type { Point, Region } from '../../geometry/types.ts';

export interface Runs {
  /** Distance between the lines in mm; line `k` is at (k + ½) · pitch. */
  readonly pitch: number;
  /** Number of the first line. */
  readonly first: number;
  /** The material on each line as [from, to, from, to, …], ascending, in mm. */
  readonly lines: readonly (readonly number[])[];
}

/** Most lines, more than any lettering needs; the rest of a taller region is ignored. */
const mostLines = 4000;

/** Runs along x, on lines one above the other. */
export function rowsOf(region: Region, pitch: number): Runs {
  return scanlineRuns(
    region,
    pitch,
    ({ x }) => x,
    ({ y }) => y,
  );
}

/** Runs along y, on lines from left to right. */
export function columnsOf(region: Region, pitch: number): Runs {
  return scanlineRuns(
    region,
    pitch,
    ({ y }) => y,
    ({ x }) => x,
  );
}

/** Number of the line nearest to a height, in mm. */
export function rowAt({ pitch }: Pick<Runs, 'pitch'>, y: number): number {
  return Math.round(y / pitch - 0.5);
}

/** The runs of line `k`; none outside the region. */
export function lineAt({ first, lines }: Runs, k: number): readonly number[] {
  return lines[k - first] ?? [];
}

/** Where its last line ends, in mm. */
export function topOf({ first, lines, pitch }: Runs): number {
  return (first + lines.length) * pitch;
}

/** The runs moved across by whole lines, and along them by mm. */
export function movedRuns({ pitch, first, lines }: Runs, across: number, along: number): Runs {
  return {
    pitch,
    first: first + across,
    lines: along === 0 ? lines : lines.map((line) => line.map((at) => at + along)),
  };
}

/** The least free space between two on any line they share, negative if they overlap; Infinity if they share none. */
export function nearest(one: Runs, other: Runs): number {
  let least = Infinity;
  const last = Math.min(one.first + one.lines.length, other.first + other.lines.length);
  for (let k = Math.max(one.first, other.first); k < last; k++) {
    const own = one.lines[k - one.first]!;
    const line = other.lines[k - other.first]!;
    for (let i = 0; i < own.length; i += 2) {
      for (let j = 0; j < line.length; j += 2) {
        least = Math.min(least, Math.max(line[j]! - own[i + 1]!, own[i]! - line[j + 1]!));
      }
    }
  }
  return least;
}

function scanlineRuns(region: Region, pitch: number, along: (p: Point) => number, across: (p: Point) => number): Runs {
  let low = Infinity;
  let high = -Infinity;
  for (const ring of region) {
    for (const point of ring) {
      low = Math.min(low, across(point));
      high = Math.max(high, across(point));
    }
  }
  if (low > high) return { pitch, first: 0, lines: [] };
  const first = Math.ceil(low / pitch - 0.5);
  const last = Math.min(Math.floor(high / pitch - 0.5), first + mostLines);
  const lines: number[][] = Array.from({ length: Math.max(0, last - first + 1) }, () => []);
  for (const ring of region) {
    let a = ring[ring.length - 1]!;
    for (const b of ring) {
      const [ya, yb] = [across(a), across(b)];
      const from = Math.ceil(Math.min(ya, yb) / pitch - 0.5);
      const to = Math.ceil(Math.max(ya, yb) / pitch - 0.5);
      for (let k = Math.max(from, first); k < to && k <= last; k++) {
        const t = ((k + 0.5) * pitch - ya) / (yb - ya);
        lines[k - first]!.push(along(a) + t * (along(b) - along(a)));
      }
      a = b;
    }
  }
  for (const line of lines) line.sort((p, q) => p - q);
  return { pitch, first, lines };
}
