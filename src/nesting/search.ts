/**
 * Looking for a good order. Where a part goes follows from the order and from what it may be turned to, so that is all there is
 * to choose: first by size, in several ways, then by small changes of the best found so far.
 */

import type { Room } from './bin.ts';
import type { Pace } from './work-budget.ts';
import { Filling } from './partial-layout.ts';
import type { Manner, Waiting } from './partial-layout.ts';
import type { Meetings } from './no-fit-polygons.ts';
import { seeded } from './seeded-random.ts';

/** An order to lay parts in. */
interface Plan {
  readonly waiting: readonly Waiting[];
  readonly manner: Manner;
}

/** A sheet as it is to be filled, from the bottom: as it is, or turned by a quarter. */
export interface Side {
  readonly room: Room;
  /** By how many quarters the sheet is turned, counter-clockwise. */
  readonly quarters: 0 | 1;
  /** Parts with poses, each of which fits into the room. */
  readonly waiting: readonly Waiting[];
  /** Whether what is used may also be cut off along the other side of the sheet. */
  readonly either: boolean;
}

export interface Found {
  readonly side: Side;
  readonly filling: Filling;
  readonly plan: Plan;
  readonly score: number;
}

/** Sheets, and of the last one the share that is used; a little of how low parts lie tells which of two is on a good way. */
function scoreOf(filling: Filling, { room, either }: Side): number {
  const { beds } = filling;
  const last = beds[beds.length - 1]!;
  let [top, right, moment, area] = [0, 0, 0, 0];
  last.poses.forEach((pose, i) => {
    top = Math.max(top, last.ys[i]! + pose.height);
    right = Math.max(right, last.xs[i]! + pose.width);
    moment += pose.area * (last.ys[i]! + pose.middle);
    area += pose.area;
  });
  const used = top / room.height;
  const share = either ? Math.min(used, right / room.width) : used;
  return beds.length - 1 + share + (lowWeight * moment) / (area * room.height);
}

const lowWeight = 0.02;

/** By what parts are sorted, the largest first. */
const sizes: readonly ((waiting: Waiting) => number)[] = [
  ({ poses }) => poses[0]!.area,
  ({ poses }) => Math.max(...poses.map(({ height }) => height)),
  ({ poses }) => poses[0]!.width + poses[0]!.height,
  ({ poses }) => Math.max(...poses.map(({ width }) => width)),
];

const judgements = ['top', 'middle', 'bottom'] as const;
const tilts = [0, 0.1];

/** Plans to begin with, the most promising first: by size, in columns, and then the same in other ways. */
function beginnings(side: Side): Plan[] {
  const sorted = sizes.map((size) => [...side.waiting].sort((a, b) => size(b) - size(a) || a.part - b.part));
  const columns = columnsOf(side);
  return [
    ...columns.map((count): Plan => ({ waiting: sorted[0]!, manner: { by: 'top', tilt: 0, columns: count } })),
    ...tilts.flatMap((tilt) =>
      judgements.flatMap((by) => sorted.map((waiting): Plan => ({ waiting, manner: { by, tilt, columns: 0 } }))),
    ),
    ...columns
      .slice(1)
      .flatMap((count) =>
        sorted.map((waiting): Plan => ({ waiting, manner: { by: 'bottom', tilt: 0, columns: count } })),
      ),
  ];
}

/** Into how many columns the sheet may well be divided: none, and as many as go beside each other of each pose. */
function columnsOf({ room, waiting }: Side): number[] {
  const counts = new Set([0]);
  for (const { poses } of waiting) {
    for (const { width } of poses) {
      const count = Math.floor((room.width + room.gap) / (width + room.gap) + 1e-6);
      if (count > 1 && counts.size < maxColumns) counts.add(count);
    }
  }
  return [...counts];
}

const maxColumns = 5;

/** The same plan again is not worth trying: what shapes in which order, and how they are judged. */
function keyOf({ waiting, manner: { by, tilt, columns } }: Plan): string {
  return `${by} ${tilt} ${columns} ${waiting.map(({ poses }) => poses.map(({ id }) => id).join('/')).join()}`;
}

/** The best of all that is tried until the pace has spent what it may. At least one filling is finished. */
export async function search(sides: readonly Side[], meetings: Meetings, pace: Pace): Promise<Found> {
  let best: Found | undefined;
  const tried = new Set<string>();
  const plans = sides.map(beginnings);
  for (let i = 0; plans.some((all) => i < all.length); i += 1) {
    for (const [s, side] of sides.entries()) {
      const plan = plans[s]![i];
      if (!plan || (best && pace.share > startShare)) continue;
      const key = `${s} ${keyOf(plan)}`;
      if (tried.has(key)) continue;
      tried.add(key);
      const found = await follow(side, plan, new Filling(side.room, meetings, pace));
      if (!best || found.score < best.score - least) best = found;
    }
  }
  return improve(best!, pace);
}

/** So much of what may be spent goes into beginnings. */
const startShare = 0.4;
/** Scores that differ by less are equal. */
const least = 1e-9;

async function follow(side: Side, plan: Plan, filling: Filling): Promise<Found> {
  for (const waiting of plan.waiting.slice(filling.laid.length)) await filling.lay(waiting, plan.manner);
  return { side, filling, plan, score: scoreOf(filling, side) };
}

/** Small changes, of which those are kept that make it no worse than the best by more than a little. */
async function improve(from: Found, pace: Pace): Promise<Found> {
  let [best, current] = [from, from];
  const random = seeded(1);
  const count = from.plan.waiting.length;
  for (let idle = 0; pace.share < 1 && idle < idleTries; idle += 1) {
    const change = changed(current.plan, current.side.waiting, random);
    if (!change) continue;
    const found = await follow(current.side, change.plan, current.filling.upTo(change.from));
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
/** How much worse than the best a filling may be to go on from, times the number of parts. */
const leniency = 0.02;

/** Two parts exchanged, one moved, or one held to fewer poses; from where on the plan differs. Nothing where nothing changes. */
function changed(
  { waiting, manner }: Plan,
  free: readonly Waiting[],
  random: () => number,
): { plan: Plan; from: number } | undefined {
  // Rather late ones: what lies on top decides how much is used, and what comes before need not be laid anew.
  const pick = (below: number): number => Math.floor(Math.sqrt(random()) * below);
  const [i, j] = [pick(waiting.length), pick(waiting.length)];
  const next = [...waiting];
  const kind = random();
  const [a, b] = [waiting[i]!, waiting[j]!];
  if (kind < 0.3) {
    const all = free.find(({ part }) => part === a.part)!.poses;
    if (all.length < 2) return undefined;
    const poses = a.poses.length < all.length ? all : [all[pick(all.length)]!];
    next[i] = { part: a.part, poses };
    return { plan: { waiting: next, manner }, from: i };
  }
  if (i === j || a.poses === b.poses) return undefined;
  if (kind < 0.65) {
    [next[i], next[j]] = [b, a];
  } else {
    next.splice(i, 1);
    next.splice(j, 0, a);
  }
  return { plan: { waiting: next, manner }, from: Math.min(i, j) };
}
