/**
 * Fifty words in fifteen fonts, glyph by glyph: against HarfBuzz asked directly for the whole word and its own outlines, and
 * against fontkit, which shares no code with either.
 */

import assert from 'node:assert/strict';
import { create } from 'fontkit';
import { Blob, Buffer as TextBuffer, Direction, Face, Font, shape, Variation } from 'harfbuzzjs';
import { flatten } from '../../../src/geometry/flatten.ts';
import { type CurveCommand, type CurvePath } from '../../../src/geometry/curves.ts';
import { openFace, type FontFace } from '../../../src/text/font-face.ts';
import { layoutText } from '../../../src/text/text-layout.ts';
import { readTables, writeSfnt } from '../../../src/text/sfnt.ts';
import { latinWords } from '../../fonts/faces.ts';
import { bundledFontBytes, packagedFont, variableFont } from '../../fonts/font-files.ts';
import { apart } from '../support/distance.ts';

const hebrewWords = ['זרע', 'נענע', 'בזיליקום', 'לבנדר', 'שום', 'תות', 'צנון', 'כרוב', 'גזר', 'עגבנייה'];
const arabicWords = ['بذر', 'نعناع', 'ريحان', 'خزامى', 'ثوم', 'توت', 'فجل', 'لفت', 'جزر', 'طماطم', 'لا'];

interface Case {
  readonly name: string;
  readonly bytes: () => Promise<Uint8Array>;
  readonly weight?: number;
  readonly words?: readonly string[];
}

const cases: readonly Case[] = [
  ...(
    [
      ['Alfa Slab One', 400],
      ['Great Vibes', 400],
      ['Nunito', 600],
      ['Nunito', 800],
      ['Pacifico', 400],
    ] as const
  ).map(([family, weight]) => ({ name: `${family} ${weight}`, bytes: () => bundledFontBytes(family, weight) })),
  ...[
    ...['roboto', 'source-serif-4', 'source-sans-3', 'lobster', 'dancing-script'],
    ...['caveat', 'parisienne', 'amiri', 'frank-ruhl-libre'],
  ].map((slug) => ({ name: slug, bytes: () => packagedFont(slug) })),
  { name: 'Nunito, variable, at 350', bytes: () => variableFont('nunito'), weight: 350 },
  { name: 'Hebrew', bytes: () => packagedFont('frank-ruhl-libre', 'hebrew'), words: hebrewWords },
  { name: 'Arabic', bytes: () => packagedFont('amiri', 'arabic'), words: arabicWords },
];

/** Where fontkit 2.0.4 is otherwise than HarfBuzz, which browsers use too: in how many words, and by which feature alone. */
const knownDifferences: Readonly<Record<string, { readonly count: number; readonly feature: string }>> = {
  // Letters change by their neighbours, among them such as have changed already; fontkit takes other variants.
  caveat: { count: 37, feature: 'calt' },
  // Kerning varies with the weight; fontkit takes that of the font's lightest weight whatever the weight.
  'Nunito, variable, at 350': { count: 11, feature: 'kern' },
};

/** What is fine enough for outlines of some thousand units to be compared to one unit. */
const tolerance = 0.2;

/** Commands of SVG path data, as HarfBuzz's own JavaScript gives them. */
function curveOf(commands: readonly { readonly type: string; readonly values: readonly number[] }[]): CurvePath {
  return commands.map(({ type, values: [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0] }): CurveCommand => {
    if (type === 'M' || type === 'L') return { type, x: a, y: b };
    if (type === 'Q') return { type, x1: a, y1: b, x: c, y: d };
    if (type === 'C') return { type, x1: a, y1: b, x2: c, y2: d, x: e, y: f };
    return { type: 'Z' };
  });
}

interface Placed {
  readonly id: number;
  readonly x: number;
  readonly y: number;
  readonly advance: number;
}

function placedByHarfBuzz(font: Font, text: string, rightToLeft: boolean): Placed[] {
  const buffer = new TextBuffer();
  buffer.addText(text);
  buffer.guessSegmentProperties();
  if (rightToLeft) buffer.setDirection(Direction.RTL);
  shape(font, buffer, []);
  const positions = buffer.getGlyphPositions();
  let pen = 0;
  return buffer.getGlyphInfos().map(({ codepoint }, i) => {
    const { xAdvance, xOffset, yOffset } = positions[i]!;
    const glyph = { id: codepoint, x: pen + xOffset, y: yOffset, advance: xAdvance };
    pen += xAdvance;
    return glyph;
  });
}

/** In font units, to a thousandth. */
function placedByUs(face: FontFace, text: string, features: Readonly<Record<string, boolean>> = {}): Placed[] {
  const units = (em: number): number => Math.round(em * face.unitsPerEm * 1000) / 1000;
  const { glyphs, missing } = layoutText(face, { text, align: 'left', features });
  assert.deepEqual(missing, [], text);
  return glyphs.map(({ id, x, y, advance }) => ({ id, x: units(x), y: units(y), advance: units(advance) }));
}

describe('Fifty words, in fonts of every kind,', () => {
  it('are fifty, and the fonts at least twelve', () => {
    assert.equal(new Set(latinWords).size, 50);
    assert.ok(cases.filter(({ words }) => !words).length >= 12);
  });

  for (const { name, bytes, weight, words = latinWords } of cases) {
    it(`have HarfBuzz’s glyphs, advances, places and outlines in ${name}`, async () => {
      const file = await bytes();
      const variations = weight === undefined ? {} : { wght: weight };
      const face = await openFace({ bytes: file, index: 0, variations });
      const font = new Font(new Face(new Blob(writeSfnt(readTables(file)))));
      if (weight !== undefined) font.setVariations([new Variation('wght', weight)]);
      const compared = new Set<number>();
      for (const word of words) {
        const expected = placedByHarfBuzz(font, word, words !== latinWords);
        assert.deepEqual(placedByUs(face, word), expected, word);
        const { glyphs } = layoutText(face, { text: word, align: 'left' });
        for (const glyph of glyphs) {
          if (compared.has(glyph.id)) continue;
          compared.add(glyph.id);
          const scale = face.unitsPerEm;
          // In place, less the place, so that what is drawn is compared and not what it is drawn from.
          const affine = { a: scale, b: 0, c: 0, d: scale, e: -glyph.x * scale, f: -glyph.y * scale };
          const ours = flatten(glyph.curves, { affine, tolerance });
          const theirs = flatten(curveOf(font.glyphToJson(glyph.id)), { tolerance });
          assert.equal(ours.length, theirs.length, `contours of glyph ${glyph.id}`);
          ours.forEach((ring, i) => {
            const off = apart([ring], [theirs[i]!]);
            assert.ok(off <= 1 + 1e-6, `contour ${i} of glyph ${glyph.id} in “${word}” is ${off} units off`);
          });
        }
      }
      assert.ok(compared.size > 15);
    });
  }

  for (const { name, bytes, weight, words } of cases) {
    if (words) continue;
    it(`are set alike in ${name} with accents composed and not (Unicode canonical equivalence)`, async () => {
      const variations = weight === undefined ? {} : { wght: weight };
      const face = await openFace({ bytes: await bytes(), index: 0, variations });
      const accented = latinWords.filter((word) => word.normalize('NFD') !== word.normalize('NFC'));
      assert.ok(accented.length >= 15);
      for (const word of accented)
        assert.deepEqual(placedByUs(face, word.normalize('NFD')), placedByUs(face, word.normalize('NFC')), word);
    });

    it(`have fontkit’s glyphs, advances and places in ${name}`, async () => {
      const file = await bytes();
      const variations = weight === undefined ? {} : { wght: weight };
      const face = await openFace({ bytes: file, index: 0, variations });
      const whole = create(file);
      const other = weight === undefined ? whole : whole.getVariation({ wght: weight });
      const agrees = (word: string, off?: string): boolean => {
        const features = off === undefined ? {} : { [off]: false };
        const ours = placedByUs(face, word, features);
        const run = other.layout(word, features);
        let pen = 0;
        const theirs = run.glyphs.map(({ id }, i) => {
          const { xAdvance, xOffset, yOffset } = run.positions[i]!;
          const placed = { id, x: pen + xOffset, y: yOffset, advance: xAdvance };
          pen += xAdvance;
          return placed;
        });
        // fontkit keeps fractions of a unit where a font varies; HarfBuzz rounds to whole ones.
        const slack = weight === undefined ? 0 : 0.5;
        return (
          ours.length === theirs.length &&
          ours.every(
            (glyph, i) =>
              glyph.id === theirs[i]!.id &&
              Math.abs(glyph.advance - theirs[i]!.advance) <= slack &&
              Math.abs(glyph.x - theirs[i]!.x) <= slack * (i + 1) &&
              Math.abs(glyph.y - theirs[i]!.y) <= slack,
          )
        );
      };
      const different = latinWords.filter((word) => !agrees(word));
      const { count, feature } = knownDifferences[name] ?? { count: 0, feature: 'kern' };
      assert.equal(different.length, count, different.join(', '));
      // Without that feature there is no difference.
      assert.deepEqual(
        different.filter((word) => !agrees(word, feature)),
        [],
      );
    });
  }
});
