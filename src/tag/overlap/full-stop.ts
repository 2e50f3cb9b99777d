/** A full stop behind a letter, on a bar of its own: run into the foot of that letter, it is a serif or the leg of an x, and the name has none. */

import type { Region } from '../../geometry/types.ts';
import { boundsOf } from '../../geometry/measure.ts';
import { footBar } from './bars.ts';
import type { LetterShape } from './bodies.ts';
import type { Measures } from './measures.ts';
import { ease } from './post.ts';
import { touching } from './profile.ts';
import type { Profile } from './profile.ts';
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
  const { web, xHeight } = measures;
  const shift = touching(profile) - shares.stopGap * xHeight;
  if (shift > room) return undefined;
  const { minY, maxY } = boundsOf(base)!;
  const bar = footBar(profile, shift, measures, (minY + maxY - ease * web) / 2);
  return bar && bar.length > 0 && bar.length < shares.longBar * xHeight ? { shift, held: bar.region } : undefined;
}
