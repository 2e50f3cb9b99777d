/** How much a shape has to grow to be wide enough everywhere. */

import { findNarrow } from '../geometry/necks.ts';
import type { Region } from '../geometry/types.ts';

/** So many times it is grown a little more: a stroke grows on both sides, and all but a taper is wide enough at once. */
export const mostGrowths = 4;

/** What a neck lacks by less counts as wide enough, in mm. */
const slackMm = 0.005;

/** Growth is told in steps of this, in mm. */
const stepMm = 0.01;

/** By how much in mm it has to grow so that no neck of it is narrower than `least`; 0 where none is. */
export function growthLacking(region: Region, least: number): number {
  const narrowest = Math.min(least, ...findNarrow(region, least).necks.map(({ width }) => width));
  const missing = least - narrowest;
  return missing <= slackMm ? 0 : Math.max(1, Math.ceil(missing / 2 / stepMm - 0.1)) * stepMm;
}
