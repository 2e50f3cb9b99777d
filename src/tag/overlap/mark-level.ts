/** How far the marks of a letter are drawn in to it. */

import { clippedToBox } from '../../geometry/clip-to-box.ts';
import { area, boundsOf } from '../../geometry/measure.ts';
import type { Bounds, Region } from '../../geometry/types.ts';
import type { Measures } from './measures.ts';
import { clearance } from './post.ts';
import type { Runs } from './runs.ts';
import { lineAt, movedRuns, rowsOf } from './runs.ts';

/** Distance between a mark and its letter, in x-heights: nearer, they would merge. */
const markGap = 0.13;

/**
 * Two dots side by side are told from what they stand on, and on a post each they are two more strokes: they are sunk
 * into their letter by so much, in x-heights, but by no more than this share of their height.
 */
const sunkPair = { depth: 0.06, most: 0.25 } as const;

/**
 * Two dots side by side stand off a stem that is narrower than this share of their width, so far below them, in x-heights: sunk into it they make
 * a “τ” of an “ï”. Beside the point of an Ä there is room for them. By eye, and by an independent reader.
 */
const twig = { narrow: 0.6, depths: [0.1, 0.3] } as const;

/**
 * A mark that stands on a point in its middle (a caron, a breve, a ring) would make a “Y” with a post: a stroke of less than this share of its
 * box, whose lowest quarter is no wider than the second and no further from the middle than the third. It is sunk until it is as wide as the web, by no
 * more than the last share of its height. Our own judgement, by eye.
 */
const pointed = { solid: 0.7, narrow: 0.8, ring: 0.95, aside: 0.12, most: 0.3 } as const;

/** A tip of a stroke under a dot, looked at so far below it, in x-heights: it is less than `widest` times as wide and covers this share of it. */
const tip = { depth: 0.1, widest: 1.5, covered: 0.7 } as const;

/** Largest lean of a mark off its letter in a slanted face, in mm per mm of its height. */
const mostLean = 0.7;

/** How much nearer a mark may come to its letter by that lean, in x-heights. */
const leanSlack = markGap / 2;

/** Depth below its highest point that counts as the top of a letter, in x-heights. */
const topShare = 0.06;

/** A letter whose top below its marks is further down than this, in x-heights, is open there. */
const deepest = 0.12;

export interface MarkLevel {
  /** Whether the marks are above the letter. */
  readonly above: boolean;
  /** Whether there is nothing of the letter near below the marks: only its stems come up beside them. */
  readonly isOpen: boolean;
  /** Whether two dots have nothing below them but one stem that is narrower than they. */
  readonly isOnStem: boolean;
  /** In mm per mm of height. */
  readonly lean: number;
  /** The way up, in mm; negative down. */
  readonly whole: number;
}

/** `marks` are side by side; `columns` are those of the letter and of each mark. */
export function levelOf(
  base: Region,
  columns: Runs,
  { marks, columns: own }: { readonly marks: readonly Region[]; readonly columns: readonly Runs[] },
  measures: Measures,
): MarkLevel {
  const { xHeight } = measures;
  const baseBox = boundsOf(base)!;
  const box = boundsOf(marks.flat())!;
  const above = box.minY + box.maxY > baseBox.minY + baseBox.maxY;
  const lean = above ? leanOf(base, box, measures) : 0;
  const gaps = own.map((mark) => (above ? clearance(mark, columns) : clearance(columns, mark)));
  const nearestGap = Math.min(...gaps);
  const apart = Math.max(box.minY - baseBox.maxY, baseBox.minY - box.maxY);
  // Above an open letter such as u, there is nothing below the marks but its bowl: they stay at its top, on its stems.
  const isOpen = above && clearance(spanOf(own, box), columns) > apart + deepest * xHeight;
  const level = isOpen || !Number.isFinite(nearestGap) ? apart : nearestGap;
  const onStem = above && marks.length === 2 && isOnStem(base, marks, level, measures);
  const gap = above && !onStem ? gapAbove(base, marks, { level, lean }, measures) : markGap * xHeight;
  const way = Math.max(0, level - gap);
  const whole = above ? -wayAlong(lean, way, own, columns, gap - leanSlack * xHeight) : way;
  return { above, isOpen, isOnStem: onStem, lean, whole };
}

/** The distance of marks above their letter; negative where they are sunk into it. */
function gapAbove(
  base: Region,
  marks: readonly Region[],
  at: { readonly level: number; readonly lean: number },
  measures: Measures,
): number {
  const [only, second] = marks;
  if (only && !second && isPointed(only)) return -pointDepth(only, measures);
  if (marks.length === 2 && !isOnTips(base, marks, at, measures)) return -sunkBy(marks, measures);
  return markGap * measures.xHeight;
}

function isPointed(mark: Region): boolean {
  const box = boundsOf(mark)!;
  const [wide, high] = [box.maxX - box.minX, box.maxY - box.minY];
  if (area(mark) > pointed.solid * wide * high) return false;
  const { minX, maxX } = boundsOf(clippedToBox(mark, { ...box, maxY: box.minY + high / 4 })) ?? box;
  const narrow = mark.length > 1 ? pointed.ring : pointed.narrow;
  return maxX - minX < narrow * wide && Math.abs(minX + maxX - box.minX - box.maxX) < 2 * pointed.aside * wide;
}

/** The height above its lowest point at which it is as wide as the web. */
function pointDepth(mark: Region, { web, pitch }: Measures): number {
  const { lines } = rowsOf(mark, pitch);
  const row = lines.findIndex((line) => line.at(-1)! - line[0]! >= web);
  return Math.min(row, pointed.most * lines.length) * pitch;
}

/** A mark as it is; several as a bar from middle to middle, as their outer edges may be above the stems of an open letter. */
function spanOf(marks: readonly Runs[], { minY, maxY }: Bounds): Runs {
  const [left, right] = [marks[0]!, marks.at(-1)!];
  if (left === right) return left;
  const [first, last] = [left, right].map((mark) => mark.first + Math.floor(mark.lines.length / 2));
  return { pitch: left.pitch, first: first!, lines: Array.from({ length: last! - first! }, () => [minY, maxY]) };
}

/** How far marks may be lowered along a lean: beside the top of a stem there is more below them than where they come to. */
function wayAlong(lean: number, way: number, marks: readonly Runs[], letter: Runs, least: number): number {
  const { pitch } = letter;
  const isFree = (down: number): boolean => {
    const along = -Math.round((lean * down) / pitch);
    return marks.every((mark) => clearance(movedRuns(mark, along, -down), letter) >= least);
  };
  let free = way;
  while (free > 0 && !isFree(free)) free -= pitch;
  return Math.max(0, free);
}

/** @param level Of the dots above it, in mm. */
function isOnStem(base: Region, dots: readonly Region[], level: number, { pitch, xHeight }: Measures): boolean {
  const { minX, maxX, minY } = boundsOf(dots.flat())!;
  const rows = rowsOf(base, pitch);
  return twig.depths.every((depth) => {
    const runs = lineAt(rows, Math.floor((minY - level - depth * xHeight) / pitch));
    return runs.length === 2 && runs[1]! - runs[0]! < twig.narrow * (maxX - minX);
  });
}

/** Whether dots would lie on the tips of strokes no wider than they are: sunk into those, they would make them longer, and no more. */
function isOnTips(
  base: Region,
  dots: readonly Region[],
  { level, lean }: { readonly level: number; readonly lean: number },
  { pitch, xHeight }: Measures,
): boolean {
  const rows = rowsOf(base, pitch);
  return dots.some((dot) => {
    const { minX, maxX, minY } = boundsOf(dot)!;
    const wide = maxX - minX;
    const row = Math.floor((minY - level - tip.depth * xHeight) / pitch);
    const aside = lean * level;
    const [left, right] = [minX - aside, maxX - aside];
    const runs = lineAt(rows, row);
    return runs.some((from, index) => {
      if (index % 2 === 1) return false;
      const to = runs[index + 1]!;
      const covered = Math.min(to, right) - Math.max(from, left);
      return covered > tip.covered * wide && to - from < tip.widest * wide;
    });
  });
}

function sunkBy(pair: readonly Region[], { xHeight }: Measures): number {
  const heights = pair.map((dot) => boundsOf(dot)!).map(({ minY, maxY }) => maxY - minY);
  return Math.min(sunkPair.depth * xHeight, sunkPair.most * Math.min(...heights));
}

/** The lean of a mark off the top of its letter, in mm per mm of height: in a slanted face, it follows the stem. */
function leanOf(base: Region, mark: Bounds, { pitch, xHeight }: Measures): number {
  const rows = rowsOf(base, pitch);
  const top = (rows.first + rows.lines.length) * pitch;
  const ends = rows.lines.slice(-Math.max(1, Math.round((topShare * xHeight) / pitch))).flat();
  const up = (mark.minY + mark.maxY) / 2 - top;
  if (ends.length === 0 || up <= 0) return 0;
  const aside = (mark.minX + mark.maxX) / 2 - (Math.min(...ends) + Math.max(...ends)) / 2;
  return Math.max(-mostLean, Math.min(mostLean, aside / up));
}
