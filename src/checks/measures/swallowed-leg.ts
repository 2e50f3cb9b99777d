/** Whether a leg of a letter runs into what it is united with along most of its length: an “m” is an “n” then, and a “w” a “v”. */

import { withoutAccents } from '../../core/names.ts';
import type { EdgeIndex } from '../../geometry/edge-index.ts';
import { boundsOf } from '../../geometry/measure.ts';
import { bareStemsOf } from '../../tag/hanger/bare-stems.ts';
import type { Letter } from '../../tag/lettering/letters.ts';

/** Letters that are others without one of their legs. */
const legged = /^[hmnuwHMNUVWишщмпнжИШЩМПНЖ]$/u;

/**
 * A leg is as long as this share of its letter's height at least. It is lost if what is beside it, so far off in x-heights, is filled along so
 * much of it. Our own judgement, from 22 names in hoops.
 */
const leg = { long: 0.3, beside: 0.06, lost: 0.8 } as const;

/** @param others What the letter is united with, without the lettering. */
export function losesLeg({ text, region }: Letter, others: EdgeIndex, xHeight: number): boolean {
  if (!legged.test(withoutAccents(text))) return false;
  const { minY, maxY } = boundsOf(region)!;
  return bareStemsOf(region).some(({ middles, width }) => {
    if (middles.at(-1)!.y - middles[0]!.y < leg.long * (maxY - minY)) return false;
    const off = width / 2 + leg.beside * xHeight;
    const isLost = (way: number): boolean =>
      middles.filter(({ x, y }) => others.contains({ x: x + way * off, y })).length > leg.lost * middles.length;
    return isLost(-1) || isLost(1);
  });
}
