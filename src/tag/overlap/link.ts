/** Strokes from the foot of a letter up into the next, as a pen draws them where a script joins by itself. */

import { strokesAlong } from '../../geometry/strokes.ts';
import type { Line, Point } from '../../geometry/types.ts';
import type { FootBar } from './bars.ts';
import type { Measures } from './measures.ts';
import { ease } from './post.ts';
import type { Profile } from './profile.ts';
import { rowAt } from './runs.ts';
import { shares } from './shares.ts';

/** How steeply a link rises, end to end: between letters, and between words, which are further apart. Our own judgement, as the next. */
const slopes = { letters: 0.6, words: 0.3 } as const;

/** The highest foot that a link leaves, in x-heights, and the cost of that height in lengths. */
const foot = { highest: 0.35, cost: 0.8 } as const;

/** Reach of a link into the letters, in webs. */
const into = 0.6;

/** Chords of its curve. */
const chords = 16;

/** The shortest and lowest link; `undefined` if no straight way is free. */
export function linkBetween(
  profile: Profile,
  shift: number,
  measures: Measures,
  between: keyof typeof slopes,
): FootBar | undefined {
  const { web, xHeight } = measures;
  const way = straightWay(profile, shift, measures, slopes[between]);
  if (!way) return undefined;
  const { from, to } = way;
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const region = strokesAlong([penStroke(from, to, into * web)], ease * web);
  return { region, length, isLong: length > shares.longLink * xHeight };
}

interface Way {
  readonly from: Point;
  readonly to: Point;
}

/** The best of the straight ways that rise by `slope` from the left side to the right one. */
function straightWay(
  { gaps, edges, first, pitch }: Profile,
  shift: number,
  { web, xHeight }: Measures,
  slope: number,
): Way | undefined {
  const index = (y: number): number => rowAt({ pitch }, y) - first;
  const heightOf = (row: number): number => (row + first + 0.5) * pitch;
  const lowest = (ease * web) / 2;
  let best: Way | undefined;
  let least = Infinity;
  for (let row = Math.max(0, index(lowest)); row <= index(lowest + foot.highest * xHeight); row++) {
    if (!Number.isFinite(gaps[row] ?? Infinity)) continue;
    const from = { x: edges[row]!, y: heightOf(row) };
    for (let end = row; Number.isFinite(gaps[end] ?? Infinity); end++) {
      const x = from.x + (heightOf(end) - from.y) / slope;
      // Something of the left letter is in the way.
      if (edges[end]! > x + pitch) break;
      const to = { x: edges[end]! + gaps[end]! - shift, y: heightOf(end) };
      if (to.x > x) continue;
      const cost = Math.hypot(to.x - from.x, to.y - from.y) + foot.cost * from.y;
      if (cost < least) [best, least] = [{ from, to }, cost];
      break;
    }
  }
  return best;
}

/** A curve that leaves level and ends twice as steep as it rises on the whole, `sink` mm within what it joins. */
function penStroke(from: Point, to: Point, sink: number): Line {
  const bend = { x: (from.x + to.x) / 2, y: from.y };
  const steep = Math.hypot(to.x - bend.x, to.y - bend.y) || 1;
  const curve = Array.from({ length: chords + 1 }, (_, k): Point => {
    const t = k / chords;
    const on = (start: number, middle: number, end: number): number =>
      (1 - t) ** 2 * start + 2 * t * (1 - t) * middle + t ** 2 * end;
    return { x: on(from.x, bend.x, to.x), y: on(from.y, bend.y, to.y) };
  });
  const end = { x: to.x + (sink * (to.x - bend.x)) / steep, y: to.y + (sink * (to.y - bend.y)) / steep };
  return [{ x: from.x - sink, y: from.y }, ...curve, end];
}
