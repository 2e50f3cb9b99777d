/** Dots and accents, brought near to their letter and held by upright posts, or by the letter itself. */

import { translation, transform } from '../../geometry/affine.ts';
import { boundsOf } from '../../geometry/measure.ts';
import type { Bounds, Point, Region } from '../../geometry/types.ts';
import { besideLetter } from './beside-marks.ts';
import { postBar } from './bars.ts';
import type { Measures } from './measures.ts';
import { levelOf } from './mark-level.ts';
import { bestPost, ease } from './post.ts';
import type { Post } from './post.ts';
import type { Runs } from './runs.ts';
import { columnsOf, lineAt, movedRuns, nearest, rowsOf } from './runs.ts';
import { shares } from './shares.ts';

export interface PlacedMark {
  readonly move: Point;
  /** The mark after the move. */
  readonly region: Region;
  /** The post or the bar that holds it, as grown; absent if it holds by itself, or nothing of the letter is near it. */
  readonly held?: Region;
}

/** Distance between marks side by side, in x-heights. */
export const besideGap = 0.12;

/** Limit for moving a single mark sideways for its post, in x-heights. */
const asideReach = 0.2;

/** Limit for moving marks of an open letter over its stems, in x-heights. */
const stemReach = 0.45;

/** Distance between two dots on one post, as a share of the web. */
const pairGap = 0.85;

/** Cost of moving a mark sideways, as a share of the way. */
const asideCost = 0.8;

/** The same above an open letter, whose stems are at its sides. */
const toStemCost = 0.25;

/** Cost of a mark's shortfall in distance from the neighbours of its letter, as a multiple of it. */
const crowdedCost = 4;

/**
 * For a mark too near to a neighbour: how far it is moved sideways and in what steps, in x-heights, and how far it is
 * drawn in, as shares of the way.
 */
const crowded = { reach: 0.4, step: 0.033, levels: [1, 0.5, 0] } as const;

/** A shape by its rows and its columns. */
export interface ScanLines {
  readonly rows: Runs;
  readonly columns: Runs;
}

/** A neighbour of a letter: another letter or its marks, and its origin relative to that of the letter. */
export interface MarkNeighbours extends ScanLines {
  readonly at: Point;
}

/** The least distance of a moved mark from its neighbours, along a row or a column. */
export function gapTo(beside: readonly MarkNeighbours[], { rows, columns }: ScanLines, move: Point): number {
  const { pitch } = rows;
  return beside.reduce((least, { rows: otherRows, columns: otherColumns, at }) => {
    const [x, y] = [move.x - at.x, move.y - at.y];
    const alongRows = nearest(movedRuns(rows, Math.round(y / pitch), x), otherRows);
    return Math.min(least, alongRows, nearest(movedRuns(columns, Math.round(x / pitch), y), otherColumns));
  }, Infinity);
}

/** Places marks. `base` and `marks` are grown and in place, the nearest mark first; the results have the same order. */
export function placeMarks(
  base: Region,
  marks: readonly Region[],
  measures: Measures,
  beside: readonly MarkNeighbours[] = [],
): PlacedMark[] {
  const placed = new Map<Region, PlacedMark>();
  let below: Region = base;
  for (const group of byLevel(marks)) {
    const own = placeGroup(below, group, measures, beside);
    group.forEach((mark, index) => placed.set(mark, own[index]!));
    below = [...below, ...own.flatMap(({ region }) => [...region])];
  }
  return marks.map((mark) => placed.get(mark)!);
}

/** Groups neighbouring marks at one height, which are moved as one. */
function byLevel(marks: readonly Region[]): Region[][] {
  const groups: { readonly box: Bounds; readonly members: Region[] }[] = [];
  for (const mark of marks) {
    const box = boundsOf(mark)!;
    const level = groups.find((group) => {
      const shared = Math.min(box.maxY, group.box.maxY) - Math.max(box.minY, group.box.minY);
      return shared > Math.min(box.maxY - box.minY, group.box.maxY - group.box.minY) / 2;
    });
    if (level) level.members.push(mark);
    else groups.push({ box, members: [mark] });
  }
  return groups.map(({ members }) => members.sort((a, b) => boundsOf(a)!.minX - boundsOf(b)!.minX));
}

interface MarkPlacing {
  readonly cost: number;
  readonly marks: PlacedMark[];
}

function placeGroup(
  base: Region,
  marks: readonly Region[],
  measures: Measures,
  beside: readonly MarkNeighbours[],
): PlacedMark[] {
  const { pitch, xHeight } = measures;
  const atSide = marks.length === 1 ? besideLetter(base, marks[0]!, measures) : undefined;
  if (atSide) return [atSide];
  const columns = columnsOf(base, pitch);
  const own = marks.map((mark) => columnsOf(mark, pitch));
  const { above, isOpen, isOnStem, lean, whole } = levelOf(base, columns, { marks, columns: own }, measures);
  const lines = marks.map((mark, index): ScanLines => ({
    rows: beside.length > 0 ? rowsOf(mark, pitch) : own[index]!,
    columns: own[index]!,
  }));
  const lacking = (moves: readonly Point[]): number => {
    if (beside.length === 0) return 0;
    const gap = Math.min(...moves.map((move, index) => gapTo(beside, lines[index]!, move)));
    return crowdedCost * Math.max(0, shares.markGap * xHeight - gap);
  };
  const sideCost = isOpen ? toStemCost : asideCost;
  let best: MarkPlacing | undefined;
  for (const share of beside.length > 0 ? crowded.levels : [1]) {
    const dy = share * whole;
    // Along the slant of the letter, so that a mark stays above its stem.
    const along = Math.round((lean * dy) / pitch);
    const pair = above && own.length === 2 ? onOnePost(marks, columns, { along, dy }, measures) : undefined;
    if (pair) {
      const cost = pair.cost + lacking(pair.marks.map(({ move }) => move));
      if (!best || cost < best.cost) best = { ...pair, cost };
      // A post for each would rise at the edges of the stem.
      if (isOnStem) continue;
    }
    for (const aside of sideShifts(own, measures, { isCrowded: beside.length > 0, isOpen })) {
      const shift = aside.map((each) => each + along);
      const moves = shift.map((each) => ({ x: each * pitch, y: dy }));
      let cost = aside.reduce((sum, each) => sum + sideCost * Math.abs(each) * pitch, lacking(moves));
      if (best && cost >= best.cost) continue;
      const posts = own.map((mark, index) =>
        postFor(
          movedRuns(mark, shift[index]!, dy),
          columns,
          above,
          measures,
          middleX(marks[index]!) + shift[index]! * pitch,
        ),
      );
      // A mark that is only half above a stem would get a post that rises beside it like a horn.
      cost += posts.reduce(
        (sum, post) => sum + (post ? post.cost + (isOpen || own.length > 1 ? post.sink : 0) : xHeight),
        0,
      );
      if (best && cost >= best.cost) continue;
      best = {
        cost,
        marks: marks.map((mark, index): PlacedMark => {
          const [move, post] = [moves[index]!, posts[index]];
          // What is sunk by more than half of the web holds by itself.
          const isHeld = post && post.gap < -measures.web / 2;
          const held = post && !isHeld ? { held: postBar(post, measures) } : {};
          return { move, region: transform(mark, translation(move.x, move.y)), ...held };
        }),
      };
    }
  }
  return best!.marks;
}

/** Two dots drawn together on either side of one post, where what they stand on is no wider than the post. */
function onOnePost(
  marks: readonly Region[],
  columns: Runs,
  { along, dy }: { readonly along: number; readonly dy: number },
  measures: Measures,
): MarkPlacing | undefined {
  const { pitch, web, xHeight } = measures;
  const [left, right] = marks.map((mark) => boundsOf(mark)!);
  const gap = right!.minX - left!.maxX;
  const inwards = Math.max(0, Math.round((gap - pairGap * web) / 2 / pitch));
  const level = Math.min(left!.minY + left!.maxY, right!.minY + right!.maxY) / 2 + dy;
  let best: MarkPlacing | undefined;
  // The pair may be moved over the middle of a stem that leans away.
  const reach = Math.round((asideReach * xHeight) / pitch);
  for (let aside = -reach; aside <= reach; aside++) {
    const x = (left!.maxX + right!.minX) / 2 + (along + aside) * pitch;
    const count = Math.round((ease * web) / pitch);
    const first = Math.round(x / pitch - count / 2);
    const tops = Array.from({ length: count }, (_, k) => lineAt(columns, first + k).at(-1)).filter(
      (top) => top !== undefined,
    );
    const [low, high] = [Math.min(...tops), Math.max(...tops)];
    if (tops.length < count || high > level) continue;
    const cost = 2 * (level - low) + asideCost * Math.abs(aside) * pitch + 2 * asideCost * inwards * pitch;
    if (best && cost >= best.cost) continue;
    const held = postBar({ x, bottom: low, top: level, gap: level - high, sink: 0, cost }, measures);
    best = {
      cost,
      marks: marks.map((mark, index): PlacedMark => {
        const move = { x: (along + aside + (index === 0 ? inwards : -inwards)) * pitch, y: dy };
        return { move, region: transform(mark, translation(move.x, move.y)), ...(index === 0 ? { held } : {}) };
      }),
    };
  }
  return best;
}

function postFor(mark: Runs, base: Runs, above: boolean, { web }: Measures, x: number): Post | undefined {
  return above ? bestPost(mark, base, web, x) : bestPost(base, mark, web, x);
}

export function middleX(region: Region): number {
  const box = boundsOf(region)!;
  return (box.minX + box.maxX) / 2;
}

/** Sideways moves to try for the marks, in columns: either way for one, towards each other for a pair, and apart above an open letter. */
function sideShifts(
  marks: readonly Runs[],
  { pitch, xHeight }: Measures,
  { isCrowded, isOpen }: { readonly isCrowded: boolean; readonly isOpen: boolean },
): number[][] {
  if (marks.length === 1) {
    const step = isCrowded ? Math.max(1, Math.round((crowded.step * xHeight) / pitch)) : 1;
    const most = Math.max(isCrowded ? crowded.reach : asideReach, isOpen ? stemReach : 0);
    const count = Math.round((most * xHeight) / pitch / step);
    return Array.from({ length: count + 1 }, (_, k) => (k === 0 ? [[0]] : [[-k * step], [k * step]])).flat();
  }
  if (marks.length !== 2) return [marks.map(() => 0)];
  const [left, right] = marks;
  const room = (right!.first - left!.first - left!.lines.length) * pitch - besideGap * xHeight;
  const reach = Math.max(0, Math.floor(room / 2 / pitch));
  const closer = Array.from({ length: reach + 1 }, (_, k) => [k, -k]);
  if (!isOpen) return closer;
  const further = Array.from({ length: Math.round((stemReach * xHeight) / pitch) }, (_, k) => [-k - 1, k + 1]);
  return [...closer, ...further];
}
