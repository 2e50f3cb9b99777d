/** Dots and accents of a letter that do not touch it. */

import { boundsOf } from '../../geometry/measure.ts';
import { partsOf } from '../../geometry/parts.ts';
import type { Region } from '../../geometry/types.ts';

/** A mark lies wholly above this share of the height of its letter. */
const markFrom = 0.6;

/** The marks above a letter, each by itself, in an order that does not change when they are moved a little. */
export function marksAbove(letter: Region): Region[] {
  const parts = partsOf(letter);
  if (parts.length < 2) return [];
  const { minY, maxY } = boundsOf(letter)!;
  return parts.filter((part) => boundsOf(part)!.minY > minY + markFrom * (maxY - minY));
}

const letterOf = /^[\p{Script=Latin}\p{Script=Greek}\p{Script=Cyrillic}\p{Nd}]$/u;
const dotted = /^\p{Soft_Dotted}$/u;

/** Whether a letter has a dot or an accent at all: in the face of a stencil an “e” is of several parts too. */
export function hasMarks(text: string): boolean {
  return !letterOf.test(text) || dotted.test(text) || text.normalize('NFD') !== text;
}
