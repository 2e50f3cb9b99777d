/** Text set in a font. */

import { curveBounds } from '../geometry/curves.ts';
import type { Shape, TextGenerator } from '../spec/model.ts';
import type { FontFace } from '../text/font-face.ts';
import { layoutText } from '../text/layout.ts';
import type { TextLayout } from '../text/layout.ts';
import type { LetterBand } from './solid.ts';

/** Rounds of settling the em when the space between letters is given in mm: each leaves under a tenth of the error. */
const spacingRounds = 4;

/** The layout in ems; space between letters asked for in mm is that at the size the shape will have. */
export function setText(face: FontFace, text: TextGenerator, modifiers: Shape['modifiers']): TextLayout {
  const lay = (letterSpacing: number) =>
    layoutText(face, {
      text: text.text,
      letterSpacing,
      align: text.align,
      features: text.features,
      ...(text.lineHeight === undefined ? {} : { lineHeight: text.lineHeight }),
    });
  let layout = lay(0);
  if (text.letterSpacingMm === 0) return layout;
  for (let round = 0; round < spacingRounds; round++) {
    const em = mmPerEm(layout, text, modifiers);
    if (!(em > 0)) return layout;
    layout = lay(text.letterSpacingMm / em);
  }
  return layout;
}

function mmPerEm(
  { curves }: TextLayout,
  { sizeMm }: TextGenerator,
  { width, height, grow = 0 }: Shape['modifiers'],
): number {
  const bounds = curveBounds(curves);
  if (!bounds) return 0;
  if (width !== undefined) return (width - 2 * grow) / (bounds.maxX - bounds.minX);
  if (height !== undefined) return (height - 2 * grow) / (bounds.maxY - bounds.minY);
  return sizeMm ?? 0;
}

/** From the lowest baseline to the top of the small letters of the highest line, or of its capitals where all are capitals. */
export function letterBand({ glyphs, xHeight, capHeight }: TextLayout): LetterBand {
  const inked = glyphs.filter((glyph) => /\S/.test(glyph.text));
  const baselines = inked.length > 0 ? inked.map((glyph) => glyph.y) : [0];
  const hasSmall = inked.some((glyph) => /\p{Ll}/u.test(glyph.text));
  return { baseline: lowest(baselines), top: -lowest(baselines.map((y) => -y)) + (hasSmall ? xHeight : capHeight) };
}

function lowest(values: readonly number[]): number {
  return values.reduce((least, value) => Math.min(least, value));
}
