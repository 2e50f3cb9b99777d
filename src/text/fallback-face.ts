/** Combines several fonts into one: each letter comes from the first of them that has it. */

import { transformCurves } from '../geometry/curves.ts';
import { contentHash } from './content-hash.ts';
import type { FontFace } from './font-face.ts';
import { hasLetter } from './itemise.ts';

/** More glyphs than a font can have. */
const glyphsOfAFont = 0x10000;

const graphemes = new Intl.Segmenter('en', { granularity: 'grapheme' });

/** The letters of a text that the first font lacks and another has, by the font they come from. */
export function lettersByFace(text: string, faces: readonly FontFace[]): Map<FontFace, string[]> {
  const byFace = new Map<FontFace, string[]>();
  for (const { segment } of graphemes.segment(text)) {
    const face = faces.find((each) => hasLetter(segment, each));
    if (!face || face === faces[0]) continue;
    const letters = byFace.get(face) ?? [];
    if (!letters.includes(segment)) byFace.set(face, [...letters, segment]);
  }
  return byFace;
}

/**
 * @param faces The first determines the height of letters and the line spacing; the others are scaled to its x-height.
 */
export function fallbackFace(faces: readonly [FontFace, ...FontFace[]]): FontFace {
  const [first] = faces;
  // The parts that one font is handed out in are of one size, whatever the part without an “x” says of it.
  const sizes = faces.map(({ family, xHeight }) => (family === first.family ? 1 : first.xHeight / xHeight));
  /** The font that a glyph belongs to, and its number in that font. */
  const ofGlyph = (glyph: number) => ({ index: Math.floor(glyph / glyphsOfAFont), own: glyph % glyphsOfAFont });
  const units = (index: number, value: number) => (value / faces[index]!.unitsPerEm) * sizes[index]! * first.unitsPerEm;
  return {
    ...first,
    id: contentHash([new TextEncoder().encode(JSON.stringify(faces.map(({ id }) => id)))]),
    covers: (codePoint) => faces.some((face) => face.covers(codePoint)),
    advanceOf: (glyph) => {
      const { index, own } = ofGlyph(glyph);
      return units(index, faces[index]!.advanceOf(own));
    },
    outlineOf: (glyph) => {
      const { index, own } = ofGlyph(glyph);
      return faces[index]!.outlineOf(own);
    },
    outline: (glyph) => {
      const { index, own } = ofGlyph(glyph);
      const size = sizes[index]!;
      const outline = faces[index]!.outline(own);
      return size === 1 ? outline : transformCurves(outline, { a: size, b: 0, c: 0, d: size, e: 0, f: 0 });
    },
    shape: (request) => {
      const stretches = faceRuns(request.text, request.start, request.end, faces);
      const seen = request.rightToLeft ? stretches.toReversed() : stretches;
      return seen.flatMap(({ start, end, index }) =>
        faces[index]!.shape({ ...request, start, end }).map((glyph) => ({
          ...glyph,
          // A letter that no font has is glyph 0, whichever font was asked.
          id: glyph.id === 0 ? 0 : index * glyphsOfAFont + glyph.id,
          advance: units(index, glyph.advance),
          dx: units(index, glyph.dx),
          dy: units(index, glyph.dy),
        })),
      );
    },
  };
}

interface FaceRun {
  readonly start: number;
  readonly end: number;
  readonly index: number;
}

/** Stretches of a text that one font can set, in the order of the text. */
function faceRuns(text: string, start: number, end: number, faces: readonly FontFace[]): FaceRun[] {
  const stretches: FaceRun[] = [];
  for (const { segment, index: at } of graphemes.segment(text.slice(start, end))) {
    const index = Math.max(
      0,
      faces.findIndex((face) => hasLetter(segment, face)),
    );
    const last = stretches.at(-1);
    const to = start + at + segment.length;
    if (last?.index === index) stretches[stretches.length - 1] = { ...last, end: to };
    else stretches.push({ start: start + at, end: to, index });
  }
  return stretches;
}
