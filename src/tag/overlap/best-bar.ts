/** A bar at whatever height it is shortest and told from the strokes of the letters. */

import { footBar } from './bars.ts';
import type { FootBar } from './bars.ts';
import type { Measures } from './measures.ts';
import { ease } from './post.ts';
import type { Profile } from './profile.ts';

/** `heights` and what `costAt` is asked are those of the middle of the bar, in mm; a cost of Infinity rules a height out. */
export function bestBar(
  profile: Profile,
  shift: number,
  heights: { readonly from: number; readonly to: number },
  costAt: (middle: number) => number,
  measures: Measures,
): FootBar | undefined {
  let best: FootBar | undefined;
  let least = Infinity;
  for (let middle = heights.from; middle <= heights.to; middle += measures.pitch) {
    const own = costAt(middle);
    const bar = own < least ? footBar(profile, shift, measures, middle - (ease * measures.web) / 2) : undefined;
    if (!bar || bar.length <= 0 || bar.length + own >= least) continue;
    [best, least] = [bar, bar.length + own];
  }
  return best;
}
