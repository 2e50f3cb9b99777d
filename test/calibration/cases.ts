/** What is shown to the reader: words as drawn by a font, and as made of them, thinned or grown, small or large, cut or engraved. */

import { curveBounds } from '../../src/geometry/curves.ts';
import { offset, union } from '../../src/geometry/clipper.ts';
import { area, perimeter } from '../../src/geometry/measure.ts';
import type { Region } from '../../src/geometry/types.ts';
import { Lettering, flattenLetters } from '../../src/tag/lettering/letters.ts';
import type { LetterCurves } from '../../src/tag/lettering/letters.ts';
import type { FontFace } from '../../src/text/font-face.ts';
import { layoutText } from '../../src/text/text-layout.ts';
import type { Beam } from './drawn.ts';

/** Heights of the small letters in mm, from a line of small print to a name that is hung up. */
export const sizes = [1.2, 2.5, 5, 12] as const;

/** `stem`: share of the thickness of the strokes taken away. `x`: growth all round in heights of the small letters. */
export const growths = [
  { stem: 0.7 },
  { stem: 0.35 },
  { x: 0 },
  { x: 0.05 },
  { x: 0.1 },
  { x: 0.16 },
  { x: 0.23 },
  { x: 0.32 },
] as const;

/** Usual figures of small lasers in mm; rule of thumb, no source. */
export const beams: readonly [Beam, Beam] = [
  { use: 'cut', kerf: 0.16 },
  { use: 'engraved', spot: 0.2, interval: 0.1 },
];

export interface Case {
  readonly size: number;
  readonly growth: number;
  readonly beam: Beam;
  readonly lettering: Lettering;
  readonly made: Region;
}

/** A word as its font draws it, at a size. */
export function letteringOf(face: FontFace, text: string, xHeight: number, grow = 0): Lettering {
  const { glyphs } = layoutText(face, { text, align: 'left' });
  const letters: LetterCurves[] = glyphs
    .filter(({ curves }) => curveBounds(curves) !== undefined)
    .map((glyph) => ({ text: glyph.text, curves: glyph.curves, line: 0, baseline: 0 }));
  const scale = xHeight / face.xHeight;
  const affine = { a: scale, b: 0, c: 0, d: scale, e: 0, f: 0 };
  return new Lettering({ path: [], xHeight, grow, as: 'material' }, () => flattenLetters(letters, affine));
}

export function inkOf({ letters }: Lettering): Region {
  return union([letters.flatMap(({ region }) => region)]);
}

/** Thickness of the strokes of a font in heights of its small letters: what a long bar of that area and outline has. */
export function stemOf(face: FontFace): number {
  const ink = inkOf(letteringOf(face, 'nour', 100));
  return (2 * area(ink)) / perimeter(ink) / 100;
}

/**
 * Every growth of the word, cut and engraved by turns, each at every size, or with `sample` at one of the four: another one for
 * the next word, so that all meet as often.
 */
export function casesOf(face: FontFace, stem: number, text: string, turn: number, sample: boolean): Case[] {
  return growths.flatMap((growth, g) =>
    sizes.flatMap((size, s): Case[] => {
      if (sample && (s + g + turn) % sizes.length !== 0) return [];
      const by = size * ('x' in growth ? growth.x : (-growth.stem * stem) / 2);
      const lettering = letteringOf(face, text, size, by);
      const beam = beams[(g + Math.floor(turn / sizes.length)) % 2]!;
      return [{ size, growth: g, beam, lettering, made: offset(inkOf(lettering), by) }];
    }),
  );
}
