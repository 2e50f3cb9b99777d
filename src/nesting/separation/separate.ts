/**
 * Moving parts out of one another: guided local search (Voudouris and Tsang 1999; for layouts Egeblad, Nielsen and Odgaard 2007, Umetani
 * et al. 2009). One part at a time goes where its overlaps cost least; what overlaps all the same becomes dearer, so that no
 * overlap is for ever the least evil.
 */

import type { WorkBudget } from '../work-budget.ts';
import type { Board } from './board.ts';
import { improvePlace } from './move.ts';
import { last } from './penetration-field.ts';

/** Times what a pair's weight grows that overlaps: a little, and more the deeper it is; and falls by where it does not. */
const growth = 1.1;
const deeper = 0.4;
const decay = 0.98;

/** What a stretch looked at counts for, in edges of the budget. */
export const edgesPerStretch = 0.65;

export interface SeparationRule {
  /** Given up after so many rounds that bring less than 2 % of the least overlap there was. */
  readonly idleRounds: number;
  readonly random: () => number;
  /** How many places anywhere on the board are looked at for a part, for each of its orientations. */
  readonly anywhere: number;
  /** The share of the budget at which it is given up. */
  readonly until: number;
}

/** True if nothing overlaps any more. The board's depths are as its parts lie. */
export async function separate(board: Board, rule: SeparationRule, budget: WorkBudget): Promise<boolean> {
  const { count } = board;
  // A try is never for nothing, so that those that try again and again come to an end.
  last.work += count;
  await spend(budget);
  const { movable } = board;
  const order = Int32Array.from({ length: movable }, (_, part) => part);
  let least = board.loss();
  for (let idle = 0; idle < rule.idleRounds && budget.share < rule.until; idle += 1) {
    for (let i = movable - 1; i > 0; i -= 1) {
      const j = Math.floor(rule.random() * (i + 1));
      [order[i], order[j]] = [order[j]!, order[i]!];
    }
    for (const part of order) {
      if (!board.isColliding(part)) continue;
      improvePlace(board, part, rule);
      board.measure(part);
      await spend(budget);
      if (budget.share >= rule.until) return board.loss() === 0;
    }
    const loss = board.loss();
    if (loss === 0) return true;
    if (loss < 0.98 * least) {
      least = loss;
      idle = -1;
    }
    reweigh(board);
  }
  return false;
}

/** Counts what was looked at. */
export async function spend(budget: WorkBudget): Promise<void> {
  budget.spent += last.work * edgesPerStretch;
  last.work = 0;
  if (budget.isDue) await budget.pause();
}

function reweigh({ count, weights, depths }: Board): void {
  let deepest = 0;
  for (let at = 0; at < depths.length; at += 1) if (depths[at]! > deepest) deepest = depths[at]!;
  for (let part = 0; part < count; part += 1) {
    for (let at = part * count; at < (part + 1) * count; at += 1) {
      const depth = depths[at]!;
      weights[at] =
        depth > 0 ? weights[at]! * (growth + (deeper * depth) / deepest) : Math.max(1, weights[at]! * decay);
    }
  }
}
