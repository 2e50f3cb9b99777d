/**
 * Hebrew letters side by side. Most are told from each other by their feet and the corners of their roofs: a bar at the foot makes a כ of a ר, and one
 * that goes on from its roof a ד, or a ח of two ו. No letter has a stroke from side to side halfway up, so they stand apart on a bar there.
 */

import type { FootBar } from './bars.ts';
import { bestBar } from './best-bar.ts';
import type { Measures } from './measures.ts';
import type { Profile } from './profile.ts';
import type { Pair } from './reading.ts';
import { topOf } from './runs.ts';

const letter = /^[\u05d0-\u05ea]\p{M}*$/u;

/** In heights of the lower letter: between which middles of bars are looked for, the best one, and the cost of being as far off that as the letter is high, in lengths. */
const level = { from: 0.3, to: 0.8, best: 0.5, cost: 0.6 } as const;

export function areHebrew(left: string, right: string): boolean {
  return letter.test(left) && letter.test(right);
}

/** The best bar away from the feet; `undefined` where there is none. */
export function hebrewBar(
  profile: Profile,
  shift: number,
  { left, right }: Pair,
  measures: Measures,
): FootBar | undefined {
  const { web } = measures;
  const height = Math.min(topOf(left), topOf(right));
  const heights = { from: level.from * height, to: Math.min(level.to * height, height - web) };
  return bestBar(profile, shift, heights, (middle) => level.cost * Math.abs(middle - level.best * height), measures);
}
