/** A full stop behind a letter, on a bar of its own: run into the foot of that letter, it is a serif or the leg of an x, and the name has none. */

import type { Region } from '../../geometry/types.ts';
import { boundsOf } from '../../geometry/measure.ts';
import { footBar } from './bars.ts';
import type { LetterShape } from './bodies.ts';
import type { Measures } from './measures.ts';
import { ease } from './post.ts';
import { profileOf, touching } from './profile.ts';
import type { Profile, ShiftedRows } from './profile.ts';
import { shares } from './shares.ts';

export interface StopPlace {
  /** Distance that it moves closer, in mm. */
  readonly shift: number;
  /** The bar, as grown. */
  readonly held: Region;
}

/** `undefined` where no short bar holds it, or where it is nearer to the letter as the font has it. */
export function stopPlace(
  profile: Profile,
  { base }: Pick<LetterShape, 'base'>,
  room: number,
  measures: Measures,
): StopPlace | undefined {
  if (touching(profile) - shares.stopGap * measures.xHeight > room) return undefined;
  return heldAt(profile, base, room, measures);
}

/** The letter behind it, across a space too, as far off it and on such a bar, and no nearer to the letters before it than those below a sign. `left`: what is before it, the stop first. */
export function pastStop(
  left: readonly ShiftedRows[],
  standing: ShiftedRows,
  { base }: Pick<LetterShape, 'base'>,
  room: number,
  measures: Measures,
): StopPlace | undefined {
  const { xHeight } = measures;
  const clear = Math.max(0, touching(profileOf(left.slice(1), standing)) - shares.signGap * xHeight);
  const most = Math.min(room, clear, shares.stopReach * xHeight);
  return heldAt(profileOf(left.slice(0, 1), standing), base, most, measures);
}

function heldAt(profile: Profile, stop: Region, most: number, measures: Measures): StopPlace | undefined {
  const { web, xHeight } = measures;
  const shift = Math.min(touching(profile) - shares.stopGap * xHeight, most);
  const { minY, maxY } = boundsOf(stop)!;
  const bar = footBar(profile, shift, measures, (minY + maxY - ease * web) / 2);
  return bar && bar.length > 0 && bar.length < shares.longBar * xHeight ? { shift, held: bar.region } : undefined;
}
