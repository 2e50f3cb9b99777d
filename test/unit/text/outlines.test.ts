import assert from 'node:assert/strict';
import { create, type PathCommand } from 'fontkit';
import { curveBounds, type CurveCommand } from '../../../src/geometry/curves.ts';
import { flatten } from '../../../src/geometry/flatten.ts';
import type { Affine, Ring } from '../../../src/geometry/types.ts';
import { openFace, type FontFace } from '../../../src/text/font-face.ts';
import { layoutText } from '../../../src/text/text-layout.ts';
import { blockFont } from '../../fonts/block-font.ts';
import { bundledFace, packagedFace, words } from '../../fonts/faces.ts';
import { bundledFontBytes, packagedFont, variableFont } from '../../fonts/font-files.ts';
import { apart } from '../support/distance.ts';

function area(rings: readonly Ring[]): number {
  let sum = 0;
  for (const ring of rings) {
    ring.forEach((p, i) => {
      const q = ring[(i + 1) % ring.length]!;
      sum += (p.x * q.y - q.x * p.y) / 2;
    });
  }
  return sum;
}

/** The glyphs that the words need, as this project has them, as fontkit has them, and as HarfBuzz has them: in font units. */
function compare(face: FontFace, bytes: Uint8Array): void {
  const fontkit = create(bytes);
  const ids = new Set(
    words.flatMap((text) => layoutText(face, { text, align: 'left' }).glyphs.map((glyph) => glyph.id)),
  );
  assert.ok(ids.size > 40, `only ${ids.size} glyphs`);
  const scale = face.unitsPerEm;
  const affine: Affine = { a: scale, b: 0, c: 0, d: scale, e: 0, f: 0 };
  const tolerance = 0.5;
  for (const id of ids) {
    const ours = flatten(face.outline(id), { affine, tolerance });
    for (const [name, path] of [
      ['fontkit', fontkit.getGlyph(id).path.commands.map(curveCommand)],
      ['HarfBuzz', face.outlineOf(id)],
    ] as const) {
      const theirs = flatten(path, { tolerance });
      assert.equal(ours.length, theirs.length, `contours of glyph ${id}, ${name}`);
      ours.forEach((ring, i) => {
        const off = apart([ring], [theirs[i]!]);
        // One unit: they round the parts of a composite glyph differently.
        assert.ok(off <= 1 + 2 * tolerance, `glyph ${id} is off by ${off} from ${name}`);
      });
      assert.ok(Math.abs(area(ours) - Math.abs(area(theirs))) <= 1e-3 * scale * scale, `area of glyph ${id}, ${name}`);
    }
  }
}

function curveCommand({ command, args }: PathCommand): CurveCommand {
  const [a, b, c, d, e, f] = args as [number, number, number, number, number, number];
  switch (command) {
    case 'moveTo':
      return { type: 'M', x: a, y: b };
    case 'lineTo':
      return { type: 'L', x: a, y: b };
    case 'quadraticCurveTo':
      return { type: 'Q', x1: a, y1: b, x: c, y: d };
    case 'bezierCurveTo':
      return { type: 'C', x1: a, y1: b, x2: c, y2: d, x: e, y: f };
    case 'closePath':
      return { type: 'Z' };
  }
}

describe('outlines', () => {
  it('have the areas of Ahem’s letters at 10 mm: X 100 mm², p 20 mm², É 80 mm² (README of the W3C Ahem font)', async () => {
    const face = await openFace({ bytes: blockFont(), index: 0, variations: {} });
    for (const [text, expected, bottom, top] of [
      ['X', 100, -2, 8],
      ['p', 20, -2, 0],
      ['É', 80, 0, 8],
    ] as const) {
      const { curves, advance } = layoutText(face, { text, align: 'left' });
      const affine = { a: 10, b: 0, c: 0, d: 10, e: 0, f: 0 };
      const rings = flatten(curves, { affine });
      assert.ok(Math.abs(area(rings) - expected) < 1e-9, `${text}: ${area(rings)}`);
      const bounds = curveBounds(curves)!;
      assert.deepEqual([bounds.minX, bounds.maxX, bounds.minY * 10, bounds.maxY * 10], [0, 1, bottom, top]);
      assert.equal(advance, 1);
    }
    assert.deepEqual([face.ascender, face.descender], [0.8, -0.2]);
  });

  for (const [family, weight] of [
    ['Alfa Slab One', 400],
    ['Great Vibes', 400],
    ['Nunito', 600],
    ['Nunito', 800],
    ['Pacifico', 400],
  ] as const) {
    it(`of ${family} ${weight} agree with fontkit and HarfBuzz within a font unit`, async () => {
      compare(await bundledFace(family, weight), await bundledFontBytes(family, weight));
    });
  }

  // Without Yellowtail, some of whose contours begin with a control point: fontkit starts those a few units elsewhere.
  for (const slug of [
    'roboto',
    'source-serif-4',
    'lobster',
    'dancing-script',
    'caveat',
    'parisienne',
    'source-sans-3',
  ]) {
    it(`of the test font ${slug} agree with fontkit and HarfBuzz within a font unit`, async () => {
      compare(await packagedFace(slug), await packagedFont(slug));
    });
  }

  it('of a variable font set to 600 are those of the static font of weight 600 (Nunito, both made from one source)', async () => {
    const still = await bundledFace('Nunito', 600);
    const bytes = await variableFont('nunito');
    const varying = await openFace({ bytes, index: 0, variations: { wght: 600 } });
    const lightest = await openFace({ bytes, index: 0, variations: { wght: 200 } });
    assert.equal(varying.weight, 600);
    assert.notEqual(varying.id, lightest.id);
    for (const text of 'SorelBagChvinxy') {
      const outline = (face: FontFace): Ring[] => flatten(layoutText(face, { text, align: 'left' }).curves);
      const expected = Math.abs(area(outline(still)));
      assert.ok(apart(outline(varying), outline(still)) < 0.004, `${text} ${apart(outline(varying), outline(still))}`);
      assert.ok(area(outline(lightest)) < 0.8 * expected, `${text} at 200 is lighter than at 600`);
    }
  });

  it('turn counter-clockwise outside, be they TrueType or CFF, so that overlapping letters add up', async () => {
    const faces = [
      await bundledFace('Pacifico'),
      await packagedFace('roboto'),
      await openFace({ bytes: blockFont(), index: 0, variations: {} }),
    ];
    for (const face of faces) {
      for (const glyph of layoutText(face, { text: 'pXÉ', align: 'left' }).glyphs) {
        assert.ok(area(flatten(glyph.curves)) > 0, `${face.family}: ${glyph.text}`);
      }
    }
    // A letter with a hole: the outer ring one way, the inner one the other.
    const o = flatten(layoutText(await packagedFace('roboto'), { text: 'o', align: 'left' }).curves);
    assert.deepEqual(
      o.map((ring) => Math.sign(area([ring]))).sort((a, b) => a - b),
      [-1, 1],
    );
  });
});
