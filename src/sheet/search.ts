/**
 * Looking for a good order. Where a part goes follows from the order and from what it may be turned to, so that is all there is
 * to choose: first by size, in several ways, then by small changes of the best found so far.
 */

import type { Room } from './bed.ts';
import type { Pace } from './pace.ts';
import { Filling } from './filling.ts';
import type { Lowness, Waiting } from './filling.ts';
import type { Meetings } from './meetings.ts';
import { seeded } from './seeded.ts';

/** An order to lay parts in. */
interface Plan {
  readonly waiting: readonly Waiting[];
  readonly lowness: Lowness;
}

export interface Side {
  readonly room: Room;
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
const lownesses: readonly Lowness[] = ['top', 'middle', 'bottom'];

/** The same plan again is not worth trying: what shapes in which order, and how they are judged. */
function keyOf({ waiting, lowness }: Plan): string {
  return `${lowness} ${waiting.map(({ poses }) => poses.map(({ id }) => id).join('/')).join()}`;
}

/** The best of all that is tried until the pace has spent what it may. At least one filling of each side is finished. */
export async function search(sides: readonly Side[], meetings: Meetings, pace: Pace): Promise<Found> {
  let best: Found | undefined;
  const tried = new Set<string>();
  for (const lowness of lownesses) {
    for (const size of sizes) {
      for (const side of sides) {
        if (best && pace.isSpent) break;
        const waiting = [...side.waiting].sort((a, b) => size(b) - size(a) || a.part - b.part);
        const plan = { waiting, lowness };
        const key = `${sides.indexOf(side)} ${keyOf(plan)}`;
        if (tried.has(key)) continue;
        tried.add(key);
        const found = await follow(side, plan, new Filling(side.room, meetings, pace), pace);
        if (!best || found.score < best.score - 1e-9) best = found;
      }
    }
  }
  return improve(best!, pace);
}

async function follow(side: Side, plan: Plan, filling: Filling, pace: Pace): Promise<Found> {
  for (const waiting of plan.waiting.slice(filling.laid.length)) {
    await filling.lay(waiting, plan.lowness);
  }
  return { side, filling, plan, score: scoreOf(filling, side) };
}

/** Small changes, of which those are kept that make it no worse than the best by more than a little. */
async function improve(from: Found, pace: Pace): Promise<Found> {
  let [best, current] = [from, from];
  const random = seeded(1);
  const count = from.plan.waiting.length;
  for (let idle = 0; !pace.isSpent && idle < idleTries; idle += 1) {
    const change = changed(current.plan, current.side.waiting, random);
    if (!change) continue;
    const found = await follow(current.side, change.plan, current.filling.upTo(change.from), pace);
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
  { waiting, lowness }: Plan,
  free: readonly Waiting[],
  random: () => number,
): { plan: Plan; from: number } | undefined {
  const pick = (below: number): number => Math.floor(random() * below);
  const [i, j] = [pick(waiting.length), pick(waiting.length)];
  const next = [...waiting];
  const kind = random();
  const [a, b] = [waiting[i]!, waiting[j]!];
  if (kind < 0.3) {
    const all = free.find(({ part }) => part === a.part)!.poses;
    if (all.length < 2) return undefined;
    const poses = a.poses.length < all.length ? all : [all[pick(all.length)]!];
    next[i] = { part: a.part, poses };
    return { plan: { waiting: next, lowness }, from: i };
  }
  if (i === j || a.poses === b.poses) return undefined;
  if (kind < 0.65) {
    [next[i], next[j]] = [b, a];
  } else {
    next.splice(i, 1);
    next.splice(j, 0, a);
  }
  return { plan: { waiting: next, lowness }, from: Math.min(i, j) };
}
