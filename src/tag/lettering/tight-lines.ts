/** The distance of several lines of one text, by their ink. */

import { curveBounds } from '../../geometry/curves.ts';
import { hasSmallLetters } from '../../spec/read/evenly.ts';
import type { Evenly } from '../../spec/model/shape-model.ts';
import type { FontFace } from '../../text/font-face.ts';
import { singleLineFace } from '../../text/single-line-face.ts';
import type { TextLayout } from '../../text/text-layout.ts';
import { usualDrop, usualGap } from './ink-drop.ts';
import type { LineInk } from './ink-drop.ts';
import { evenReach } from './letter-band.ts';

/**
 * In em: the least for which no two lines that follow one another come nearer than usual, so that all are equally far
 * apart. `layout`: of at least two lines, at any distance. `evenly`: as if every line had all letters that it may have.
 */
export function tightLineHeight(face: FontFace, { curves, glyphs, lineCount }: TextLayout, evenly?: Evenly): number {
  const { minX, maxX } = curveBounds(curves) ?? { minX: 0, maxX: 1 };
  const lines = Array.from({ length: lineCount }, (_, number) => glyphs.filter(({ line }) => line === number));
  const inks = lines.map((line): LineInk & { readonly text: string } => {
    const text = line.map((glyph) => glyph.text).join('');
    const hasSmall = hasSmallLetters(text);
    const baseline = line[0]?.baselinePoint.y ?? 0;
    return {
      text,
      curves: line.flatMap(({ curves }) => [...curves]),
      affine: { a: 1, b: 0, c: 0, d: 1, e: -minX, f: -baseline },
      isOpen: face === singleLineFace,
      top: hasSmall ? face.xHeight : face.capHeight,
      hasSmall,
    };
  });
  const reach = evenly && evenReach(face, evenly);
  return Math.max(
    ...inks.slice(1).map((below, index) => {
      const above = inks[index]!;
      if (!reach) return usualDrop(above, below, maxX - minX);
      return reach.deep + reach.high + (usualGap * (above.top + below.top)) / 2;
    }),
  );
}
