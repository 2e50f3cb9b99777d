import assert from 'node:assert/strict';
import { partsOf } from '../../../src/geometry/parts.ts';
import type { Region, Ring } from '../../../src/geometry/types.ts';
import { assertWorked, worked } from '../support/effort.ts';

/** A square of side `2 * half`, counter-clockwise. */
function square(x: number, y: number, half: number): Ring {
  return [
    { x: x - half, y: y - half },
    { x: x + half, y: y - half },
    { x: x + half, y: y + half },
    { x: x - half, y: y + half },
  ];
}

const hole = (x: number, y: number, half: number): Ring => square(x, y, half).toReversed();

describe('The parts of a region', () => {
  it('are none where there is no material', () => {
    assert.deepEqual(partsOf([]), []);
    assert.deepEqual(partsOf([[], [{ x: 1, y: 1 }]]), []);
  });

  it('are the outer rings, each with its own holes, the largest first', () => {
    const small = square(0, 0, 2);
    const large = square(20, 0, 5);
    const inSmall = hole(0, 0, 1);
    const inLarge = hole(18, 0, 1);
    const alsoInLarge = hole(22, 0, 1);
    const region: Region = [small, inLarge, inSmall, large, alsoInLarge];
    assert.deepEqual(partsOf(region), [
      [large, inLarge, alsoInLarge],
      [small, inSmall],
    ]);
  });

  it('are ordered by material, not by outline', () => {
    const hollow = square(0, 0, 10);
    const solid = square(40, 0, 8);
    assert.deepEqual(partsOf([hollow, hole(0, 0, 9), solid])[0], [solid]);
  });

  it('count an island in a hole, and an island in the hole of that, as parts of their own', () => {
    const rings = [square(0, 0, 10), hole(0, 0, 9), square(0, 0, 8), hole(0, 0, 7), square(0, 0, 6)];
    assert.deepEqual(partsOf(rings), [[rings[4]], [rings[0], rings[1]], [rings[2], rings[3]]]);
  });

  it('give a hole to the ring around it where the first of its points lies on the island inside it', () => {
    const outer = square(0, 0, 10);
    const window = hole(0, 0, 5);
    const touching: Ring = [window[0]!, { x: -4, y: -2 }, { x: -2, y: -4 }];
    assert.deepEqual(partsOf([touching, window, outer]), [[outer, window], [touching]]);
  });

  it('give a hole to the ring around it where every corner of the hole touches the ring', () => {
    const outer = square(0, 0, 10);
    const diamond: Ring = [
      { x: -10, y: 0 },
      { x: 0, y: 10 },
      { x: 10, y: 0 },
      { x: 0, y: -10 },
    ];
    assert.deepEqual(partsOf([outer, diamond]), [[outer, diamond]]);
  });

  it('are found quickly among thousands', () => {
    const region: Ring[] = [];
    for (let i = 0; i < 2500; i += 1) region.push(square((i % 50) * 10, Math.floor(i / 50) * 10, 4));
    for (let i = 0; i < 2500; i += 1) region.push(hole((i % 50) * 10, Math.floor(i / 50) * 10, 2));
    const start = worked();
    const parts = partsOf(region);
    assert.equal(parts.length, 2500);
    assert.ok(parts.every((part) => part.length === 2));
    assertWorked(start, 1);
  });
});
