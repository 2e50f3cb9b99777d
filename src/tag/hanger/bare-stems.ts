/**
 * The stems of a letter: upright or leaning strokes with nothing beside them. What a ring on the end of one, or on its side, makes of the letter
 * depends on how much of it is bare.
 */

import { transform, translation } from '../../geometry/affine.ts';
import { boundsOf } from '../../geometry/measure.ts';
import type { Point, Region } from '../../geometry/types.ts';
import { rowsOf } from '../overlap/runs.ts';

/** A stretch of a stroke, from row to row. */
export interface BareStem {
  /** The middles of its rows, from its foot up. */
  readonly middles: readonly Point[];
  readonly width: number;
  /** Where its stroke ends above, serifs and flags included; `undefined` if it goes on into another one. */
  readonly head?: Head | undefined;
  /** Whether the letter has no other ink at its height, but for its lowest rows. */
  readonly isAlone: boolean;
}

interface Head {
  readonly top: number;
  readonly from: number;
  readonly to: number;
}

/** A letter is seen in so many rows. */
const rows = 40;

/** A stem is no wider than this share of the height of its letter, and from row to row within so many times its mean width. */
const widest = 0.36;
const evenness = 1.7;

/** Serifs and flags are as high as this share of the letter's height, and count to the stem that they end. */
const serif = 0.16;

interface Run {
  readonly from: number;
  readonly to: number;
}

const made = new WeakMap<Region, readonly BareStem[]>();

/** In the scale of the letter. */
export function bareStemsOf(letter: Region): readonly BareStem[] {
  const stems = made.get(letter) ?? madeStems(letter);
  made.set(letter, stems);
  return stems;
}

function madeStems(letter: Region): BareStem[] {
  const { minY, maxY } = boundsOf(letter)!;
  const side = (maxY - minY) / rows;
  const lines = rowsOf(transform(letter, translation(0, -minY)), side).lines.map((xs) => runsOf(xs, side));
  const middleY = (row: number): number => minY + (row + 0.5) * side;
  const meets = (a: Run, b: Run): boolean => a.from < b.to && b.from < a.to;
  const on = (row: number, run: Run): Run[] => (lines[row] ?? []).filter((each) => meets(each, run));
  const found: BareStem[] = [];
  const taken = new Set<Run>();
  lines.forEach((line, row) => {
    for (const run of line) {
      if (taken.has(run) || run.to - run.from > widest * rows * side) continue;
      const chain = [run];
      let sum = run.to - run.from;
      // Upwards only, as rows are taken from the foot up.
      let top = row;
      for (;;) {
        const next = on(top + 1, chain.at(-1)!);
        const [only] = next;
        if (next.length !== 1 || on(top, only!).length !== 1) break;
        const width = only!.to - only!.from;
        const mean = sum / chain.length;
        if (width > evenness * mean || mean > evenness * width) break;
        chain.push(only!);
        sum += width;
        top++;
      }
      for (const each of chain) taken.add(each);
      if (chain.length < 4) continue;
      const widths = chain.map((each) => each.to - each.from).sort((a, b) => a - b);
      found.push({
        middles: chain.map((each, index) => ({ x: (each.from + each.to) / 2, y: middleY(row + index) })),
        width: widths[widths.length >> 1]!,
        head: headOf(top, chain.at(-1)!),
        isAlone: lines.slice(row + Math.round(serif * rows), top).every((each) => each.length === 1),
      });
    }
  });
  return found;

  /** Whether a run is part of a stroke, and no tip of a serif. */
  function comesFromBelow(from: number, run: Run): boolean {
    let last = run;
    for (let row = from - 1; row >= from - serif * rows; row--) {
      const [next] = on(row, last);
      if (!next) return false;
      last = next;
    }
    return true;
  }

  /** Where the stroke ends above this row, if that is no more than a serif. */
  function headOf(from: number, run: Run): Head | undefined {
    let last: readonly Run[] = [run];
    let [left, right] = [run.from, run.to];
    for (let step = 1; step <= serif * rows + 1; step++) {
      const next = (lines[from + step] ?? []).filter((each) => last.some((before) => meets(each, before)));
      if (next.length === 0) return { top: minY + (from + step) * side, from: left, to: right };
      // Another stroke that comes up there makes it no end of this one.
      const others = next.flatMap((each) => on(from + step - 1, each)).filter((below) => !last.includes(below));
      if (others.some((other) => comesFromBelow(from + step - 1, other))) return undefined;
      last = next;
      [left, right] = [Math.min(...next.map((each) => each.from)), Math.max(...next.map((each) => each.to))];
    }
    return undefined;
  }
}

/** The runs of a row; gaps narrower than that are nicks of a rough outline. */
function runsOf(xs: readonly number[], leastGap: number): Run[] {
  const runs: { from: number; to: number }[] = [];
  for (let i = 0; i + 1 < xs.length; i += 2) {
    const last = runs.at(-1);
    if (last && xs[i]! - last.to < leastGap) last.to = xs[i + 1]!;
    else runs.push({ from: xs[i]!, to: xs[i + 1]! });
  }
  return runs;
}
