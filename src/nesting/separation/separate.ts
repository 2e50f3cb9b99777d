/**
 * Separation: moves overlapping parts apart by guided local search (Voudouris and Tsang 1999; for layouts Egeblad,
 * Nielsen and Odgaard 2007, Umetani et al. 2009). One part at a time goes where its overlaps cost least; the weights of
 * remaining overlaps grow, so that none stays the cheapest choice for ever.
 */

import type { WorkBudget } from '../work-budget.ts';
import type { Board } from './board.ts';
import { improvePlace } from './move.ts';
import type { PlaceRule } from './move.ts';
import { last } from './penetration-field.ts';

/**
 * Growth of the weight of an overlapping pair: a constant factor, plus more for deeper overlaps; and decay of the
 * others.
 */
const growth = 1.1;
const deeper = 0.4;
const decay = 0.98;

/** Work for visiting a stretch, in edges of the budget. */
export const edgesPerStretch = 0.65;

export interface SeparationRule extends PlaceRule {
  /** Number of rounds after which it gives up if they improve the least overlap so far by less than 2 %. */
  readonly idleRounds: number;
  /** Share of the budget at which it gives up. */
  readonly until: number;
}

/** Returns true if nothing overlaps any more. The board's depths are then up to date. */
export async function separate(board: Board, rule: SeparationRule, budget: WorkBudget): Promise<boolean> {
  const { count } = board;
  // Every try costs something, so that loops of repeated tries end.
  last.work += count;
  await countWork(budget);
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
      await countWork(budget);
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

/** Adds the work done to the budget. */
export async function countWork(budget: WorkBudget): Promise<void> {
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
