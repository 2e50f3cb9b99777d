/** How much the letters of another font stand out among those of the first. */

import { area, perimeter } from '../../geometry/measure.ts';
import type { Region } from '../../geometry/types.ts';
import type { FontFace } from '../../text/font-face.ts';
import { slantOf } from '../overlap/slant.ts';
import { sampleLetters } from './sample-letters.ts';

/** Strokes that are thicker or thinner by more than this factor are seen at a glance. Our own judgement. */
const seenWeight = 1.4;

/** A slant that differs by more than this, in degrees, is seen at a glance. Our own judgement. */
const seenSlant = 8;

/** In words, such as “much bolder”; `undefined` if a reader would hardly notice, or the fonts have no letters in common. */
export function standsOut(other: FontFace, among: FontFace): string | undefined {
  const [letters, own] = [sampleLetters(other), sampleLetters(among)];
  if (!letters || !own) return undefined;
  const weight = stemOf(letters) / stemOf(own);
  const slant = slantOf(letters) - slantOf(own);
  if (weight > seenWeight) return 'much bolder';
  if (weight < 1 / seenWeight) return 'much lighter';
  if (slant < -seenSlant) return 'more upright';
  if (slant > seenSlant) return 'more slanted';
  return undefined;
}

/** Thickness of strokes: that of a long bar with the same area and perimeter. */
function stemOf(letters: readonly Region[]): number {
  const all = letters.flat();
  return (2 * area(all)) / perimeter(all);
}
