/** Search for a good starting layout of many different shapes: skylines by several rules, of which the best is taken. */

import type { Turn } from '../orientation.ts';
import { better, inRows, onEmptySheets } from '../search.ts';
import type { SearchResult, SearchRoom } from '../search.ts';
import type { WorkBudget } from '../work-budget.ts';
import type { Envelope } from './envelope.ts';
import { skyline, skylinePart } from './skyline.ts';
import type { SkylineRule } from './skyline.ts';

/** About as good as one another, from one set of names to the next: the more are tried, the better the best (measured). */
const rules: readonly SkylineRule[] = [
  { overlap: 8, rowEnd: 2, large: 0.2, noise: 0 },
  { overlap: 16, rowEnd: 1, large: 0.06, noise: 0.03 },
  { overlap: 4, rowEnd: 3, large: 0.4, noise: 0.03 },
  { overlap: 24, rowEnd: 2, large: 0.1, noise: 0.03 },
  { overlap: 8, rowEnd: 2, large: 0.2, noise: 0.06 },
  { overlap: 12, rowEnd: 2, large: 0.2, noise: 0.03 },
];

/** Share of the budget for this stage. */
const share = 0.2;

/** Never worse than rows of boxes. At least one layout for each side is finished. `onBetter` is called with what there is meanwhile. */
export async function searchSkylines(
  sides: readonly SearchRoom[],
  envelopeOf: (part: number, turn: Turn) => Envelope,
  random: () => number,
  budget: WorkBudget,
  onBetter: (found: SearchResult) => void,
): Promise<SearchResult> {
  const parts = sides.map(({ candidates }) =>
    candidates.map(({ part, orientations }) =>
      orientations.map((orientation) => skylinePart(part, orientation, envelopeOf(part, orientation.turn))),
    ),
  );
  let best = inRows(sides);
  for (const [index, rule] of rules.entries()) {
    const from = best;
    for (const [s, side] of sides.entries()) {
      // A sheet that lies the wrong way for the parts is not tried again.
      if (index > 0 && (side !== from.side || budget.share > share)) continue;
      const before = best;
      best = better(best, onEmptySheets(side, await skyline(parts[s]!, side.room, rule, random, budget)));
      if (best !== before) onBetter(best);
    }
  }
  return best;
}
