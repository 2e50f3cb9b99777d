/** What joins two letters of a script in which a stroke between them, where Latin letters have one, makes others of them. */

import { areUnjoined, unjoinedBar } from './arabic.ts';
import type { FootBar } from './bars.ts';
import type { LetterBody } from './bodies.ts';
import { areHebrew, hebrewBar } from './hebrew.ts';
import type { Measures } from './measures.ts';
import { touching } from './profile.ts';
import type { Profile } from './profile.ts';
import { shares } from './shares.ts';

export interface BarredLetters {
  /** Distance that the right letter moves closer, in mm. */
  readonly shift: number;
  readonly bar: FootBar;
}

/** `undefined` of other letters, where the font joins them, and where there is no such bar. `room`: the most that the right one may move, in mm. */
export function barredLetters(
  left: LetterBody,
  right: LetterBody,
  profile: Profile,
  room: number,
  measures: Measures,
): BarredLetters | undefined {
  if (right.afterGap || left.index === right.index || left.line !== right.line) return undefined;
  const [isHebrew, isUnjoined] = [areHebrew(left.text, right.text), areUnjoined(left.text, right.text)];
  if (!isHebrew && !isUnjoined) return undefined;
  const gap = touching(profile);
  if (!Number.isFinite(gap) || gap <= 0) return undefined;
  const shift = Math.max(0, Math.min(gap - shares.scriptGap * measures.xHeight, room));
  const bar = isHebrew
    ? hebrewBar(profile, shift, { left: left.rows, right: right.rows }, measures)
    : unjoinedBar(profile, shift, right, measures);
  return bar && { shift, bar };
}
