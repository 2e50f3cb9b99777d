import assert from 'node:assert/strict';
import { coveredLetters } from '../../../src/checks/measures/covered-letters.ts';
import { boxRing } from '../../../src/geometry/measure.ts';
import type { Region } from '../../../src/geometry/types.ts';
import { Lettering } from '../../../src/tag/lettering/letters.ts';
import { polygon } from '../support/shapes.ts';

function covered(letter: Region, by: Region, text = 'o') {
  const lettering = new Lettering({ path: [], xHeight: 10, grow: 0, as: 'material' }, () => [
    { text, region: letter, baseline: 0 },
  ]);
  const { gone, partly, filled, tailless } = coveredLetters(lettering, letter, by);
  const [is = 'free'] = Object.entries({ gone, partly, filled, tailless }).flatMap(([each, { length }]) =>
    length > 0 ? [each] : [],
  );
  return is;
}

const box = (minX: number, minY: number, maxX: number, maxY: number) => boxRing({ minX, minY, maxX, maxY });

describe('Letters that are covered', () => {
  it('are so from three tenths of their seam, and gone from four tenths', () => {
    // Of a square 10 mm wide the seam is 4 · 10 · 1.2 + π · 1.2² = 52.5 mm²; from below up to h covers 14.3 + 2.4 h of it.
    for (const [h, is] of [
      [0.5, 'free'],
      [0.75, 'partly'],
      [2.65, 'partly'],
      [2.95, 'gone'],
    ] as const)
      assert.equal(covered([box(0, 0, 10, 10)], [box(-3, -3, 13, h)]), is, `${h}`);
  });

  it('have a counter filled from six tenths of it', () => {
    const ring = [box(0, 0, 10, 10), box(3, 3, 7, 7).toReversed()];
    assert.equal(covered(ring, [box(3, 3, 7, 5.35)]), 'free');
    assert.equal(covered(ring, [box(3, 3, 7, 5.45)]), 'filled');
  });

  it('are in part covered where a leg of an “m” runs into a rim along more than 0.8 of it, and no leg of an “l”', () => {
    const m = [
      polygon([0, 0], [2, 0], [2, 8], [6, 8], [6, 0], [8, 0], [8, 8], [12, 8], [12, 0], [14, 0], [14, 10], [0, 10]),
    ];
    for (const [up, is] of [
      [7, 'partly'],
      [6, 'free'],
    ] as const)
      assert.equal(covered(m, [box(13, 0, 18, up)], 'm'), is, `${up}`);
    assert.equal(covered(m, [box(13, 0, 18, 7)], 'l'), 'free');
  });

  it('are without their tail from seven tenths of what is round it below the line', () => {
    const hooked = [polygon([0, 0], [4, 0], [4, -5], [6, -5], [6, 0], [10, 0], [10, 10], [0, 10])];
    // Round it, from 1.2 mm below the line on, are 2 · 1.2 · 3.8 + 2 · 1.2 + π · 1.2² / 2 = 13.8 mm²; from below up to −h, 4.7 + 2.4 (5 − h).
    for (const [h, is] of [
      [1.9, 'tailless'],
      [3.5, 'free'],
    ] as const)
      assert.equal(covered(hooked, [box(-3, -9, 13, -h)]), is, `${h}`);
    assert.equal(
      covered([box(0, -2, 10, 10)], [box(-3, -9, 13, -1.5)]),
      'free',
      'no tail: it hardly reaches below the line',
    );
  });

  it('are a Q without the tail that tells it from an O, unless the tail is within it too, or what hides it is no larger and seen as one', () => {
    const counter = box(3, 3, 7, 7).toReversed();
    const tailed = polygon([0, 0], [8, 0], [10, -2], [12, -2], [12, 0], [10, 2], [10, 10], [0, 10]);
    const over = [box(7, -4, 14, 2)];
    assert.equal(covered([tailed, counter], over, 'Q'), 'tailless');
    assert.equal(covered([tailed, counter], over, 'O'), 'free');
    assert.equal(covered([tailed, counter], [box(7, -4, 11, -1)], 'Q'), 'free', 'half of it is seen');
    assert.equal(covered([tailed, counter], [box(9, -2.2, 12.2, 1)], 'Q'), 'free', 'as large as the tail');
    const slashed = polygon([3, 3], [3, 7], [7, 7], [7, 5], [5, 3]);
    assert.equal(covered([tailed, slashed], over, 'Q'), 'free', 'the tail within');
  });

  it('are none where it lies elsewhere, or under the letter itself', () => {
    assert.equal(covered([box(0, 0, 10, 10)], [box(20, 0, 30, 10)]), 'free');
    assert.equal(covered([box(0, 0, 10, 10)], [box(1, 1, 9, 9)]), 'free');
  });
});
