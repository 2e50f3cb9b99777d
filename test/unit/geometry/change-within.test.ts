import assert from 'node:assert/strict';
import { changedWithin, unionNear } from '../../../src/geometry/change-within.ts';
import { difference, normalise, union } from '../../../src/geometry/clipper.ts';
import { area, boundsOf, ringArea } from '../../../src/geometry/measure.ts';
import type { Region, Ring } from '../../../src/geometry/types.ts';
import { differenceAreaByJts, unionAreaByJts } from '../support/reference.ts';
import { box, disc, seededRandom, subtract, unite } from '../support/shapes.ts';
import { assertNear } from '../support/engine.ts';

/** Blobs in a row with holes in them, as long as a name. */
function blobs(between: (low: number, high: number) => number): Region {
  const some = (count: number, low: number, high: number) =>
    Array.from({ length: count }, () => disc(between(0, 60), between(0, 12), between(low, high), 0.03));
  return subtract(unite(...some(16, 1, 5)), some(5, 0.5, 2));
}

const holesIn = (region: Region): number => region.filter((ring) => ringArea(ring) < 0).length;

describe('A change in a corner of an outline', () => {
  for (const seed of [1, 2, 3])
    it(`is the same as a boolean of the whole, which jts confirms (${seed})`, () => {
      const random = seededRandom(seed);
      const between = (low: number, high: number): number => low + random() * (high - low);
      let local = 0;
      for (let round = 0; round < 16; round += 1) {
        const whole = blobs(between);
        const [x, y, radius] = [between(0, 60), between(0, 12), between(0.4, 2.5)];
        const part = [disc(x, y, radius, 0.03)];
        const opening = [disc(x + radius / 7, y, radius / 3, 0.03)];
        const change = (near: readonly Ring[]): Region => {
          if (near !== whole) local += 1;
          return difference([...near, ...part], [opening]);
        };
        const made = changedWithin(whole, boundsOf([...part, ...opening])!, change);
        const expected = difference([...whole, ...part], [opening]);
        assert.ok(differenceAreaByJts(made, expected) < 1e-4, `${seed}/${round}: too much`);
        assert.ok(differenceAreaByJts(expected, made) < 1e-4, `${seed}/${round}: too little`);
        assert.equal(holesIn(made), holesIn(expected), `${seed}/${round}: holes`);
        const united = unionNear(whole, [part]);
        assertNear(area(united), unionAreaByJts([whole, part]), 1e-3, `${seed}/${round}: union`);
      }
      assert.ok(local >= 14, `only ${local} of 16 were worked out where they are`);
    });

  it('leaves the points outside as they were', () => {
    const whole = unite(...Array.from({ length: 9 }, (_, i) => disc(6 * i, 0, 4)));
    const made = unionNear(whole, [[disc(0, 3, 2)]]);
    const far = whole.flat().filter(({ x }) => x > 5);
    const kept = new Set(made.flat());
    assert.ok(far.length > 100 && far.every((point) => kept.has(point)));
  });

  it('works inside the material, beside it, and on all of it', () => {
    const plate = normalise([box(0, 0, 60, 20)]);
    const cut = (x: number, y: number, radius: number): Region => {
      const hole = disc(x, y, radius);
      return changedWithin(plate, boundsOf([hole])!, (near) => difference(near, [[hole]]));
    };
    const full = Math.PI * 9;
    assertNear(area(cut(30, 10, 3)), 1200 - full, 0.05);
    assert.equal(cut(30, 10, 3).length, 2);
    assertNear(area(cut(0, 10, 3)), 1200 - full / 2, 0.05);
    assertNear(area(cut(60, 20, 3)), 1200 - full / 4, 0.05);
    assertNear(area(cut(80, 10, 3)), 1200, 1e-9);
    assertNear(area(cut(30, 10, 40)), 0, 1e-9);
    const bare = union([plate, [disc(100, 10, 3)]]);
    assertNear(area(unionNear(bare, [[disc(100, 10, 5)]])), 1200 + Math.PI * 25, 0.1);
  });

  it('works where points of the outline lie on the sides of the box', () => {
    const comb = normalise([box(0, 0, 30, 5), ...Array.from({ length: 10 }, (_, i) => box(3 * i, 5, 3 * i + 1, 12))]);
    const part = box(9 - 0.02, 7, 16.02, 8);
    assertNear(area(unionNear(comb, [[part]])), unionAreaByJts([comb, [part]]), 1e-6);
  });
});
