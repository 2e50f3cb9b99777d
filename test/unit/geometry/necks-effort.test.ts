import assert from 'node:assert/strict';
import { findNecks } from '../../../src/geometry/necks.ts';
import type { Region } from '../../../src/geometry/types.ts';
import { assertWorked, worked } from '../support/effort.ts';
import { box, disc, unite } from '../support/shapes.ts';

const minWeb = 1.5;

describe('The work of the neck analysis', () => {
  it('grows no faster than the outline', () => {
    // Two thin teeth back to back, again and again: many necks, and slits as narrow as 0.02 mm between the teeth.
    const comb = (teeth: number): Region => {
      const discs = Array.from({ length: teeth }, (_, i) => disc(6.02 * i, 0, 3, 0.001));
      return unite(...discs, box(0, -0.3, 6.02 * (teeth - 1), 0.3));
    };
    const timed = (region: Region): number => {
      let best = Infinity;
      for (let i = 0; i < 3; i += 1) {
        const start = worked();
        findNecks(region, minWeb);
        best = Math.min(best, worked() - start);
      }
      return best;
    };
    const small = comb(20);
    const large = comb(160);
    assert.equal(findNecks(large, minWeb).length, 159);
    timed(small);
    const factor = timed(large) / timed(small);
    assert.ok(factor < 24, `8 times the outline took ${factor.toFixed(1)} times as long`);
  });

  it('stays within bounds for a width far too small for the piece', () => {
    const start = worked();
    assert.deepEqual(findNecks([box(0, 0, 2000, 1000)], 0.001), []);
    assertWorked(start, 3);
  });
});
