/** Lines of one text move together until they meet, as letters of a line do; a strap between them would be a thread. */

import type { Region } from '../../geometry/types.ts';
import type { Measures } from './measures.ts';
import { meet } from './meet.ts';
import { profileOf } from './profile.ts';
import { columnsOf } from './runs.ts';
import { shares } from './shares.ts';

/** Distance that the lower of two lines rises, in mm; 0 where they are too far apart to meet. */
export function riseOf(lower: Region, upper: Region, measures: Measures): number {
  const { pitch, xHeight } = measures;
  const profile = profileOf([{ rows: columnsOf(lower, pitch), dx: 0 }], { rows: columnsOf(upper, pitch), dx: 0 });
  return Math.max(0, meet(profile, measures, { oneLetter: false, room: shares.lineReach * xHeight }).shift);
}
