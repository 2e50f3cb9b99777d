/** Where words stand on a plate, put there or fitted: in one line with each other, and where a plate has parts, in the main one. */

import assert from 'node:assert/strict';
import { boundsOf } from '../../../src/geometry/measure.ts';
import { centreOf } from '../../../src/tag/made-shape.ts';
import { seatOf } from '../../../src/tag/shapes/seat.ts';
import { assertNear, make, makeShape, specOf } from '../support/engine.ts';

const middleOf = async (shape: string) => {
  const { region, bounds } = await makeShape(`{${shape}}`);
  const seat = seatOf(region)!;
  return { x: seat.middle.x - bounds.minX, y: seat.middle.y - bounds.minY, part: seat.part };
};

describe('The middle of a plate, for words', () => {
  it('is that of the box where the plate is the same on both sides', async () => {
    for (const shape of ['rectangle: [60, 30], radius: 4', 'ellipse: [60, 30]', 'ticket: {size: [60, 30], bite: 5}']) {
      const { x, y, part } = await middleOf(shape);
      assertNear(x, 30, 0.01, shape);
      assertNear(y, 15, 0.01, shape);
      assert.deepEqual(part, {});
    }
  });

  it('is the centroid of a triangle, at a third of its height (Euclid)', async () => {
    const { x, y } = await middleOf('polygon: {points: [[0, 60], [35, 0], [70, 60]]}');
    assertNear(x, 35, 0.01);
    assertNear(y, 20, 0.01);
  });

  it('is half-way from the centroid of a house to the middle of its wall', async () => {
    // A wall of 52 × 48 mm below a roof of 60 × 24 mm.
    const { y, part } = await middleOf('house: {size: [60, 72], roof: 24, eaves: 4}');
    const [wall, roof] = [52 * 48, (60 * 24) / 2];
    const mass = (wall * 24 + roof * (48 + 8)) / (wall + roof);
    assertNear(y, (mass + 24) / 2, 0.02);
    assertNear(part.y!.high - part.y!.low, 48, 0.01);
    assert.equal(part.x, undefined);
  });

  it('is half-way to the middle of its shaft in an arrow', async () => {
    // Its head is as long as half of its width: a shaft of 70 × 24 mm, and a head of 20 × 40 mm.
    const { x, part } = await middleOf('arrow: {length: 90, width: 40, shaft: 24}');
    const long = part.x!.high - part.x!.low;
    const [shaft, head] = [long * 24, ((90 - long) * 40) / 2];
    const mass = ((shaft * long) / 2 + head * (long + (90 - long) / 3)) / (shaft + head);
    assertNear(x, (mass + long / 2) / 2, 0.02);
    assert.ok(long > 50 && long < 80, `${long}`);
  });

  it('is the centroid where no part has most of the plate', async () => {
    const { y, part } = await middleOf('house: {size: [60, 72], roof: 50, eaves: 4}');
    assert.deepEqual(part, {});
    const [wall, roof] = [52 * 22, (60 * 50) / 2];
    assertNear(y, (wall * 11 + roof * (22 + 50 / 3)) / (wall + roof), 0.02);
  });
});

/** Middles to the eye of all that is engraved. */
async function middles(shapes: readonly string[], piece: string) {
  const { pieces, report } = await make(specOf(shapes, piece));
  return pieces[0]!.marks.map(({ shape, region }) => ({
    ...centreOf(report.tag!.made.get(shape)!, 'eye')!,
    box: boundsOf(region)!,
  }));
}

const withHole = (marks: string): string => `body: [plate], engrave: [${marks}], hanger: {hole: {at: left}}`;

describe('Words of a plate with a hole at its side', () => {
  const line = 'line: {text: mix & match, weight: 700, x_height: 1.8, place: {on: plate, at: bottom, margin: 3}}';

  it('stand in one line, fitted or put there, where that costs less than three tenths of their size', async () => {
    for (const [plate, words] of [
      ['rectangle: [50, 32], radius: 4', '3/10'],
      ['rectangle: [46, 44], radius: 4', '2026'],
      ['ticket: {size: [50, 34]}', '12.50'],
    ] as const) {
      const price = `price: {text: "${words}", font: Alfa Slab One, fit: {in: plate, margin: 4}}`;
      const [fitted, placed] = await middles([`plate: {${plate}}`, price, line], withHole('price, line'));
      assertNear(fitted!.x, placed!.x, 0.05, words);
      const [alone] = await middles([`plate: {${plate}}`, price], withHole('price'));
      const wide = ({ box }: { readonly box: { readonly minX: number; readonly maxX: number } }) => box.maxX - box.minX;
      assert.ok(wide(fitted!) >= 0.7 * wide(alone!) - 0.1, words);
    }
  });

  it('stand near the middle between top and line, not where they are a little larger', async () => {
    const price = 'price: {text: "3/10", font: Alfa Slab One, fit: {in: plate, margin: 4}}';
    const [fitted] = await middles(['plate: {rectangle: [50, 32], radius: 4}', price, line], withHole('price, line'));
    assertNear(fitted!.y, 0, 3);
  });

  it('stand in the middle of the plate by themselves too, where they have room, whatever their size', async () => {
    for (const plate of ['rectangle: [60, 30], radius: 4', 'label: {size: [70, 30], clip: 8, end: left}']) {
      const named = (size: string) => `name: {text: Dill, font: Pacifico, ${size}}`;
      const [placed] = await middles([`plate: {${plate}}`, named('x_height: 4, place: plate')], withHole('name'));
      for (const most of [3, 5, 30]) {
        const size = `fit: {in: plate, margin: 3, at_most: {x_height: ${most}}}`;
        const [fitted] = await middles([`plate: {${plate}}`, named(size)], withHole('name'));
        assertNear(fitted!.x, placed!.x, 0.05, `${plate}, ${most} mm`);
      }
    }
  });

  it('stand in one line with a price at the top, also where they keep a size and give way to the hole', async () => {
    const shapes = [
      'plate: {rectangle: [60, 30], radius: 4}',
      'price: {text: "2.50", font: Nunito, weight: 800, x_height: 2.4, place: {on: plate, at: top, margin: 3}}',
      'name: {text: Dill, font: Pacifico, fit: {in: plate, margin: 3, clear: 2, at_most: {x_height: 8}}}',
    ];
    const [price, name] = await middles(shapes, withHole('price, name'));
    assertNear(name!.x, price!.x, 0.7);
  });

  it('stand below each other where the first has to go aside', async () => {
    const shapes = [
      'plate: {label: {size: [70, 30], clip: 8, end: left}}',
      'price: {text: 2.50 each, weight: 700, fit: {in: plate, margin: 3}}',
      'name: {text: for your bed, font: Great Vibes, fit: {in: plate, margin: 3, at_most: {x_height: 2.5}}}',
    ];
    const [first, second] = await middles(shapes, withHole('price, name'));
    assert.ok(first!.x > 2, `${first!.x}`);
    assertNear(second!.x, first!.x, 0.1);
  });
});

describe('Words in a plate of parts', () => {
  const lines = 'lines: [{text: Marigold, font: Pacifico, share: 1.6}, {text: sown in March}]';

  it('stand lower in a house than in the middle of it, fitted or put there', async () => {
    // The wall is 48 mm high.
    for (const size of ['x_height: 3.5, place: plate', 'fit: {in: plate, margin: 4}']) {
      const shapes = ['plate: {house: {size: [60, 72], roof: 24, eaves: 4}}', `words: {${lines}, ${size}}`];
      const [words] = await middles(shapes, 'body: [plate], engrave: [words], hanger: {hole: {at: top}}');
      assertNear(words!.y, -36 + 24 + 3, 2, size);
    }
  });

  it('stand in the shaft of an arrow rather than in its head', async () => {
    for (const size of ['place: plate, x_height: 3.5', 'fit: {in: plate, margin: 4}']) {
      const shapes = ['plate: {arrow: {length: 90, width: 40, shaft: 26}}', `words: {${lines}, ${size}}`];
      const [words] = await middles(shapes, withHole('words'));
      assertNear(words!.x, -6.5, 1, size);
    }
  });

  it('keep level with a word at the side, where the plate is the same above and below', async () => {
    const [beside, guest] = await middles(
      [
        'plate: {ticket: {size: [88, 44]}}',
        'row: {text: ROW B, font: Nunito, weight: 800, cap_height: 5, place: {on: plate, at: left, margin: 4}}',
        'name: {text: Guest, font: Pacifico, fit: {in: plate, margin: 4}}',
      ],
      'body: plate, engrave: [row, name], hanger: {hole: {at: right}}',
    );
    assertNear(guest!.y, beside!.y, 0.8);
  });

  it('stay in the shaft of an arrow, where they are up to 15 % smaller than in its head', async () => {
    for (const name of ['Squash', 'Borage', 'Leek and rye']) {
      const [words] = await middles(
        [
          'plate: {arrow: {length: 120, width: 44, shaft: 28}}',
          `words: {lines: [{text: ${name}, font: Pacifico}, {text: row 4, font: Nunito, weight: 700, share: 0.7}], fit: {in: plate, margin: 3}}`,
        ],
        'body: plate, engrave: [words], hanger: {hole: {at: left}}',
      );
      assert.ok(words!.x < 0, `${name}: ${words!.x}`);
    }
  });

  it('stand on the axis of a disc, between lines that run round it', async () => {
    const [, word] = await middles(
      [
        'plate: {circle: 66}',
        'round: {lines: [{text: SWAP, arc: top, font: Nunito, weight: 800}, {text: MAY 9, arc: bottom, font: Nunito, weight: 700}], fit: {in: plate, margin: 4, at_most: {cap_height: 6}}}',
        'word: {text: Bee, font: Pacifico, fit: {in: plate, margin: 10}}',
      ],
      'body: plate, engrave: [round, word], hanger: {hole: {at: bottom}}',
    );
    assertNear(word!.x, 0, 0.4);
  });
});
