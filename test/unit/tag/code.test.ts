import assert from 'node:assert/strict';
import jsQR from 'jsqr';
import { PNG } from 'pngjs';
import { jobOf } from '../../../src/export/job/job.ts';
import { proofFacts } from '../../../src/export/proof/proof-facts.ts';
import { toPng } from '../../../src/export/proof/png.ts';
import { area, boundsOf } from '../../../src/geometry/measure.ts';
import { partsOf } from '../../../src/geometry/parts.ts';
import type { Region } from '../../../src/geometry/types.ts';
import { crossings } from '../../../src/strength/line-stretches.ts';
import { moduleOf } from '../../../src/tag/shapes/code.ts';
import { assertNear, make, makeShapeUnchecked, report, specOf } from '../support/engine.ts';
import type { Made } from '../support/engine.ts';
import { oneIn } from '../support/sweep.ts';
import { tools } from '../support/tools.ts';

// jsQR is another program than the one that makes the codes.
const readImage = (jsQR as unknown as { default?: typeof jsQR }).default ?? jsQR;

const pixelsPerMm = 3;

/** What is read where the region is black on a white ground of `clear` mm. */
function read(region: Region, clear: number): string | undefined {
  const { minX, minY, maxX, maxY } = boundsOf(region)!;
  const width = Math.ceil((maxX - minX + 2 * clear) * pixelsPerMm);
  const height = Math.ceil((maxY - minY + 2 * clear) * pixelsPerMm);
  const pixels = new Uint8ClampedArray(width * height * 4).fill(255);
  const column = (x: number) => Math.round((x - minX + clear) * pixelsPerMm);
  for (let row = 0; row < height; row++) {
    const y = maxY + clear - (row + 0.5) / pixelsPerMm;
    const found = crossings(region, { x: 0, y }, { x: 1, y: 0 });
    for (let i = 0; i + 1 < found.length; i += 2)
      for (let at = column(found[i]!); at < column(found[i + 1]!); at++)
        pixels.fill(0, (row * width + at) * 4, (row * width + at) * 4 + 3);
  }
  return readImage(pixels, width, height)?.data;
}

const cutOf = ({ pieces }: Made): Region => pieces[0]!.sources.find(({ use }) => use === 'cut')!.region;

const texts = [
  'https://example.org/sorrel',
  'https://example.org/seeds/borage-2026?bed=7',
  'SEED 4711',
  '40123',
  'Löwenzahn, 3 €',
  'Ein längerer Text, der sagt, wie gesät wird: im März unter Glas, ab Mai ins Freie, alle 30 cm.',
];

describe('A code', () => {
  for (const text of texts)
    for (const correction of ['low', 'medium', 'quartile', 'high'])
      it(`says “${text}” with ${correction} correction, as another program reads it`, async () => {
        const made = await makeShapeUnchecked(`{code: "${text}", size: 60, correction: ${correction}}`);
        assertNear(made.width, 60, 1e-4);
        assertNear(made.height, 60, 1e-4);
        assert.equal(read(made.region, 8), text);
      });

  it('is a square of 17 + 4·version modules (ISO/IEC 18004), with three finder patterns of 7', async () => {
    const { report: found, region } = await makeShapeUnchecked('{code: "SEED 4711", size: 21}');
    const [code] = [...found.tag!.made.values()][0]!.codes!;
    assert.equal(code!.matrix.length, 21);
    assertNear(moduleOf(code!), 1, 1e-9);
    // Dark modules are squares of 1 mm².
    const dark = code!.matrix.flat().filter(Boolean).length;
    assertNear(area(region), dark, 1e-3);
    for (const [x, y] of [
      [0, 0],
      [14, 0],
      [0, 14],
    ] as const) {
      const pattern = code!.matrix.slice(y, y + 7).map((row) => row.slice(x, x + 7));
      assert.equal(pattern.flat().filter(Boolean).length, 24 + 9);
    }
  });

  it('takes its text from the row of a batch', async () => {
    const spec = `tagwright: 1
batch: [{sku: A-17}, {sku: B-18}]
shapes:
  plate: {rectangle: [60, 60]}
  link: {code: "https://example.org/{sku}", size: 40, place: {on: plate, by: box}}
pieces:
  tag: {body: [plate], engrave: [link]}
`;
    const made = await make(spec);
    assert.equal(read(made.pieces[0]!.marks[0]!.region, 6), 'https://example.org/A-17');
  });

  it('is read from the picture of the proof', async () => {
    for (const material of oneIn(2, ['birch plywood', 'cherry', 'oak'])) {
      const spec = specOf(
        [
          'plate: {rectangle: [60, 40], radius: 4}',
          'link: {code: "https://example.org/sorrel", size: 26, place: {on: plate, by: box}}',
        ],
        'body: [plate], engrave: [link], hanger: {hole: {at: left}}',
        [`stock: {material: ${material}, thickness: 3, kerf: 0.16}`, 'tie: {twine: 2}'],
      );
      const made = await report(spec);
      assert.deepEqual(made.issues, []);
      const { width, height, data } = PNG.sync.read(Buffer.from(await toPng(jobOf(made)!, tools)));
      assert.equal(readImage(new Uint8ClampedArray(data), width, height)?.data, 'https://example.org/sorrel', material);
    }
  });

  it('that says too much for any code is told so', async () => {
    const { issues } = await report(specOf([`body: {code: "${'ä'.repeat(900)}", size: 90, correction: high}`]));
    assert.deepEqual(
      issues.map(({ message }) => message),
      ['This is too long for a code; shorten it, or choose a lower correction.'],
    );
  });

  for (const [shape, message] of [
    ['{code: " ", size: 20}', 'The code says nothing.'],
    ['{code: abc}', '“code” needs “size”, the side of its square.'],
    ['{code: abc, size: 20, width: 30}', '“width” sets the size too; leave one of the two out.'],
    ['{rectangle: [20, 20], size: 20}', '“size” goes with text, but this shape is a rectangle.'],
    ['{text: abc, size: 20, correction: low}', '“correction” goes with code, but this shape is a text.'],
    ['{code: abc, size: 21, bridges: 1}', 'This shape has bridges as wide as its modules.'],
  ] as const) {
    it(`says what is wrong with ${shape}`, async () => {
      const { issues } = await report(specOf([`body: ${shape}`]));
      assert.equal(issues[0]?.message, message);
    });
  }
});

describe('A code that is cut through', () => {
  const board = 'board: {rectangle: [130, 130]}';
  const spec = (text: string, more: string) =>
    specOf([board, `link: {code: "${text}", size: 96, ${more}}`], 'body: [board], cut: [link]', [
      'stock: {material: birch plywood, thickness: 4, kerf: 0.16}',
    ]);

  for (const text of texts)
    it(`leaves one piece that holds together and is read: “${text}”`, async () => {
      const made = await make(spec(text, 'bridges: 1.2'));
      assert.equal(partsOf(made.region).length, 1);
      assert.ok(
        made.issues.every(({ code }) => code === 'hard-to-scan'),
        JSON.stringify(made.issues),
      );
      assert.equal(read(cutOf(made), 16), text);
    });

  it('falls apart without bridges, and is told so', async () => {
    const { issues } = await report(spec('SEED 4711', 'correction: low'));
    assert.ok(issues.some(({ code }) => code === 'loose-part'));
  });

  it('is told on the proof, so that it can be checked before it is made', async () => {
    const { tag } = await report(
      'tagwright: 1\nshapes: {plate: {rectangle: [60, 60]}, link: {code: "https://example.org/dill", size: 30, place: plate}}\npieces: {tag: {body: plate, engrave: [link]}}\n',
    );
    const contentFact = proofFacts(tag!).find(({ name }) => name === 'The code says');
    assert.equal(contentFact?.value, 'https://example.org/dill');
  });
});
