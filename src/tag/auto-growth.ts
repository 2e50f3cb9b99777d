/** The growth that makes a shape wide enough everywhere. */

import { findNarrow } from '../geometry/necks.ts';
import type { Region } from '../geometry/types.ts';

/** Most rounds of growth: a stroke grows on both sides, so everything but a taper is wide enough at once. */
export const mostGrowths = 4;

/** A neck that is short by less than this, in mm, counts as wide enough. */
const slackMm = 0.005;

/** Growth is reported in steps of this, in mm. */
const stepMm = 0.01;

/** The growth in mm after which no neck is narrower than `least`; 0 if none is. */
export function growthLacking(region: Region, least: number): number {
  const narrowest = Math.min(least, ...findNarrow(region, least).necks.map(({ width }) => width));
  const missing = least - narrowest;
  return missing <= slackMm ? 0 : Math.max(1, Math.ceil(missing / 2 / stepMm - 0.1)) * stepMm;
}
