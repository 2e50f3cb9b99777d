import assert from 'node:assert/strict';
import { difference } from '../../../src/geometry/clipper.ts';
import { area, boundsOf, contains } from '../../../src/geometry/measure.ts';
import { findNecks } from '../../../src/geometry/necks.ts';
import { partsOf } from '../../../src/geometry/parts.ts';
import { bridged } from '../../../src/geometry/bridges.ts';
import type { Side } from '../../../src/geometry/types.ts';
import type { Ring } from '../../../src/geometry/types.ts';
import { strapped } from '../../../src/geometry/straps.ts';
import { assertNear } from '../support/engine.ts';
import { box, disc, polygon, subtract, unite } from '../support/shapes.ts';
import { word } from '../support/words.ts';

const words = ['Chives', 'Mint', 'Dill', 'Thyme', 'Basil', 'Kohlrabi', 'Öl & Essig', 'Bean!'];
const fonts = ['source-sans-3', 'pacifico', 'roboto', 'source-serif-4'];

describe('Straps between parts', () => {
  it('reach from what stands in a window to the edge of that window, and no further', () => {
    const frame = subtract([box(-25, -35, 25, 35)], [box(-18, -28, 18, 28)]);
    const { region, strips } = strapped([...frame, box(-12, -10, 6, 10)], 3);
    assert.equal(partsOf(region).length, 1);
    assert.deepEqual(boundsOf(region), { minX: -25, minY: -35, maxX: 25, maxY: 35 });
    // 6 mm from edge to edge, and half the width into either.
    assert.ok(Math.abs(area(strips) - 3 * (6 + 3)) < 1e-6, String(area(strips)));
  });

  it('join in full what stands in the middle of a window, as near to one side as to the other', () => {
    const frame = subtract([box(-30, -40, 30, 40)], [box(-25, -35, 25, 35)]);
    const { region } = strapped([...frame, box(-10, -15, 10, 15)], 3);
    // At a corner half of its width would stand beside the block.
    assertNear(area(region), area(frame) + 20 * 30 + 15 * 3, 1e-3);
  });

  it('are as wide as asked and as long as the gap (exact)', () => {
    const region = unite(box(0, 0, 10, 10), box(14, 0, 24, 10));
    const { region: joined } = strapped(region, 2);
    assert.equal(partsOf(joined).length, 1);
    assertNear(area(joined), 200 + 4 * 2, 1e-3);
    const [neck, ...others] = findNecks(joined, 3);
    assert.deepEqual(others, []);
    assertNear(neck!.width, 2, 1e-3);
  });

  it('join as many parts as there are with one strap fewer, by the shortest gaps', () => {
    // Discs of radius 2 in a row, 1 mm and 3 mm apart by turns: the rows between them are never joined twice.
    const discs = [0, 5, 12, 17, 24].map((x) => disc(x, 0, 2));
    const { region: joined } = strapped(unite(...discs), 0.5);
    assert.equal(partsOf(joined).length, 1);
    assert.equal(joined.length, 1, 'no loop of straps');
    const added = area(joined) - area(unite(...discs));
    // Exact but for the slivers at the round ends, which are less than the sagitta of the strap's width: w²/8R each.
    assertNear(added, 0.5 * (1 + 3 + 1 + 3), 8 * 0.5 * (0.25 / 16));
  });

  it('lie just below a level where they are long and hardly longer there', () => {
    const strapOf = (left: Ring, right: Ring, width: number) => {
      const { region, strips } = strapped([left, right], width, 10);
      assert.equal(partsOf(region).length, 1);
      const { minY, maxY } = boundsOf(strips.slice(-1))!;
      return [minY, maxY].map((y) => Math.round(1000 * y) / 1000);
    };
    const left = box(0, 0, 10, 12);
    // Up to 1.4 widths it stays halfway up.
    assert.deepEqual(strapOf(left, box(12.81, 0, 24, 12), 2), [8, 10]);
    assert.deepEqual(strapOf(left, box(12.79, 0, 24, 12), 2), [5, 7]);
    // Leaning away, up to 1.6 times as long at the level of the strap, which is 9.
    const leaning = (by: number) => polygon([13, 0], [24, 0], [24, 12], [13 + (12 / 9) * by, 12]);
    assert.deepEqual(strapOf(left, leaning(1.79), 2), [8, 10]);
    assert.notDeepEqual(strapOf(left, leaning(1.81), 2), [8, 10]);
  });

  it('leave alone what is one part already', () => {
    const one = [disc(0, 0, 5)];
    assert.equal(strapped(one, 2).region, one);
    assert.deepEqual(strapped([], 2).region, []);
  });

  it('hold a dot by the stem below it and not by the taller neighbour beside it', () => {
    const [stem, dot, neighbour] = [box(0, 0, 4, 10), box(0, 12, 4, 16), box(5.5, 0, 9.5, 16)];
    const { region: joined } = strapped(unite(stem, dot, neighbour), 1);
    assert.ok(
      contains(joined, { x: 2, y: 11 }) || contains(joined, { x: 0.3, y: 11 }) || contains(joined, { x: 3.7, y: 11 }),
    );
    assert.equal(partsOf(joined).length, 1);
    assert.ok(!contains(joined, { x: 4.75, y: 14 }) && !contains(joined, { x: 4.75, y: 15.7 }));
  });

  for (const font of fonts) {
    it(`make one part of every word in ${font}, and take nothing away`, async () => {
      for (const text of words) {
        const region = await word(font, text, 70, 0.01);
        const { region: joined } = strapped(region, 1.5);
        assert.equal(partsOf(joined).length, 1, text);
        assertNear(area(difference(region, [joined])), 0, 1e-3, `what ${text} lost`);
      }
    });
  }
});

describe('Bridges across strokes', () => {
  it('cross the stroke on the sides asked for, and nothing else (exact)', () => {
    // A frame 20 × 20 with an opening 10 × 10: each bridge of 2 mm takes 2 × 5 mm of it.
    const frame = difference([box(0, 0, 20, 20)], [[box(5, 5, 15, 15)]]);
    const sides: readonly (readonly Side[])[] = [
      ['top'],
      ['left'],
      ['top', 'bottom'],
      ['left', 'right'],
      ['top', 'bottom', 'left', 'right'],
    ];
    for (const asked of sides) {
      const { region: cut } = bridged(frame, 2, asked);
      assertNear(area(cut), 300 - 10 * asked.length, 1e-2, asked.join());
      const at = { top: { x: 10, y: 17 }, bottom: { x: 10, y: 3 }, left: { x: 3, y: 10 }, right: { x: 17, y: 10 } };
      for (const [side, point] of Object.entries(at)) {
        assert.equal(contains(cut, point), !asked.includes(side as Side), `${side} of ${asked.join()}`);
      }
    }
  });

  it('go right through round strokes', () => {
    const ring = difference([disc(0, 0, 10)], [[disc(0, 0, 6)]]);
    const { region: cut } = bridged(ring, 3, ['top']);
    assert.equal(cut.length, 1, 'the hole is open');
    assert.equal(partsOf(cut).length, 1);
    assert.equal(partsOf(bridged(ring, 3, ['top', 'bottom']).region).length, 2);
  });

  it('stand beside the middle where they would end at the edge of another stroke, and leave no thread', () => {
    // Below the frame, and a hair under where the bridge ends, a foot that reaches to the middle from the right.
    const ring = difference([box(0, 0, 20, 20)], [[box(5, 5, 15, 15)]]);
    const foot = box(10.5, -6, 20, -0.09);
    const { region: cut } = bridged([...ring, foot], 2, ['bottom']);
    assert.ok(
      !contains(cut, { x: 9, y: 2.5 }) && contains(cut, { x: 10.6, y: 2.5 }),
      'it stands to the left of the foot',
    );
    const plate = [box(-10, -20, 30, 30)];
    assert.equal(findNecks(difference(plate, [cut]), 1.9).filter(({ ends: [{ x }] }) => x < 10.4).length, 0);
  });

  it('leave no thread in a face with hairlines', async () => {
    for (const text of ['Beate', 'Radko', 'Sage']) {
      const letters = await word('playfair-display', text, 60, 0.01);
      const frame = boundsOf(letters)!;
      const plate = [box(frame.minX - 5, frame.minY - 5, frame.maxX + 5, frame.maxY + 5)];
      const held = difference(plate, [bridged(letters, 1.5, ['top', 'bottom']).region]);
      // The letters themselves come as near as that to each other.
      for (const { width } of findNecks(held, 1.5)) assert.ok(width > 0.5, `${text}: ${width.toFixed(2)} mm`);
    }
  });

  it('leave alone what has no holes', () => {
    const one = [disc(0, 0, 5)];
    assert.equal(bridged(one, 2, ['top']).region, one);
  });

  for (const font of fonts) {
    it(`keep a plate in one part when words in ${font} are cut through it`, async () => {
      for (const text of [...words, 'Bode', 'B8&@g%', 'OO']) {
        const letters = await word(font, text, 60, 0.01);
        const frame = boundsOf(letters)!;
        const plate = [box(frame.minX - 5, frame.minY - 5, frame.maxX + 5, frame.maxY + 5)];
        for (const sides of [['top', 'bottom'], ['left', 'right'], ['top']] as const) {
          const held = difference(plate, [bridged(letters, 1.2, sides).region]);
          assert.equal(partsOf(held).length, 1, `${text}, ${sides.join()}`);
        }
      }
    });
  }
});
