/** Letters that read as another one where they meet: by OCR in eight faces (`npm run misread`), and by eye. */

import assert from 'node:assert/strict';
import { intersection, offset } from '../../../src/geometry/clipper.ts';
import { area, boundsOf, ringArea } from '../../../src/geometry/measure.ts';
import { partsOf } from '../../../src/geometry/parts.ts';
import type { Bounds, Region } from '../../../src/geometry/types.ts';
import { hardToRead } from '../../../src/checks/hard-to-read.ts';
import { marksAbove } from '../../../src/tag/lettering/marks-above.ts';
import { leadsOn } from '../../../src/tag/overlap/reading.ts';
import { rowsOf } from '../../../src/tag/overlap/runs.ts';
import { packagedFont } from '../../fonts/font-files.ts';
import { assertNear, makeUnchecked, newEngine, report, specOf } from '../support/engine.ts';
import { box, polygon } from '../support/shapes.ts';

const slugs = [
  'roboto',
  'roboto-slab',
  'zilla-slab',
  'source-serif-4',
  'josefin-sans',
  'quicksand',
  'playfair-display',
];
const fonts = slugs.map(
  async (slug) => [`${slug}.woff`, new Uint8Array(await packagedFont(slug, 'latin', 400))] as const,
);
const engine = newEngine(Object.fromEntries(await Promise.all(fonts)));

const head = ['stock: {thickness: 3 mm, kerf: 0.16 mm, min_web: 1.5 mm}'];
const xHeight = 12;

function spec(text: string, font: string, more = ''): string {
  const file = slugs.includes(font) ? `${font}.woff` : font;
  const shape = `body: {text: "${text}", font: ${file}, x_height: ${xHeight} mm, overlap: 0.6 mm${more}}`;
  return specOf([shape], 'body: [body], parts: many', head);
}

/** What lies between two letters of a text, and where. */
async function between(text: string, font: string, index: number): Promise<Bounds & { readonly gap: number }> {
  const made = await makeUnchecked(spec(text, font), engine);
  const [solid] = [...made.report.tag!.made.values()];
  const { letters } = solid!.lettering![0]!;
  const [left, right] = [index, index + 1].map((k) => boundsOf(letters[k]!.region)!);
  const middle = (left!.maxX + right!.minX) / 2;
  const { baseline } = solid!.band!;
  const strip: Region = [box(middle - 0.01, baseline - 0.5, middle + 0.01, baseline + 2 * xHeight)];
  const { minX, maxX, minY, maxY } = boundsOf(intersection(made.region, strip))!;
  return { minX, maxX, minY: minY - baseline, maxY: maxY - baseline, gap: right!.minX - left!.maxX };
}

describe('A stem whose foot leads on', () => {
  const xh = 10;
  const rows = (region: Region) => rowsOf(region, 0.1);
  it('is that of an l with a curl, which a bar above its foot would make a “t” of', () => {
    const curled = (reach: number) => rows([polygon([0, 0], [2 + reach, 0], [2 + reach, 2], [2, 2], [2, 15], [0, 15])]);
    assert.ok(leadsOn(curled(1.2), xh));
    assert.ok(!leadsOn(curled(0.8), xh), 'a serif');
    assert.ok(!leadsOn(rows([polygon([0, 0], [2, 0], [2, 15], [0, 15])]), xh));
  });
});

describe('Letters that would read as another one where they meet', () => {
  for (const [text, font, index] of [
    ['Violet', 'roboto', 2],
    ['Clover', 'quicksand', 1],
    ['Corn', 'josefin-sans', 1],
  ] as const)
    it(`are a bowl and a stem, a “d” or a “b”: ${text} in ${font} has a bar halfway up the bowl alone`, async () => {
      const { minY, maxY, gap } = await between(text, font, index);
      assert.ok(gap > 0.1 * xHeight, `${gap} mm apart`);
      assertNear((minY + maxY) / 2, xHeight / 2, 0.1 * xHeight, 'the middle of the bar');
      assert.ok(maxY - minY < 0.3 * xHeight, 'nothing else is between them');
    });

  for (const [text, font, index] of [
    ['Barn', 'roboto', 2],
    ['Fern', 'quicksand', 2],
    ['Born', 'josefin-sans', 2],
  ] as const)
    it(`are an r and a stem, an “m”: ${text} in ${font} stands on a bar, with the arm of the r free`, async () => {
      const { minY, maxY, gap } = await between(text, font, index);
      assert.ok(gap > 0.1 * xHeight, `${gap} mm apart`);
      assertNear(minY, 0, 0.05, 'the lower edge of the bar');
      assert.ok(maxY < 0.3 * xHeight, `the bar ends ${maxY} mm up`);
    });

  for (const [text, font, index] of [
    ['cocoa', 'Nunito', 0],
    ['Rocco', 'quicksand', 3],
  ] as const)
    it(`are a c before a bowl, two rings: ${text} in ${font} stands on a bar, and its c is open`, async () => {
      const { minY, maxY, gap } = await between(text, font, index);
      assert.ok(gap > 0, `${gap} mm apart`);
      assert.ok(minY < 0.05 * xHeight && maxY < 0.35 * xHeight, `the bar is ${minY} to ${maxY} mm up`);
    });

  for (const [text, font, index] of [
    ['Ivy', 'roboto', 0],
    ['2011', 'roboto', 2],
  ] as const)
    it(`are a stem and a slope or a flag, an “N” or an “M”: ${text} in ${font} stands on a bar`, async () => {
      const { minY, maxY } = await between(text, font, index);
      assertNear(minY, 0, 0.05, 'the lower edge of the bar');
      assert.ok(maxY < 0.3 * xHeight, `the bar ends ${maxY} mm up`);
    });

  it('are none where the arm of an r meets a bowl, or a bare stem', async () => {
    for (const [text, index] of [
      ['Rro', 1],
      ['Rri', 1],
    ] as const) {
      const { gap } = await between(text, 'quicksand', index);
      assert.ok(gap < 0.1, `${text}: ${gap} mm apart`);
    }
  });
});

describe('A bar between two words', () => {
  for (const [text, index] of [
    ['Sea Kale', 2],
    ['Jean Paul', 3],
    ['Iris Moss', 3],
  ] as const)
    it(`lies along the baseline beside a stem that rises above it, which would be a T: ${text}`, async () => {
      const { minY, maxY } = await between(text, 'Nunito, weight: 800', index);
      assertNear(minY, 0, 0.05, 'its lower edge');
      assert.ok(maxY < 0.3 * xHeight, `it ends ${maxY} mm up`);
    });
});

describe('The dot of an i under an arm', () => {
  for (const font of ['roboto-slab', 'zilla-slab', 'source-serif-4'])
    it(`is clear of the F in ${font}: the i hangs on its middle arm`, async () => {
      const made = await makeUnchecked(spec('Fir', font, ', grow: 0.2 mm'), engine);
      const [solid] = [...made.report.tag!.made.values()];
      const [f, i] = solid!.lettering![0]!.letters;
      const room = offset(f!.region, 0.1 * xHeight);
      assert.equal(area(intersection(room, marksAbove(i!.region).flat())), 0);
      assert.equal(partsOf(made.region).length, 1);
    });

  const said = async (text: string, font: string): Promise<string[]> =>
    hardToRead((await report(spec(text, font, ', grow: auto'), engine)).tag!).map(({ message }) => message);

  it('is clear of the T where both have feet to stand on', async () => {
    for (const font of ['roboto-slab', 'playfair-display', 'source-serif-4']) {
      const made = await makeUnchecked(spec('Till', font), engine);
      const [t, i] = [...made.report.tag!.made.values()][0]!.lettering![0]!.letters;
      const room = offset(t!.region, 0.1 * xHeight);
      assert.equal(area(intersection(room, marksAbove(i!.region).flat())), 0, font);
      assert.equal(partsOf(made.region).length, 1, font);
    }
  });

  it('is said where nothing else holds the letter and one side of it is filled', async () => {
    assert.deepEqual(await said('Tïm', 'zilla-slab'), [
      '“Tïm” may be hard to read: a dot, accent or apostrophe runs into the next letter.',
    ]);
  });

  it('is not where it only touches the end of the arm, with white on both sides', async () => {
    for (const font of ['roboto', 'Nunito, weight: 800', 'quicksand'])
      assert.deepEqual(await said('Tilda', font), [], font);
    assert.deepEqual(await said('Tïm', 'quicksand'), []);
  });
});

describe('An E before a small letter that reaches up', () => {
  for (const font of ['roboto', 'quicksand', 'josefin-sans'])
    it(`keeps its bays open, as a “B” has two counters and neither letter has one: ${font}`, async () => {
      for (const text of ['El', 'Ek']) {
        const { region } = await makeUnchecked(spec(text, font), engine);
        const holes = region.filter((ring) => ringArea(ring) < 0).length;
        assert.equal(holes, 0, `${holes} in ${text}`);
      }
    });

  it('has no bar at the foot of an F, which would be an E', async () => {
    const { region, report: made } = await makeUnchecked(spec('Fl', 'roboto'), engine);
    const { baseline } = [...made.tag!.made.values()][0]!.band!;
    const { minX, maxX } = boundsOf(region)!;
    const middle = box(minX + 0.3 * (maxX - minX), baseline - 1, minX + 0.6 * (maxX - minX), baseline + 0.3 * xHeight);
    assert.equal(area(intersection(region, [middle])), 0);
  });
});

describe('The bar between two words beside the bare stem of a capital', () => {
  for (const font of ['roboto', 'quicksand', 'josefin-sans'])
    it(`lies a fifth up, with its foot and its head to be seen: ${font}`, async () => {
      const { minY, maxY } = await between('MIMI & LULU', font, 3);
      assert.ok(minY > 0.1 * xHeight && maxY < 0.8 * xHeight, `from ${minY} to ${maxY} mm`);
    });
});
