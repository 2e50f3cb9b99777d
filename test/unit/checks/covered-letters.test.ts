import assert from 'node:assert/strict';
import { coveredLetters } from '../../../src/checks/measures/covered-letters.ts';
import { boxRing } from '../../../src/geometry/measure.ts';
import type { Region } from '../../../src/geometry/types.ts';
import { Lettering } from '../../../src/tag/lettering/letters.ts';

function covered(letter: Region, by: Region) {
  const lettering = new Lettering({ path: [], xHeight: 10, grow: 0, as: 'material' }, () => [
    { text: 'o', region: letter },
  ]);
  const { gone, partly, filled } = coveredLetters(lettering, letter, by);
  return gone.length > 0 ? 'gone' : partly.length > 0 ? 'partly' : filled.length > 0 ? 'filled' : 'free';
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

  it('are none where it lies elsewhere, or under the letter itself', () => {
    assert.equal(covered([box(0, 0, 10, 10)], [box(20, 0, 30, 10)]), 'free');
    assert.equal(covered([box(0, 0, 10, 10)], [box(1, 1, 9, 9)]), 'free');
  });
});
