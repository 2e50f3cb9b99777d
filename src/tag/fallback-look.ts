/** How much the letters of another font stand out among those of the first. */

import { normalise } from '../geometry/clipper.ts';
import { flatten, transformCurves } from '../geometry/curves.ts';
import { area, perimeter } from '../geometry/measure.ts';
import type { Region } from '../geometry/types.ts';
import type { FontFace } from '../text/font-face.ts';
import { slantOf } from './overlap/slant.ts';

/** Letters by which fonts are compared: stems and bowls. */
const sample = 'hnoa';

/** Strokes that are thicker or thinner by more than this factor are seen at a glance. Our own judgement. */
const seenWeight = 1.4;

/** A slant that differs by more than this, in degrees, is seen at a glance. Our own judgement. */
const seenSlant = 8;

/** Tolerance of the outlines, in x-heights. */
const tolerance = 0.005;

/** In words, such as “much bolder”; `undefined` if a reader would hardly notice, or the fonts have no letters in common. */
export function standsOut(other: FontFace, among: FontFace): string | undefined {
  const [letters, own] = [lettersOf(other), lettersOf(among)];
  if (!letters || !own) return undefined;
  const weight = stemOf(letters) / stemOf(own);
  const slant = slantOf(letters) - slantOf(own);
  if (weight > seenWeight) return 'much bolder';
  if (weight < 1 / seenWeight) return 'much lighter';
  if (slant < -seenSlant) return 'more upright';
  if (slant > seenSlant) return 'more slanted';
  return undefined;
}

/** The sample at an x-height of 1. */
function lettersOf(face: FontFace): Region[] | undefined {
  const { xHeight } = face;
  const letters = Array.from(sample, (letter) => {
    const [glyph] = face.covers(letter.codePointAt(0)!)
      ? face.shape({ text: letter, start: 0, end: 1, rightToLeft: false, features: new Map() })
      : [];
    if (!glyph) return [];
    const outline = transformCurves(face.outline(glyph.id), { a: 1 / xHeight, b: 0, c: 0, d: 1 / xHeight, e: 0, f: 0 });
    return normalise(flatten(outline, { tolerance }));
  });
  return letters.every((letter) => letter.length > 0) ? letters : undefined;
}

/** Thickness of strokes: that of a long bar with the same area and perimeter. */
function stemOf(letters: readonly Region[]): number {
  const all = letters.flat();
  return (2 * area(all)) / perimeter(all);
}
