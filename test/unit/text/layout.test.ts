import assert from 'node:assert/strict';
import { create } from 'fontkit';
import { curveBounds } from '../../../src/geometry/curves.ts';
import { openFace, type FontFace } from '../../../src/text/font-face.ts';
import { layoutText, type TextLayout, type TextSpec } from '../../../src/text/text-layout.ts';
import { blockFont } from '../../fonts/block-font.ts';
import { bundledFace, packagedFace, words } from '../../fonts/faces.ts';
import { bundledFontBytes } from '../../fonts/font-files.ts';
import { assertWorked, worked } from '../support/effort.ts';

function lay(face: FontFace, text: string, rest: Partial<TextSpec> = {}): TextLayout {
  return layoutText(face, { text, align: 'left', ...rest });
}

function near(actual: number, expected: number, tolerance = 1e-9): void {
  assert.ok(Math.abs(actual - expected) <= tolerance, `${actual}, not ${expected}`);
}

const plain = { features: { kern: false, liga: false } };

describe('setting text', () => {
  // Agreed by two independent shapers, fontkit 2.0.4 and HarfBuzz 1.6.4 for JavaScript, on the fonts of these very versions.
  for (const [slug, text, withFeatures, without, glyphs] of [
    ['roboto', 'AVATAR', 7426, 7796, [6, 6]],
    ['source-serif-4', 'office', 2610, 2699, [4, 6]],
    ['source-serif-4', 'AV', 1302, 1421, [2, 2]],
    ['great-vibes', 'Love', 1615, 1619, [4, 4]],
    ['great-vibes', 'To', 1248, 1271, [2, 2]],
  ] as const) {
    it(`“${text}” in ${slug} is ${withFeatures} units with kerning and ligatures, ${without} without`, async () => {
      const face = await packagedFace(slug);
      const natural = lay(face, text);
      const bare = lay(face, text, plain);
      near(natural.advance * face.unitsPerEm, withFeatures, 1e-6);
      near(bare.advance * face.unitsPerEm, without, 1e-6);
      assert.deepEqual([natural.glyphs.length, bare.glyphs.length], glyphs);
    });
  }

  for (const [family, weight] of [
    ['Alfa Slab One', 400],
    ['Great Vibes', 400],
    ['Nunito', 600],
    ['Pacifico', 400],
  ] as const) {
    it(`takes the glyphs and advances of fontkit for ${words.length} words in ${family}`, async () => {
      const face = await bundledFace(family, weight);
      const other = create(await bundledFontBytes(family, weight));
      for (const text of words) {
        const ours = lay(face, text);
        const theirs = other.layout(text);
        assert.deepEqual(
          ours.glyphs.map((glyph) => glyph.id),
          theirs.glyphs.map((glyph) => glyph.id),
          text,
        );
        ours.glyphs.forEach((glyph, i) => {
          near(glyph.advance * face.unitsPerEm, theirs.positions[i]!.xAdvance, 1e-6);
        });
      }
    });
  }

  it('says which letters each glyph stands for', async () => {
    const { glyphs } = lay(await packagedFace('source-serif-4'), 'office');
    assert.deepEqual(
      glyphs.map((glyph) => glyph.text),
      ['o', 'ffi', 'c', 'e'],
    );
  });

  it('gives composed and decomposed accents the same outlines', async () => {
    for (const family of ['Pacifico', 'Great Vibes', 'Alfa Slab One']) {
      const face = await bundledFace(family);
      for (const text of ['café', 'Žofie', 'Jürgen', 'Ņina', 'Åse']) {
        const composed = lay(face, text.normalize('NFC'));
        const decomposed = lay(face, text.normalize('NFD'));
        assert.deepEqual(decomposed.curves, composed.curves, text);
        assert.deepEqual([...composed.missing, ...decomposed.missing], []);
      }
    }
  });

  it('sets a base and a mark for an accented letter that the font has only in parts', async () => {
    // q with an acute has no character of its own.
    const face = await packagedFace('roboto');
    assert.ok(face.covers(0x301));
    const accented = lay(face, 'q\u0301');
    const bare = lay(face, 'q');
    assert.deepEqual(accented.missing, []);
    near(accented.advance, bare.advance);
    assert.ok(curveBounds(accented.curves)!.maxY > curveBounds(bare.curves)!.maxY + 0.1);
  });

  it('turns off optional ligatures, and not kerning, where letters are spaced (CSS Text 3, letter-spacing)', async () => {
    const face = await packagedFace('source-serif-4');
    const spaced = lay(face, 'office', { letterSpacing: 0.1 });
    assert.equal(spaced.glyphs.length, 6);
    // Five spaces between six letters.
    near(spaced.advance, lay(face, 'office', { features: { liga: false } }).advance + 0.5);
    near(lay(face, 'AV', { letterSpacing: 0.1 }).advance, 1.302 + 0.1);
    const asked = lay(face, 'office', { letterSpacing: 0.1, features: { liga: true } });
    assert.equal(asked.glyphs.length, 4);
  });

  it('keeps required ligatures where letters are spaced: lam with alef, in Arabic', async () => {
    const face = await packagedFace('amiri', 'arabic');
    const tight = lay(face, 'لا');
    const spaced = lay(face, 'لا', { letterSpacing: 0.1 });
    assert.deepEqual(
      spaced.glyphs.map((glyph) => glyph.id),
      tight.glyphs.map((glyph) => glyph.id),
    );
  });

  it('spaces a letter once, however many glyphs draw it', async () => {
    const face = await packagedFace('roboto');
    const bare = lay(face, 'q\u0301q');
    near(lay(face, 'q\u0301q', { letterSpacing: 0.2 }).advance, bare.advance + 0.2);
  });

  it('puts lines at the distance asked for, and aligns them within the widest', async () => {
    const face = await openFace({ bytes: blockFont(), index: 0, variations: {} });
    for (const [align, x] of [
      ['left', [0, 0, 0]],
      ['center', [0, 1, 0.5]],
      ['right', [0, 2, 1]],
    ] as const) {
      const layout = lay(face, 'XXX\nX\nXX', { align, lineHeight: 1.5 });
      assert.deepEqual([layout.lineCount, layout.advance], [3, 3]);
      const firsts = [0, 1, 2].map((line) => layout.glyphs.find((glyph) => glyph.line === line)!);
      assert.deepEqual(
        firsts.map((glyph) => glyph.x),
        x,
      );
      assert.deepEqual(
        firsts.map((glyph) => glyph.y),
        [0, -1.5, -3],
      );
      assert.deepEqual(curveBounds(layout.curves), { minX: 0, maxX: 3, minY: -3.2, maxY: 0.8 });
    }
    // 800 + 200 units and no gap: the font's own distance.
    near(lay(face, 'X\nX').glyphs[1]!.y, -1);
  });

  it('breaks lines where Unicode does (UAX #14, mandatory breaks), and counts an empty one', async () => {
    const face = await bundledFace('Nunito', 600);
    for (const text of ['a\nb', 'a\r\nb', 'a\rb', 'a\u2028b', 'a\u0085b']) assert.equal(lay(face, text).lineCount, 2);
    assert.equal(lay(face, 'a\n\nb').lineCount, 3);
  });

  it('lets spaces at the end of a line take no room, and those at its start some', async () => {
    const face = await bundledFace('Nunito', 600);
    near(lay(face, 'pea  \nbean').advance, lay(face, 'pea\nbean').advance);
    near(lay(face, 'pea  ').advance, lay(face, 'pea').advance);
    assert.ok(lay(face, '  pea').advance > lay(face, 'pea').advance + 0.3);
  });

  it('reports letters the font lacks, with their place in the text, and draws the rest', async () => {
    const face = await bundledFace('Pacifico');
    const layout = lay(face, 'Pea 🌱\nあ-bean 👩🏽‍🌾 ☃');
    assert.deepEqual(layout.missing, [
      { text: '🌱', index: 4 },
      { text: 'あ', index: 7 },
      { text: '👩🏽‍🌾', index: 14 },
      { text: '☃', index: 22 },
    ]);
    assert.equal(layout.glyphs.map((glyph) => glyph.text).join(''), 'Pea -bean  ');
    assert.ok(curveBounds(layout.curves)!.maxX > 1);
  });

  it('reports a letter of a subset that only the whole font has: Ł', async () => {
    assert.deepEqual(lay(await packagedFace('pacifico', 'latin'), 'Łucja').missing, [{ text: 'Ł', index: 0 }]);
    assert.deepEqual(lay(await bundledFace('Pacifico'), 'Łucja').missing, []);
  });

  it('survives lone surrogates, control characters, joiners, long stacks of accents and nothing at all', async () => {
    const face = await bundledFace('Nunito', 600);
    assert.deepEqual(lay(face, 'a\ud83cb').missing, [{ text: '\ud83c', index: 1 }]);
    assert.deepEqual(lay(face, '\udf31').missing, [{ text: '\udf31', index: 0 }]);
    near(lay(face, 'a\u0007b\u200b\ufeff').advance, lay(face, 'ab').advance);
    near(lay(face, 'a\tb').advance, lay(face, 'a b').advance);
    near(lay(face, 'a\u00a0b').advance, lay(face, 'a b').advance);
    assert.deepEqual(lay(face, `e${'\u0301'.repeat(500)}`).missing, []);
    for (const text of ['', ' ', '\n', '\u200d']) {
      const { curves, advance, missing } = lay(face, text);
      assert.deepEqual({ curves, advance, missing }, { curves: [], advance: 0, missing: [] });
    }
    assert.equal(lay(face, '').lineCount, 1);
  });

  it('ignores features that are no features', async () => {
    const face = await bundledFace('Nunito', 600);
    const odd = { features: { '': true, ligature: true, lïga: true, liga: -1 } };
    assert.deepEqual(lay(face, 'Sorrel', odd).curves, lay(face, 'Sorrel').curves);
  });

  it('places the same text the same way again', async () => {
    const face = await bundledFace('Great Vibes');
    assert.deepEqual(lay(face, 'Sorrel\nBorage'), lay(face, 'Sorrel\nBorage'));
  });

  it('sets 5,000 letters with less than two seconds of work, mixed and broken ones too', async () => {
    const face = await bundledFace('Pacifico');
    for (const text of [
      'Sorrel, borage & łąki '.repeat(228),
      'aщ🌱'.repeat(1250),
      'שa'.repeat(2500),
      '\n'.repeat(5000),
      '\ud83c'.repeat(5000),
    ]) {
      const start = worked();
      lay(face, text);
      assertWorked(start, 2, JSON.stringify(text.slice(0, 8)));
    }
  });
});
