/** Adds up costs. */

import type { Cost } from '../../toolpath/estimate.ts';

/** `undefined` if one is unknown or the currencies differ. */
export function sumOfCosts(costs: readonly (Cost | undefined)[]): Cost | undefined {
  const known = costs.filter((cost) => cost !== undefined);
  const [first] = known;
  if (!first || known.length < costs.length || known.some(({ currency }) => currency !== first.currency))
    return undefined;
  return { ...first, amount: known.reduce((sum, { amount }) => sum + amount, 0) };
}
