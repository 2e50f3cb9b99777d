/**
 * Fits more onto a sheet that has a layout: a part from a later sheet is put where it overlaps least, and all parts are
 * separated. A part that does not fit after a while is removed, and smaller ones are tried.
 */

import type { BinSize } from '../layout.ts';
import type { WorkBudget } from '../work-budget.ts';
import type { Turn } from '../orientation.ts';
import { Board } from './board.ts';
import { Overlaps } from './overlaps.ts';
import { separate, countWork } from './separate.ts';
import type { Mover } from './penetration-fields.ts';
import { PenetrationFields } from './penetration-fields.ts';

/** A part on a sheet, with its turn and its box centre. */
export interface PartPose {
  readonly part: number;
  readonly mover: Mover;
  readonly turn: Turn;
  readonly x: number;
  readonly y: number;
}

/** Number of failures that ends the attempt; after each, only parts smaller than the last by this factor are tried. */
const mostFailures = 8;
const smaller = 0.88;
const idleRounds = 14;
/** Few, in favour of nearby places: each new pair of different shapes that meet takes time of its own. */
const places = { anywhere: 6, nearby: 14 };
/** Number of trial places, compared by overlaps of boxes. */
const samples = 400;
/** Densest filling of a sheet that is attempted (rule of thumb, no source). */
const densest = 0.97;

/**
 * Returns the sheet with the parts that it took from `others`, tried in order; after a failure, only smaller ones.
 * Fixed parts on it do not move.
 */
export async function fillSheet(
  sheet: readonly PartPose[],
  fixed: readonly PartPose[],
  others: readonly PartPose[],
  room: BinSize,
  random: () => number,
  budget: WorkBudget,
  until: number,
): Promise<{ readonly sheet: readonly PartPose[]; readonly taken: ReadonlySet<number> }> {
  const fields = new PenetrationFields();
  const taken = new Set<number>();
  let lying = sheet;
  let limit = Infinity;
  let free =
    room.width * room.height * densest - [...sheet, ...fixed].reduce((sum, { mover }) => sum + moverArea(mover), 0);
  for (let failures = 0; failures < mostFailures && budget.share < until;) {
    const next = others.find(({ part, mover }) => !taken.has(part) && moverArea(mover) <= Math.min(limit, free));
    if (!next) break;
    const found = await withOneMore(lying, next, fixed, room, fields, random, budget, until);
    if (found) {
      lying = found;
      taken.add(next.part);
      free -= moverArea(next.mover);
    } else {
      failures += 1;
      limit = smaller * moverArea(next.mover);
    }
  }
  return { sheet: lying, taken };
}

const moverArea = ({ outline, turns }: Mover): number => outline(turns[0]!).area;

async function withOneMore(
  lying: readonly PartPose[],
  next: PartPose,
  fixed: readonly PartPose[],
  room: BinSize,
  fields: PenetrationFields,
  random: () => number,
  budget: WorkBudget,
  until: number,
): Promise<readonly PartPose[] | undefined> {
  const all = [...lying, next];
  const board = new Board(
    fields,
    [...all, ...fixed].map(({ mover }) => fields.add(mover)),
    room.width,
    room.height,
    all.length,
  );
  for (const [i, { turn, x, y }] of fixed.entries()) board.settle(all.length + i, turn, x, y);
  for (const [part, { turn, x, y }] of lying.entries()) board.put(part, turn, x, y);
  const last = all.length - 1;
  let best = Infinity;
  let place = { turn: next.mover.turns[0]!, x: 0, y: 0 };
  for (let i = 0; i < samples; i += 1) {
    const turn = next.mover.turns[i % next.mover.turns.length]!;
    if (!board.fits(last, turn)) continue;
    const low = board.leastX(last, turn);
    const bottom = board.leastY(last, turn);
    const x = low + random() * (board.mostX(last, turn) - low);
    const y = bottom + random() * (board.mostY(last, turn) - bottom);
    const cost = board.boxOverlap(last, turn, x, y);
    if (!(cost < best)) continue;
    best = cost;
    place = { turn, x, y };
  }
  board.put(last, place.turn, place.x, place.y);
  const overlaps = new Overlaps(board);
  overlaps.measureAll();
  await countWork(budget);
  if (overlaps.loss() > 0 && !(await separate(overlaps, { idleRounds, random, ...places, until }, budget)))
    return undefined;
  return all.map(({ part, mover }, i): PartPose => {
    return { part, mover, turn: board.turns[i]! as Turn, x: board.xs[i]!, y: board.ys[i]! };
  });
}
