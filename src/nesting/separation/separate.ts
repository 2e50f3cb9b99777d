/**
 * Separation: moves overlapping parts apart by guided local search (Voudouris and Tsang 1999; for layouts Egeblad,
 * Nielsen and Odgaard 2007, Umetani et al. 2009). One part at a time goes where its overlaps cost least; the weights of
 * remaining overlaps grow, so that none stays the cheapest choice for ever.
 */

import type { WorkBudget } from '../work-budget.ts';
import { improvePlace } from './move.ts';
import type { PlaceRule } from './move.ts';
import type { Overlaps } from './overlaps.ts';
import { last } from './penetration-field.ts';

/** Work for visiting a stretch, in edges of the budget. */
export const edgesPerStretch = 0.32;

export interface SeparationRule extends PlaceRule {
  /** Number of rounds after which it gives up if they improve the least overlap so far by less than 2 %. */
  readonly idleRounds: number;
  /** Share of the budget at which it gives up. */
  readonly until: number;
}

/** Returns true if nothing overlaps any more. The overlaps are then up to date. */
export async function separate(overlaps: Overlaps, rule: SeparationRule, budget: WorkBudget): Promise<boolean> {
  const { board, near } = overlaps;
  // Every try costs something, so that loops of repeated tries end.
  last.work += board.count;
  await countWork(budget);
  const { movable } = board;
  const order = Int32Array.from({ length: movable }, (_, part) => part);
  let least = overlaps.loss();
  for (let idle = 0; idle < rule.idleRounds && budget.share < rule.until; idle += 1) {
    for (let i = movable - 1; i > 0; i -= 1) {
      const j = Math.floor(rule.random() * (i + 1));
      [order[i], order[j]] = [order[j]!, order[i]!];
    }
    for (const part of order) {
      if (!overlaps.isColliding(part)) continue;
      improvePlace(board, near, part, rule);
      overlaps.measure(part);
      await countWork(budget);
      if (budget.share >= rule.until) return overlaps.loss() === 0;
    }
    const loss = overlaps.loss();
    if (loss === 0) return true;
    if (loss < 0.98 * least) {
      least = loss;
      idle = -1;
    }
    overlaps.reweigh();
  }
  return false;
}

/** Adds the work done to the budget. */
export async function countWork(budget: WorkBudget): Promise<void> {
  budget.spent += last.work * edgesPerStretch;
  last.work = 0;
  if (budget.isDue) await budget.pause();
}
