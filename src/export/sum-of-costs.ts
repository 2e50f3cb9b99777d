/** What several things cost together. */

import type { Cost } from '../toolpath/estimate.ts';

/** `undefined` where one is not known, or where they are not in one currency. */
export function sumOfCosts(costs: readonly (Cost | undefined)[]): Cost | undefined {
  const known = costs.filter((cost) => cost !== undefined);
  const [first] = known;
  if (!first || known.length < costs.length || known.some(({ currency }) => currency !== first.currency))
    return undefined;
  return { ...first, amount: known.reduce((sum, { amount }) => sum + amount, 0) };
}
