/** The middle arm of an F, on which an i hangs, by shapes with edges at known heights; an x-height is 10 mm. */

import assert from 'node:assert/strict';
import { union } from '../../../src/geometry/clipper.ts';
import { middleArm } from '../../../src/tag/overlap/arms.ts';
import { rowsOf } from '../../../src/tag/overlap/runs.ts';
import { assertNear } from '../support/engine.ts';
import { box } from '../support/shapes.ts';

const xHeight = 10;

/** A stem 2 mm wide and 14 mm high with a serif at its foot, a middle arm from 6 to 8 mm up and one at the top, each as long as given. */
function armOf(serif: number, middle: number, top: number): number | undefined {
  const strokes = [box(0, 0, 2, 14), box(0, 0, serif, 2), box(0, 6, middle, 8), box(0, 12, top, 14)];
  return middleArm(rowsOf(union(strokes.map((stroke) => [stroke])), 0.1), xHeight);
}

describe('The middle arm of a letter', () => {
  it('is that of an F, whose foot is a stem', () => {
    assertNear(armOf(2, 6, 8)!, 7, 0.1);
  });

  it('is that of an F with a serif at its foot that is a little shorter', () => {
    assertNear(armOf(5.5, 6, 8)!, 7, 0.1);
  });

  for (const [letter, serif, middle, top] of [
    ['an E, whose foot reaches as far', 6, 6, 8],
    ['an I with serifs', 4, 2, 4],
    ['a T with its arm at the top', 2, 2, 8],
  ] as const)
    it(`is not in ${letter}`, () => {
      assert.equal(armOf(serif, middle, top), undefined);
    });
});
