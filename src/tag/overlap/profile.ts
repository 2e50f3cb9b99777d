/** Distances of a letter from those before it, row by row, and how they would meet if it moved closer. */

import type { Runs } from './runs.ts';
import { lineAt } from './runs.ts';

/** The rows of something, shifted right by `dx` mm. */
export interface ShiftedRows {
  readonly rows: Runs;
  readonly dx: number;
}

export interface Profile {
  readonly pitch: number;
  readonly first: number;
  /** By row: free space between the nearest runs in mm, negative if they overlap, Infinity if one side is empty. */
  readonly gaps: readonly number[];
  /** By row: x at which the left side ends. */
  readonly edges: readonly number[];
  /** By row: how far the right side may overlap before one passes through the stroke of the other. */
  readonly depths: readonly number[];
}

/** A stretch of rows in which two letters meet. */
export interface Contact {
  /** Indices of the first and last row. */
  readonly from: number;
  readonly to: number;
  /** Distance between the crossings of the outlines, in mm. */
  readonly chord: number;
}

/** Share of a stroke that may be overlapped if there is a counter or another stroke behind it. */
const strokeShare = 0.7;

export function profileOf(left: readonly ShiftedRows[], right: ShiftedRows): Profile {
  const { pitch, first, lines } = right.rows;
  const gaps: number[] = [];
  const edges: number[] = [];
  const depths: number[] = [];
  lines.forEach((runs, index) => {
    let gap = Infinity;
    let edge = 0;
    let depth = Infinity;
    for (const { rows, dx } of left) {
      const line = lineAt(rows, first + index);
      for (let i = 0; i < line.length; i += 2) {
        const [from, to] = [line[i]! + dx, line[i + 1]! + dx];
        for (let j = 0; j < runs.length; j += 2) {
          const [start, end] = [runs[j]! + right.dx, runs[j + 1]! + right.dx];
          if (from + to > start + end || start - to >= gap) continue;
          gap = start - to;
          edge = to;
          depth = Math.min(
            i > 0 ? strokeShare * (to - from) : Infinity,
            j + 2 < runs.length ? strokeShare * (end - start) : Infinity,
          );
        }
      }
    }
    gaps.push(gap);
    edges.push(edge);
    depths.push(depth);
  });
  return { pitch, first, gaps, edges, depths };
}

/** Distance that the right side can move before they touch, in mm; negative if they overlap. */
export function touching({ gaps }: Profile): number {
  return gaps.reduce((least, gap) => Math.min(least, gap), Infinity);
}

/** The longest contact once the right side has moved `shift` mm closer. */
export function contactAt({ pitch, first, gaps, edges }: Profile, shift: number): Contact | undefined {
  let best: Contact | undefined;
  let from = -1;
  for (let row = 0; row <= gaps.length; row++) {
    const meets = row < gaps.length && gaps[row]! < shift;
    if (meets && from < 0) from = row;
    if (meets || from < 0) continue;
    const chord = Math.hypot((row - from) * pitch, edges[row - 1]! - edges[from]!);
    if (!best || chord > best.chord) best = { from: first + from, to: first + row - 1, chord };
    from = -1;
  }
  return best;
}

/** Whether a shift passes through no stroke. */
export function sparesStrokes({ gaps, depths }: Profile, shift: number): boolean {
  return gaps.every((gap, row) => shift - gap <= depths[row]!);
}
