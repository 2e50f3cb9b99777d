import assert from 'node:assert/strict';
import { coverCost, coveredOf, coversOf } from '../../../src/tag/hanger/cover.ts';
import { boundsOf } from '../../../src/geometry/measure.ts';
import type { Point, Region } from '../../../src/geometry/types.ts';
import { packagedWoff2 } from '../../fonts/font-files.ts';
import { make, newEngine, specOf } from '../support/engine.ts';

const box = (minX: number, minY: number, maxX: number, maxY: number): Point[] => [
  { x: minX, y: minY },
  { x: maxX, y: minY },
  { x: maxX, y: maxY },
  { x: minX, y: maxY },
];

const degree = (letter: Region, centre: Point, radius: number): number =>
  coversOf({ letters: [{ text: 'k', region: letter, box: boundsOf(letter)! }], factor: 1 }, centre, radius)[0]
    ?.degree ?? 0;

/** Degrees come from a grid of 24 rows, so they are near to what areas say. */
function isAbout(actual: number, expected: number): void {
  assert.ok(Math.abs(actual - expected) < 0.06 * expected, `${actual} is not about ${expected}`);
}

/** Area of a half disc. */
const half = (radius: number): number => (Math.PI * radius ** 2) / 2;

describe('How much of a letter a ring covers', () => {
  it('is by its ink at most 0.3', () => {
    // Over the middle of a side of a square, a half disc.
    for (const radius of [4, 5, 6])
      isAbout(degree([box(0, 0, 12, 12)], { x: 0, y: 6 }, radius), half(radius) / 144 / 0.3);
  });

  it('is by the ink of the end of a stroke at most 0.165', () => {
    const stroke = [box(0, 0, 2, 24)];
    // Half the ring reaches down from the end; over a strip so narrow its edge is nearly level.
    isAbout(degree(stroke, { x: 1, y: 24 }, 4), 3.96 / 24 / 0.165);
    isAbout(degree(stroke, { x: 1, y: 12 }, 4), 7.91 / 24 / 0.3);
  });

  it('is at a corner no more than at a side, and in part the end of a stroke that is cut at a slant', () => {
    isAbout(degree([box(0, 0, 12, 12)], { x: 0, y: 12 }, 6), half(6) / 2 / 144 / 0.3);
    // A point of 75°, where the outline turns by 105°: half way from a side to an end.
    const across = 24 / Math.tan((75 * Math.PI) / 180);
    const wedge = [box(0, 0, 24, 24).with(0, { x: across, y: 0 })];
    const share = (75 / 360) * Math.PI * 12 ** 2;
    isAbout(degree(wedge, { x: 0, y: 24 }, 12), share / (24 * 24 - (24 * across) / 2) / ((0.3 + 0.165) / 2));
  });

  it('is the end of a stroke only where the letter loses height or width with it', () => {
    // Three strokes on a base; the ring stands on the one in the middle.
    const letter = (beside: number): Region => [
      [
        ...[0, 24].map((x) => ({ x, y: 0 })),
        ...[24, 22].map((x) => ({ x, y: beside })),
        ...[22, 15].map((x) => ({ x, y: 2 })),
        ...[15, 9].map((x) => ({ x, y: 24 })),
        ...[9, 2].map((x) => ({ x, y: 2 })),
        ...[2, 0].map((x) => ({ x, y: beside })),
      ],
    ];
    // A strip of 6 mm of a half disc of 9.
    const hidden = 3 * Math.sqrt(72) + 81 * Math.asin(1 / 3);
    isAbout(degree(letter(20), { x: 12, y: 24 }, 9), hidden / 252 / 0.165);
    assert.ok(degree(letter(24), { x: 12, y: 24 }, 9) < 0.95);
  });

  it('is by its bays at most 0.32, which count as 0.4 of its ink at least', () => {
    const wide = [
      [
        ...box(0, 0, 24, 24).slice(0, 3),
        { x: 20, y: 24 },
        { x: 20, y: 4 },
        { x: 4, y: 4 },
        { x: 4, y: 24 },
        { x: 0, y: 24 },
      ],
    ];
    isAbout(degree(wide, { x: 12, y: 24 }, 7), half(7) / 320 / 0.32);
    const notched = [
      [
        ...box(0, 0, 24, 24).slice(0, 3),
        { x: 16, y: 24 },
        { x: 16, y: 20 },
        { x: 8, y: 20 },
        { x: 8, y: 24 },
        { x: 0, y: 24 },
      ],
    ];
    isAbout(degree(notched, { x: 12, y: 24 }, 4), half(4) / 217.6 / 0.32);
  });

  it('is by its counters at most 0.2', () => {
    const letter = [box(0, 0, 24, 24), box(4, 4, 20, 20).reverse()];
    // Into the counter reaches a segment as high as the radius less the stroke.
    const segment = (radius: number, away: number): number =>
      radius ** 2 * Math.acos(away / radius) - away * Math.sqrt(radius ** 2 - away ** 2);
    for (const radius of [9, 10]) isAbout(degree(letter, { x: 0, y: 12 }, radius), segment(radius, 4) / 256 / 0.2);
  });

  it('does not depend on the scale', () => {
    const letter = { text: 'k', region: [box(0, 0, 12, 12)], box: { minX: 0, minY: 0, maxX: 12, maxY: 12 } };
    const at = (factor: number) =>
      coversOf({ letters: [letter], factor }, { x: 0, y: 6 * factor }, 5 * factor).map((each) =>
        each.degree.toFixed(9),
      );
    assert.deepEqual(at(1.7), at(1));
  });

  it('is nothing of a letter out of reach', () => {
    assert.equal(degree([box(0, 0, 12, 12)], { x: -4.1, y: 6 }, 4), 0);
  });

  it('is said from 0.95 of the most on, of the letter that it covers most', () => {
    assert.equal(coveredOf([{ text: 'k', degree: 0.949 }]), undefined);
    assert.equal(
      coveredOf([
        { text: 'e', degree: 0.96 },
        { text: 'k', degree: 0.97 },
      ]),
      'k',
    );
  });

  it('costs nothing up to the most, and 0.7 from 1.25 times that', () => {
    const costs = [0.5, 1, 1.125, 1.25, 3].map((each) => coverCost([{ text: 'k', degree: each }]));
    assert.deepEqual(
      costs.map((each) => Math.round(100 * each) / 100),
      [0, 0, 0.35, 0.7, 0.7],
    );
  });
});

describe('A ring beside a script name', () => {
  const hung = async (slug: string, weight: number, name: string, at: string) => {
    const engine = newEngine({ 'face.woff2': await packagedWoff2(slug, 'latin', weight) });
    const shape = `body: {text: ${name}, font: face.woff2, x_height: 9, overlap: auto}`;
    const { pieces, issues } = await make(
      specOf([shape], `body: [body], parts: many, hanger: {ring: {at: ${at}}}`, [
        'stock: {material: birch plywood, thickness: 3, kerf: 0.16}',
        'tie: {ribbon: 6}',
      ]),
      engine,
    );
    return {
      hanger: pieces[0]!.hangers[0]!,
      said: issues.flatMap(({ code, message }) => (code === 'hole-blocked' ? message : [])),
    };
  };

  it('leaves the k, the h and the l their heads where it finds its own place', async () => {
    for (const name of ['Wiebke', 'Zacharias', 'Ursula'])
      assert.equal((await hung('dancing-script', 700, name, 'auto')).hanger.covers, undefined, name);
  });

  it('says that it covers the only stroke that it may be joined to', async () => {
    for (const name of ['Lluís', 'Yves']) {
      const said = `The ring covers much of the “${name[0]}”, which may be read as another letter.`;
      assert.deepEqual((await hung('kaushan-script', 400, name, 'left')).said, [said]);
    }
  });

  it('stands before the name, not behind it as one more letter, where a thin stroke holds it there', async () => {
    for (const name of ['Cosima', 'Quentin']) {
      const { hanger, said } = await hung('parisienne', 400, name, 'auto');
      assert.deepEqual([hanger.readAs, said], [['initial'], []], name);
    }
  });

  it('is less of each between two letters: 1.05 of the limits together, and 0.2 of the second', () => {
    const of = (...degrees: number[]) =>
      coveredOf(degrees.map((each, index) => ({ text: 'er'[index]!, degree: each })));
    assert.deepEqual([of(0.94), of(0.96)], [undefined, 'e']);
    assert.deepEqual([of(0.7, 0.34), of(0.3, 0.76)], [undefined, 'r']);
    assert.deepEqual([of(0.9, 0.19), of(0.9, 0.21)], [undefined, 'e']);
  });
});
