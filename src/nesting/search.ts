/**
 * Looking for a good order. Where a part goes follows from the order and from what it may be turned to, so that is all there is
 * to choose: first by size, in several ways, then by small changes of the best found so far.
 */

import type { BinSize } from './layout.ts';
import type { WorkBudget } from './work-budget.ts';
import { PartialLayout } from './partial-layout.ts';
import type { PlacingRule, PartToPlace } from './partial-layout.ts';
import type { NoFitPolygons } from './no-fit-polygons.ts';
import { seededRandom } from './seeded-random.ts';

/** An order to lay parts in. */
interface Plan {
  readonly candidates: readonly PartToPlace[];
  readonly rule: PlacingRule;
}

/** A sheet as it is to be filled, from the bottom: as it is, or turned by a quarter. */
export interface SearchRoom {
  readonly room: BinSize;
  /** By how many quarters the sheet is turned, counter-clockwise. */
  readonly quarters: 0 | 1;
  /** Parts with orientations, each of which fits into the room. */
  readonly candidates: readonly PartToPlace[];
  /** Whether what is used may also be cut off along the other side of the sheet. */
  readonly either: boolean;
}

export interface SearchResult {
  readonly side: SearchRoom;
  readonly partial: PartialLayout;
  readonly plan: Plan;
  readonly score: number;
}

/** Sheets, and of the last one the share that is used; a little of how low parts lie tells which of two is on a good way. */
function scoreOf(partial: PartialLayout, { room, either }: SearchRoom): number {
  const { bins } = partial;
  const last = bins[bins.length - 1]!;
  let [top, right, moment, area] = [0, 0, 0, 0];
  last.orientations.forEach((orientation, i) => {
    top = Math.max(top, last.ys[i]! + orientation.height);
    right = Math.max(right, last.xs[i]! + orientation.width);
    moment += orientation.area * (last.ys[i]! + orientation.middle);
    area += orientation.area;
  });
  const used = top / room.height;
  const share = either ? Math.min(used, right / room.width) : used;
  return bins.length - 1 + share + (lowWeight * moment) / (area * room.height);
}

const lowWeight = 0.02;

/** By what parts are sorted, the largest first. */
const sizes: readonly ((candidates: PartToPlace) => number)[] = [
  ({ orientations }) => orientations[0]!.area,
  ({ orientations }) => Math.max(...orientations.map(({ height }) => height)),
  ({ orientations }) => orientations[0]!.width + orientations[0]!.height,
  ({ orientations }) => Math.max(...orientations.map(({ width }) => width)),
];

const judgements = ['top', 'middle', 'bottom'] as const;
const tilts = [0, 0.1];

/** Plans to begin with, the most promising first: by size, in columns, and then the same in other ways. */
function beginnings(side: SearchRoom): Plan[] {
  const sorted = sizes.map((size) => [...side.candidates].sort((a, b) => size(b) - size(a) || a.part - b.part));
  const columns = columnsOf(side);
  return [
    ...columns.map((count): Plan => ({ candidates: sorted[0]!, rule: { by: 'top', tilt: 0, columns: count } })),
    ...tilts.flatMap((tilt) =>
      judgements.flatMap((by) => sorted.map((candidates): Plan => ({ candidates, rule: { by, tilt, columns: 0 } }))),
    ),
    ...columns
      .slice(1)
      .flatMap((count) =>
        sorted.map((candidates): Plan => ({ candidates, rule: { by: 'bottom', tilt: 0, columns: count } })),
      ),
  ];
}

/** Into how many columns the sheet may well be divided: none, and as many as go beside each other of each orientation. */
function columnsOf({ room, candidates }: SearchRoom): number[] {
  const counts = new Set([0]);
  for (const { orientations } of candidates) {
    for (const { width } of orientations) {
      const count = Math.floor((room.width + room.gap) / (width + room.gap) + 1e-6);
      if (count > 1 && counts.size < maxColumns) counts.add(count);
    }
  }
  return [...counts];
}

const maxColumns = 5;

/** The same plan again is not worth trying: what shapes in which order, and how they are judged. */
function keyOf({ candidates, rule: { by, tilt, columns } }: Plan): string {
  return `${by} ${tilt} ${columns} ${candidates.map(({ orientations }) => orientations.map(({ id }) => id).join('/')).join()}`;
}

/** The best of all that is tried until the budget has spent what it may. At least one layout is finished. */
export async function search(
  sides: readonly SearchRoom[],
  noFits: NoFitPolygons,
  budget: WorkBudget,
): Promise<SearchResult> {
  let best: SearchResult | undefined;
  const tried = new Set<string>();
  const plans = sides.map(beginnings);
  for (let i = 0; plans.some((all) => i < all.length); i += 1) {
    for (const [s, side] of sides.entries()) {
      const plan = plans[s]![i];
      if (!plan || (best && budget.share > startShare)) continue;
      const key = `${s} ${keyOf(plan)}`;
      if (tried.has(key)) continue;
      tried.add(key);
      const found = await follow(side, plan, new PartialLayout(side.room, noFits, budget));
      if (!best || found.score < best.score - least) best = found;
    }
  }
  return improve(best!, budget);
}

/** So much of what may be spent goes into beginnings. */
const startShare = 0.4;
/** Scores that differ by less are equal. */
const least = 1e-9;

async function follow(side: SearchRoom, plan: Plan, partial: PartialLayout): Promise<SearchResult> {
  for (const candidates of plan.candidates.slice(partial.laid.length)) await partial.lay(candidates, plan.rule);
  return { side, partial, plan, score: scoreOf(partial, side) };
}

/** Small changes, of which those are kept that make it no worse than the best by more than a little. */
async function improve(from: SearchResult, budget: WorkBudget): Promise<SearchResult> {
  let [best, current] = [from, from];
  const random = seededRandom(1);
  const count = from.plan.candidates.length;
  for (let idle = 0; budget.share < 1 && idle < idleTries; idle += 1) {
    const change = changed(current.plan, current.side.candidates, random);
    if (!change) continue;
    const found = await follow(current.side, change.plan, current.partial.upTo(change.from));
    if (found.score < best.score - 1e-9) {
      best = found;
      idle = 0;
    }
    if (found.score <= current.score || found.score <= best.score + leniency / count) current = found;
  }
  return best;
}

/** With so many changes that bring nothing it is given up. */
const idleTries = 400;
/** How much worse than the best a layout may be to go on from, times the number of parts. */
const leniency = 0.02;

/** Two parts exchanged, one moved, or one held to fewer orientations; from where on the plan differs. Nothing where nothing changes. */
function changed(
  { candidates, rule }: Plan,
  free: readonly PartToPlace[],
  random: () => number,
): { plan: Plan; from: number } | undefined {
  // Rather late ones: what lies on top decides how much is used, and what comes before need not be laid anew.
  const pick = (below: number): number => Math.floor(Math.sqrt(random()) * below);
  const [i, j] = [pick(candidates.length), pick(candidates.length)];
  const next = [...candidates];
  const kind = random();
  const [a, b] = [candidates[i]!, candidates[j]!];
  if (kind < 0.3) {
    const all = free.find(({ part }) => part === a.part)!.orientations;
    if (all.length < 2) return undefined;
    const orientations = a.orientations.length < all.length ? all : [all[pick(all.length)]!];
    next[i] = { part: a.part, orientations };
    return { plan: { candidates: next, rule }, from: i };
  }
  if (i === j || a.orientations === b.orientations) return undefined;
  if (kind < 0.65) {
    [next[i], next[j]] = [b, a];
  } else {
    next.splice(i, 1);
    next.splice(j, 0, a);
  }
  return { plan: { candidates: next, rule }, from: Math.min(i, j) };
}
