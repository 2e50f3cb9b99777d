/** How far up and down lettering reaches: of its own letters, and of any letters. */

import { curveBounds } from '../geometry/curves.ts';
import type { Bounds } from '../geometry/types.ts';
import type { FontFace } from '../text/font-face.ts';
import type { TextLayout } from '../text/text-layout.ts';
import type { LetterBand } from './made-shape.ts';

/** Letters that descend and ascend as far as most do. */
const deepAndTall = 'gpydH';

/** Length of a line of typical words, in capital heights; our own judgement. */
const usualLength = 4;

/** Extent of letters below the lowest and above the highest baseline, whatever the actual letters. */
export function usualOf(face: FontFace, lowestLine: number, highestLine: number): LetterBand['usual'] {
  const { minY, maxY } = inkOf(face, deepAndTall);
  return { deep: lowestLine + minY, tall: highestLine + maxY, long: usualLength * face.capHeight };
}

/** Whether it has small letters, and is not capitals, digits and signs alone. */
export const hasSmallLetters = (text: string): boolean => /\p{Ll}/u.test(text);

/** How far below and above the baseline a line reaches whatever its letters, in em: one without small letters as its capitals. */
export function evenReach(face: FontFace, text: string): { readonly deep: number; readonly high: number } {
  const { minY, maxY } = inkOf(face, hasSmallLetters(text) ? 'pd' : 'H');
  return { deep: Math.max(0, -minY), high: maxY };
}

/** Bounds of the ink of some letters, in em from the baseline. */
export function inkOf(face: FontFace, letters: string): Bounds {
  const nothing = { minX: 0, minY: face.descender, maxX: 0, maxY: face.capHeight };
  const glyphs = face.shape({ text: letters, start: 0, end: letters.length, rightToLeft: false, features: new Map() });
  return curveBounds(glyphs.flatMap(({ id }) => face.outline(id))) ?? nothing;
}

/** From the lowest baseline to the x-height of the highest line, or to its capital height if it has only capitals. */
export function letterBand(face: FontFace, { glyphs, xHeight, capHeight }: TextLayout, evenly = false): LetterBand {
  const inked = glyphs.filter((glyph) => /\S/.test(glyph.text));
  const baselines = inked.length > 0 ? inked.map((glyph) => glyph.y) : [0];
  const hasSmall = inked.some((glyph) => hasSmallLetters(glyph.text));
  const highest = -lowest(baselines.map((y) => -y));
  return {
    baseline: lowest(baselines),
    top: highest + (hasSmall ? xHeight : capHeight),
    ...(evenly ? { head: highest + capHeight } : {}),
    usual: usualOf(face, lowest(baselines), highest),
  };
}

function lowest(values: readonly number[]): number {
  return values.reduce((least, value) => Math.min(least, value));
}
