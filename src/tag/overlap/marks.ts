/** Dots and accents, brought near to their letter and held by upright posts. */

import { translation, transform } from '../../geometry/affine.ts';
import { boundsOf } from '../../geometry/measure.ts';
import type { Bounds, Point, Region } from '../../geometry/types.ts';
import type { Measures } from './measures.ts';
import { bestPost, clearance, ease } from './post.ts';
import type { Post } from './post.ts';
import type { Runs } from './runs.ts';
import { columnsOf, lineAt, movedRuns } from './runs.ts';

export interface PlacedMark {
  readonly move: Point;
  /** As moved. */
  readonly region: Region;
  /** None where nothing of the letter is below or above it. */
  readonly post?: Post;
}

/** What is left between a mark and its letter, in x-heights: a mark that comes nearer melts into it. */
const markGap = 0.13;

/** Marks side by side keep this distance, in x-heights. */
const besideGap = 0.12;

/** How far one mark may be set aside for its post, in x-heights. */
const asideReach = 0.2;

/** What is left between two dots on one post, as a share of the web. */
const pairGap = 0.5;

/** Costs of setting a mark aside, as shares of the way. */
const asideCost = 0.8;

/** `base` and `marks` as they will be once grown, in place, the nearest mark first; what is placed comes in the same order. */
export function placeMarks(base: Region, marks: readonly Region[], measures: Measures): PlacedMark[] {
  const placed = new Map<Region, PlacedMark>();
  let below: Region = base;
  for (const group of byLevel(marks)) {
    const own = placeGroup(below, group, measures);
    group.forEach((mark, index) => placed.set(mark, own[index]!));
    below = [...below, ...own.flatMap(({ region }) => [...region])];
  }
  return marks.map((mark) => placed.get(mark)!);
}

/** Marks next to each other at one height are moved as one. */
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

interface Placing {
  readonly cost: number;
  readonly marks: PlacedMark[];
}

function placeGroup(base: Region, marks: readonly Region[], measures: Measures): PlacedMark[] {
  const { pitch, xHeight } = measures;
  const columns = columnsOf(base, pitch);
  const own = marks.map((mark) => columnsOf(mark, pitch));
  const baseBox = boundsOf(base)!;
  const box = boundsOf(marks.flat())!;
  const above = box.minY + box.maxY > baseBox.minY + baseBox.maxY;
  const gaps = own.map((mark) => (above ? clearance(mark, columns) : clearance(columns, mark)));
  const nearest = Math.min(...gaps);
  const level = Number.isFinite(nearest) ? nearest : Math.max(box.minY - baseBox.maxY, baseBox.minY - box.maxY);
  const dy = (above ? -1 : 1) * Math.max(0, level - markGap * xHeight);
  const shifts = asides(own, measures);
  const pair = above && own.length === 2 ? onOnePost(marks, columns, dy, measures) : undefined;
  let best = pair;
  for (const shift of shifts) {
    const moved = own.map((mark, index) => movedRuns(mark, shift[index]!, dy));
    const posts = moved.map((mark, index) =>
      postFor(mark, columns, above, measures, middleX(marks[index]!) + shift[index]! * pitch),
    );
    const cost = posts.reduce(
      (sum, post, index) => sum + (post?.cost ?? xHeight) + asideCost * Math.abs(shift[index]!) * pitch,
      0,
    );
    if (best && cost >= best.cost) continue;
    best = {
      cost,
      marks: marks.map((mark, index): PlacedMark => {
        const move = { x: shift[index]! * pitch, y: dy };
        const post = posts[index];
        return { move, region: transform(mark, translation(move.x, move.y)), ...(post ? { post } : {}) };
      }),
    };
  }
  return best!.marks;
}

/** Two dots drawn together on either side of one post: where what they stand on is no wider than the post. */
function onOnePost(
  marks: readonly Region[],
  columns: Runs,
  dy: number,
  { pitch, web, xHeight }: Measures,
): Placing | undefined {
  const [left, right] = marks.map((mark) => boundsOf(mark)!);
  const gap = right!.minX - left!.maxX;
  const inwards = Math.max(0, Math.round((gap - pairGap * web) / 2 / pitch));
  const level = Math.min(left!.minY + left!.maxY, right!.minY + right!.maxY) / 2 + dy;
  let best: Placing | undefined;
  // The pair may be set over the middle of a stem that leans away.
  const reach = Math.round((asideReach * xHeight) / pitch);
  for (let aside = -reach; aside <= reach; aside++) {
    const x = (left!.maxX + right!.minX) / 2 + aside * pitch;
    const count = Math.round((ease * web) / pitch);
    const first = Math.round(x / pitch - count / 2);
    const tops = Array.from({ length: count }, (_, k) => lineAt(columns, first + k).at(-1)).filter(
      (top) => top !== undefined,
    );
    const [low, high] = [Math.min(...tops), Math.max(...tops)];
    if (tops.length < count || high > level) continue;
    const cost = 2 * (level - low) + asideCost * Math.abs(aside) * pitch + 2 * asideCost * inwards * pitch;
    if (best && cost >= best.cost) continue;
    const post = { x, bottom: low, top: level, gap: level - high, cost };
    best = {
      cost,
      marks: marks.map((mark, index): PlacedMark => {
        const move = { x: (aside + (index === 0 ? inwards : -inwards)) * pitch, y: dy };
        return { move, region: transform(mark, translation(move.x, move.y)), ...(index === 0 ? { post } : {}) };
      }),
    };
  }
  return best;
}

function postFor(mark: Runs, base: Runs, above: boolean, { web }: Measures, x: number): Post | undefined {
  return above ? bestPost(mark, base, web, x) : bestPost(base, mark, web, x);
}

function middleX(region: Region): number {
  const box = boundsOf(region)!;
  return (box.minX + box.maxX) / 2;
}

/** By how many columns each of the marks could be set aside: one either way, a pair towards each other. */
function asides(marks: readonly Runs[], { pitch, xHeight }: Measures): number[][] {
  if (marks.length === 1) {
    const reach = Math.round((asideReach * xHeight) / pitch);
    return Array.from({ length: reach + 1 }, (_, k) => (k === 0 ? [[0]] : [[-k], [k]])).flat();
  }
  if (marks.length !== 2) return [marks.map(() => 0)];
  const [left, right] = marks;
  const room = (right!.first - left!.first - left!.lines.length) * pitch - besideGap * xHeight;
  const reach = Math.max(0, Math.floor(room / 2 / pitch));
  return Array.from({ length: reach + 1 }, (_, k) => [k, -k]);
}
