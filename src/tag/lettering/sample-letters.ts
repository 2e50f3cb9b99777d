/** A few letters of a font, by which its weight, slant and hairlines are judged whatever the text is. */

import { oncePer } from '../../core/once-per.ts';
import { normalise } from '../../geometry/clipper.ts';
import { flatten } from '../../geometry/flatten.ts';
import { transformCurves } from '../../geometry/curves.ts';
import type { Region } from '../../geometry/types.ts';
import type { FontFace } from '../../text/font-face.ts';

/** Stems, arches and bowls. */
const sample = 'hnoa';

/** Tolerance of the outlines, in x-heights. */
const tolerance = 0.0005;

/** The letters at an x-height of 1; `undefined` if the font lacks one of them. */
export const sampleLetters = oncePer((face: FontFace): readonly Region[] | undefined => {
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
});
