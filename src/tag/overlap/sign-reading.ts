/**
 * Finds where an apostrophe among letters lower than itself is no longer read as one: as an accent where its foot stands over a letter, as the stem of
 * the letter before (an “a” with it is a “d”), as a part of the letter that it lies against, and where it hardly rises above them.
 */

import { boundsOf } from '../../geometry/measure.ts';
import { clippedToBox } from '../../geometry/clip-to-box.ts';
import type { Point, Region } from '../../geometry/types.ts';
import { gapTo } from './marks.ts';
import type { MarkNeighbours, ScanLines } from './marks.ts';
import { lineAt, movedRuns, rowAt, topOf } from './runs.ts';
import type { Runs } from './runs.ts';

/** Share of a sign that is its foot. */
const footShare = 1 / 3;

/** In x-heights: where the sides of a small letter are looked at. */
const shoulders = [0.6, 1] as const;

/** Nearer than this, in x-heights, a sign and a letter are one; so much of its height may be. */
const merged = { nearer: 0.06, free: 0.3 } as const;

/** A sign rises so far above the letters beside it, in x-heights; those taller than `tallest` are none that it rises above. */
const rise = { least: 0.3, tallest: 1.3 } as const;

/** Costs per x-height over a letter or too low, of each share that has merged, and of touching the letter before. */
const costs = { inside: 3, low: 1, merged: 2, onBefore: 0.6 } as const;

/** Touching, in mm. */
const touchMm = 0.01;

export interface SignSides {
  readonly before: MarkNeighbours | undefined;
  /** Absent at the end of a word. */
  readonly after: MarkNeighbours | undefined;
}

export interface SignReading {
  /** How far its foot stands over a letter, in x-heights. */
  readonly inside: number;
  /** Which of the two it is nearer to being over. */
  readonly over: 'before' | 'after';
  /** Share of its height in which it is one with a letter. */
  readonly merged: number;
  /** In mm. */
  readonly cost: number;
}

/** The lower end of a sign: its y, and the x of its middle. */
export function footOf(sign: Region): Point {
  const box = boundsOf(sign)!;
  const low = boundsOf(clippedToBox(sign, { ...box, maxY: box.minY + footShare * (box.maxY - box.minY) })) ?? box;
  return { x: (low.minX + low.maxX) / 2, y: box.minY };
}

export function signReading(
  sign: ScanLines & { readonly base: Region },
  place: Point,
  { before, after }: SignSides,
  xHeight: number,
): SignReading {
  const foot = footOf(sign.base).x + place.x;
  const overBefore = before ? sideOf(before, 1, xHeight) - foot : -Infinity;
  const overAfter = after ? foot - sideOf(after, -1, xHeight) : -Infinity;
  const inside = Math.max(0, overBefore, overAfter);
  const near = [before, after].filter((each) => each !== undefined);
  const tops = near.map(({ rows }) => topOf(rows)).filter((top) => top < rise.tallest * xHeight);
  const low = Math.max(0, Math.max(...tops, xHeight) + rise.least * xHeight - (topOf(sign.rows) + place.y));
  const one = mergedShare(sign.rows, place, near, merged.nearer * xHeight);
  const isOnBefore = before !== undefined && gapTo([before], sign, place) <= touchMm;
  const shares = costs.merged * Math.max(0, one - merged.free) + (isOnBefore ? costs.onBefore : 0);
  const cost = costs.inside * inside + costs.low * low + shares * xHeight;
  return { inside: inside / xHeight, over: overAfter > overBefore ? 'after' : 'before', merged: one, cost };
}

/** The x at which a letter ends on that side, at the height of its shoulders. */
function sideOf({ rows, at }: MarkNeighbours, side: -1 | 1, xHeight: number): number {
  const [low, high] = shoulders.map((y) => rowAt(rows, y * xHeight - at.y)) as [number, number];
  const ends = Array.from({ length: high - low + 1 }, (_, k) => lineAt(rows, low + k)).flatMap((line) =>
    line.length === 0 ? [] : [side * (side > 0 ? line.at(-1)! : line[0]!)],
  );
  return at.x + side * Math.max(...ends);
}

function mergedShare(rows: Runs, { x, y }: Point, near: readonly MarkNeighbours[], nearer: number): number {
  const own = movedRuns(rows, Math.round(y / rows.pitch), 0);
  const isMerged = (line: readonly number[], row: number): boolean =>
    near.some(({ rows: others, at }) => {
      const other = lineAt(others, row - Math.round(at.y / others.pitch));
      const dx = at.x - x;
      return line.some(
        (from, i) =>
          i % 2 === 0 &&
          other.some((start, j) => {
            if (j % 2 === 1) return false;
            return Math.max(start + dx - line[i + 1]!, from - other[j + 1]! - dx) < nearer;
          }),
      );
    });
  return own.lines.filter((line, k) => isMerged(line, own.first + k)).length / own.lines.length;
}
