/**
 * Arabic letters that never join the next one (ر, د, و and others): a stroke on the baseline between the two would be such a joint, which none of
 * these has, so they are held by a bar above it or below.
 */

import { boundsOf } from '../../geometry/measure.ts';
import type { FootBar } from './bars.ts';
import { bestBar } from './best-bar.ts';
import type { LetterBody } from './bodies.ts';
import type { Measures } from './measures.ts';
import { ease } from './post.ts';
import type { Profile } from './profile.ts';

/** Of joining type R or U in the Unicode Character Database (ArabicShaping.txt, from memory), as last base letter of a cluster. */
const unjoined =
  /[\u0621-\u0625\u0627\u0629\u062f-\u0632\u0648\u0671-\u0673\u0675-\u0677\u0688-\u0699\u06c0\u06c3-\u06cb\u06cd\u06cf\u06d2\u06d3\u06d5]\p{M}*$/u;
const arabic = /\p{Script=Arabic}/u;

/** In x-heights: no bar comes nearer to the baseline, where letters are joined; the best height above it, and the cost of being off that, in lengths. */
const level = { clear: 0.22, best: 0.55, cost: 0.35 } as const;

/** Whether the right one, which is read first, does not join the left one. */
export function areUnjoined(left: string, right: string): boolean {
  return arabic.test(left) && unjoined.test(right);
}

/** The best bar away from the baseline; `undefined` where there is none. */
export function unjoinedBar(
  profile: Profile,
  shift: number,
  { base }: Pick<LetterBody, 'base'>,
  measures: Measures,
): FootBar | undefined {
  const { web, xHeight } = measures;
  const { minY, maxY } = boundsOf(base)!;
  const half = (ease * web) / 2;
  const costAt = (middle: number): number =>
    Math.abs(middle) < level.clear * xHeight + half ? Infinity : level.cost * Math.abs(middle - level.best * xHeight);
  return bestBar(profile, shift, { from: minY + half, to: maxY - half }, costAt, measures);
}
