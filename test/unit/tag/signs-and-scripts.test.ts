/** Hyphens, full stops, dots and strokes that tell letters apart once they slide, and letters of scripts whose feet or base line do: by eye, in fourteen faces. */

import assert from 'node:assert/strict';
import { intersection } from '../../../src/geometry/clipper.ts';
import { area, boundsOf, ringArea } from '../../../src/geometry/measure.ts';
import { partsOf } from '../../../src/geometry/parts.ts';
import type { Bounds, Ring } from '../../../src/geometry/types.ts';
import { closesBays } from '../../../src/tag/overlap/closed-bays.ts';
import { shapeOf } from '../../../src/tag/overlap/bodies.ts';
import { letterParts } from '../../../src/tag/overlap/letters.ts';
import { packagedFont } from '../../fonts/font-files.ts';
import { assertNear, makeUnchecked, newEngine, specOf } from '../support/engine.ts';
import { box } from '../support/shapes.ts';

const files = [
  ['kaushan-script', 'latin'],
  ['quicksand', 'latin'],
  ['zilla-slab', 'latin'],
  ['zilla-slab', 'latin-ext'],
  ['amiri', 'arabic'],
  ['frank-ruhl-libre', 'hebrew'],
] as const;
const nameOf = (slug: string, subset: string): string => (subset === 'latin-ext' ? `${slug}-ext` : slug);
const fonts = files.map(
  async ([slug, subset]) =>
    [`${nameOf(slug, subset)}.woff`, new Uint8Array(await packagedFont(slug, subset, 400))] as const,
);
const engine = newEngine(Object.fromEntries(await Promise.all(fonts)));
const head = ['stock: {thickness: 3 mm, kerf: 0.16 mm, min_web: 1.5 mm}'];
const xHeight = 12;

interface Between {
  /** Of the letters on both sides, from the baseline up. */
  readonly left: Bounds;
  readonly right: Bounds;
  /** What there is in the middle between the two, part by part, from the baseline up. */
  readonly strips: readonly Bounds[];
  readonly parts: number;
  readonly holes: number;
}

/** What lies between the letters `index` and `next` of a text. */
async function between(text: string, font: string, index: number, next = index + 1): Promise<Between> {
  const file = files.some(([slug, subset]) => nameOf(slug, subset) === font)
    ? `[${font.replace('-ext', '')}.woff, ${font}.woff]`
    : font;
  const shape = `body: {text: "${text}", font: ${file}, x_height: ${xHeight} mm, overlap: 0.6 mm}`;
  const made = await makeUnchecked(specOf([shape], 'body: [body], parts: many', head), engine);
  const [solid] = [...made.report.tag!.made.values()];
  const { letters } = solid!.lettering![0]!;
  const { baseline } = letters[0]!;
  const up = ({ minX, maxX, minY, maxY }: Bounds): Bounds => ({
    ...{ minX, maxX, minY: minY - baseline!, maxY: maxY - baseline! },
  });
  const [left, right] = [index, next].map((k) => up(boundsOf(letters[k]!.region)!));
  const middle = (left!.maxX + right!.minX) / 2;
  const strip = box(middle - 0.01, -100, middle + 0.01, 100);
  const strips = partsOf(intersection(made.region, [strip])).map((part) => up(boundsOf(part)!));
  const holes = made.region.filter((ring) => ringArea(ring) < 0).length;
  return { left: left!, right: right!, strips, parts: partsOf(made.region).length, holes };
}

describe('A hyphen between two letters', () => {
  for (const [text, font] of [
    ['Ane-Mai', 'kaushan-script'],
    ['Ane-Mai', 'Pacifico'],
    ['Ane-Mai', 'quicksand'],
    ['Ane-Mai', 'zilla-slab'],
    ['Ane-Mai', 'Nunito, weight: 800'],
  ] as const)
    it(`is a bar from the one to the other, half an x-height long, with white above and below it: ${font}`, async () => {
      const { left, right, strips, parts } = await between(text, font, 2, 4);
      assert.ok(right.minX - left.maxX > 0.1 * xHeight, `${right.minX - left.maxX} mm apart`);
      assert.equal(strips.length, 1);
      const [{ minY, maxY }] = strips as [Bounds];
      assert.ok(minY > 0.2 * xHeight && maxY < 0.9 * xHeight, `from ${minY} to ${maxY} mm`);
      assert.ok(maxY - minY >= 1.5, `${maxY - minY} mm high`);
      assert.equal(parts, 1);
    });
});

describe('A full stop', () => {
  for (const font of ['kaushan-script', 'Pacifico', 'quicksand', 'zilla-slab', 'Nunito, weight: 800'])
    it(`stands off the letter before it, on a bar lower than itself: ${font}`, async () => {
      const { left, right, strips, parts } = await between('Jr.', font, 1);
      assert.ok(right.minX > left.minX, 'it is behind the letter');
      assert.equal(parts, 1);
      if (right.minX <= left.maxX) return; // Under the arm of the r.
      const [lowest] = strips.toSorted((a, b) => a.minY - b.minY);
      assert.ok(lowest!.maxY < right.maxY - 0.2, `the bar ends at ${lowest!.maxY}, the stop at ${right.maxY} mm`);
    });
});

describe('Hebrew letters', () => {
  for (const [text, index] of [
    ['דרור', 0],
    ['דרור', 1],
    ['דרור', 2],
    ['מרווה', 1],
    ['מרווה', 3],
  ] as const)
    it(`are joined away from their feet, where a bar makes a כ of a ר: ${text}, ${index}`, async () => {
      const { left, strips, parts } = await between(text, 'frank-ruhl-libre', index);
      assert.equal(strips.length, 1);
      assert.ok(strips[0]!.minY > 0.25 * left.maxY, `the bar begins ${strips[0]!.minY} mm up`);
      // A notch above it tells it from the roof.
      assert.ok(strips[0]!.maxY < left.maxY - 0.5, `it ends at ${strips[0]!.maxY}, the letter at ${left.maxY} mm`);
      assert.equal(parts, 1);
    });
});

describe('Arabic letters that do not join the next one', () => {
  for (const [text, index] of [
    ['دار', 0],
    ['دار', 1],
  ] as const)
    it(`have nothing on the baseline between them: ${text}, ${index}`, async () => {
      const { strips, parts } = await between(text, 'amiri', index);
      assert.ok(strips.length > 0);
      for (const { minY, maxY } of strips)
        assert.ok(minY > 0.1 * xHeight || maxY < -0.1 * xHeight, `${minY} to ${maxY}`);
      assert.equal(parts, 1);
    });

  it('and those that do are joined by the font', async () => {
    const { left, right } = await between('سن', 'amiri', 0);
    assertNear(left.maxX, right.minX, 1.5);
  });
});

describe('The stroke of an ł', () => {
  for (const font of ['zilla-slab-ext'])
    it(`runs into neither neighbour, with which it would be an l: ${font}`, async () => {
      for (const [text, index] of [
        ['ółc', 0],
        ['ółc', 1],
      ] as const) {
        const { strips, parts } = await between(text, font, index);
        assert.equal(strips.length, 1);
        assert.ok(strips[0]!.maxY < 0.3 * xHeight, `${text}: joined up to ${strips[0]!.maxY} mm`);
        assert.equal(parts, 1);
      }
    });
});

describe('The dot of an i that is a leaf of the pen', () => {
  it('becomes a round one, twice as wide as the web, where it is no wider than its post', () => {
    const measures = { xHeight, web: 1.5, overlap: 0.6, grow: 0, hairline: 0, pitch: 0.2 };
    const stem = box(0, 0, 1.5, 12);
    // Two mm long and one wide, and leaning as the stem of a script does.
    const leaf = (wide: number) => [
      { x: 2, y: 15 },
      { x: 2 + wide, y: 15 },
      { x: 4 + wide, y: 18 },
      { x: 4, y: 18 },
    ];
    const marked = (mark: Ring) =>
      shapeOf({ base: [stem], marks: [[mark]], isHanging: false }, measures).part.marks[0]!;
    const round = marked(leaf(1));
    assertNear(area(round), Math.PI * 1.5 ** 2, 0.1, 'a disc of 3 mm');
    assertNear(boundsOf(round)!.minY, 15, 1e-9, 'no nearer to the stem');
    // As wide as it is long, it is a dot as it is.
    assert.deepEqual(marked(leaf(3.5)), [leaf(3.5)]);
    // The short acute of a blackletter é is none.
    const accented = shapeOf({ base: [stem], marks: [[leaf(1)]], isAccented: true, isHanging: false }, measures);
    assert.deepEqual(accented.part.marks, [[leaf(1)]]);
    assert.ok(
      letterParts('é', [stem, leaf(1)], 10)[0]!.isAccented && !letterParts('ï', [stem, leaf(1)], 10)[0]!.isAccented,
    );
    // So is a square, whose diagonal is longer; it is only enlarged.
    const square = boundsOf(marked(box(2, 15, 4.2, 17.2)))!;
    assertNear(area(marked(box(2, 15, 4.2, 17.2))), (square.maxX - square.minX) ** 2, 1e-6, 'still a square');
  });
});

describe('Bars between the words of a line', () => {
  it('are all at the foot where one has to be: DILL & CO', async () => {
    for (const font of ['quicksand', 'Nunito, weight: 800'])
      for (const [index, next] of [
        [3, 4],
        [4, 5],
      ] as const) {
        const { strips } = await between('DILL & CO', font, index, next);
        const [lowest] = strips.toSorted((a, b) => a.minY - b.minY);
        assert.equal(strips.length, 1, `${font}, ${index}`);
        assert.ok(lowest!.maxY < 0.3 * xHeight, `${font}: up to ${lowest!.maxY} mm`);
      }
  });

  it('are at the head where all can be', async () => {
    for (const index of [0, 1]) {
      const { strips } = await between('O O O', 'Nunito, weight: 800', index);
      assert.ok(strips[0]!.minY > 0.5 * xHeight, `${strips[0]!.minY} mm`);
    }
  });
});

describe('The bays of an E', () => {
  for (const font of ['Nunito, weight: 800', 'zilla-slab', 'quicksand', 'Alfa Slab One'])
    it(`stay open beside the stem of the next capital, as neither letter has a counter: ${font}`, async () => {
      for (const text of ['EL', 'EN', 'ÉF']) {
        const { parts, holes } = await between(text, font, 0);
        assert.equal(holes, 0, text);
        assert.equal(parts, 1, text);
      }
    });

  it('are closed where two arms meet what is behind them with room between, and not by one', () => {
    const rows = (...gaps: number[]) => ({ pitch: 1, first: 0, gaps, edges: [], depths: [] });
    assert.ok(closesBays('E', rows(0.1, 2, 2, 0.1, 2, 0.1), 0, 10));
    assert.ok(closesBays('É', rows(1.1, 3, 1.1), 1, 10));
    assert.ok(!closesBays('E', rows(0.1, 0.1, 2, 2, 2), 0, 10));
    assert.ok(!closesBays('E', rows(0.1, 1.5, 0.1), 0, 10));
    assert.ok(!closesBays('H', rows(0.1, 2, 0.1), 0, 10));
  });
});
