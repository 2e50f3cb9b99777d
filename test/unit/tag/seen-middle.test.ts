/** How far aside words go to have their middle where it is seen. */

import assert from 'node:assert/strict';
import { boundsOf } from '../../../src/geometry/measure.ts';
import type { Region } from '../../../src/geometry/types.ts';
import { assertNear, make, specOf } from '../support/engine.ts';

/** Of the ink of a word in the middle of a plate that is the same on both sides: its box, and what is free at its left and right. */
async function onPlate(word: string, font: string) {
  const shapes = [
    'plate: {rectangle: [200, 60]}',
    `word: {text: "${word}", font: ${font}, cap_height: 20, place: plate}`,
  ];
  const { pieces } = await make(specOf(shapes, 'body: [plate], engrave: [word]'));
  const { region } = pieces[0]!.marks[0]!;
  const { minX, maxX, minY, maxY } = boundsOf(region)!;
  const middle = (minX + maxX) / 2;
  // By the shoelace formula.
  const aside = centroidX(region) - middle;
  return { wide: maxX - minX, high: maxY - minY, aside, left: minX + 100, right: 100 - maxX };
}

function centroidX(region: Region): number {
  let [area, moment] = [0, 0];
  for (const ring of region)
    for (const [index, { x, y }] of ring.entries()) {
      const next = ring[(index + 1) % ring.length]!;
      const cross = x * next.y - next.x * y;
      area += cross / 2;
      moment += ((x + next.x) * cross) / 6;
    }
  return moment / area;
}

describe('The middle of a word, as it is seen', () => {
  it('is half-way to its centre of gravity, from a box that is hardly heavier on one side', async () => {
    for (const [word, font] of [
      ['Peggy', 'Alfa Slab One'],
      ['Lovage', 'Nunito'],
      ['Ida', 'Nunito'],
    ] as const) {
      const { left, right, aside } = await onPlate(word, font);
      assertNear((left - right) / 2, -aside / 2, 0.02, word);
    }
  });

  it('is so of a letter by itself, which is seen as a shape', async () => {
    const { left, right, aside, wide } = await onPlate('L', 'Nunito');
    assert.ok(aside < -0.1 * wide);
    assertNear((left - right) / 2, -aside / 2, 0.02);
  });

  it('is nearly that of the box of a word with a light end, so that both ends look alike', async () => {
    for (const [word, font] of [
      ['HAUS 7', 'Alfa Slab One'],
      ['Plot 7', 'Nunito'],
      ['BED 1', 'Nunito'],
      ['007', 'Pacifico'],
      ['Rosemary', 'Nunito'],
      ['Max & Zoe', 'Alfa Slab One'],
    ] as const) {
      const { left, right, aside, high } = await onPlate(word, font);
      assert.ok(Math.abs(aside) / 2 > 0.035 * high, `${word} has a light end`);
      const moved = (left - right) / 2;
      assert.equal(Math.sign(moved), -Math.sign(aside), word);
      assertNear(Math.abs(moved), 0.035 * high, 0.02, word);
    }
  });
});
