/** Outlines of few corners within others: areas by jts and by hand. */

import assert from 'node:assert/strict';
import type { Region } from '../../../src/geometry/types.ts';
import { withFewCorners } from '../../../src/jobs/offcuts/few-corners.ts';
import { differenceAreaByJts, unionAreaByJts } from '../support/reference.ts';

const ringOf = (points: readonly (readonly [number, number])[]): Region => [points.map(([x, y]) => ({ x, y }))];
const cornersOf = (region: Region) => region.reduce((sum, { length }) => sum + length, 0);

/** A strip of 306 × 91 mm above a row of letters: low ones on the left, high ones on the right, each with a tip of its own. */
const teeth = (low: number, high: number): Region => {
  const tips = Array.from({ length: 30 }, (_, i): [number, number] => {
    const top = i < 12 ? low : high;
    return [i * 10 + 5, i % 2 === 0 ? top - (i % 3) : top - 8 - (i % 5)];
  });
  return ringOf([[0, 0], ...tips, [306, 0], [306, 91], [0, 91]]);
};

describe('An outline of few corners', () => {
  it('follows a row of letters in long straight edges, and keeps nearly all above them', () => {
    const found = withFewCorners(teeth(20, 32));
    assert.ok(cornersOf(found) <= 8, `${cornersOf(found)} corners`);
    assert.ok(differenceAreaByJts(found, teeth(20, 32)) < 1e-3);
    // By hand: one step where the high letters begin, and straight cuts above each half.
    assert.ok(unionAreaByJts([found]) > 0.98 * (306 * (91 - 32) + 120 * (32 - 20)), `${unionAreaByJts([found])} mm²`);
  });

  it('has no step that keeps less than it is worth', () => {
    const found = withFewCorners(teeth(30, 32));
    assert.equal(cornersOf(found), 4);
    assert.ok(Math.abs(unionAreaByJts([found]) - 306 * (91 - 32)) < 306);
  });

  it('leaves alone what has few corners: an L, a hexagon, a frame', () => {
    const ell = ringOf([
      [0, 0],
      [200, 0],
      [200, 180],
      [88, 180],
      [88, 54],
      [0, 54],
    ]);
    const hexagon = ringOf(
      Array.from({ length: 6 }, (_, i): [number, number] => [
        100 * Math.cos((i * Math.PI) / 3),
        100 * Math.sin((i * Math.PI) / 3),
      ]),
    );
    const frame = [
      ...ringOf([
        [0, 0],
        [300, 0],
        [300, 200],
        [0, 200],
      ]),
      ...ringOf([
        [50, 50],
        [50, 150],
        [250, 150],
        [250, 50],
      ]),
    ];
    for (const each of [ell, hexagon, frame]) assert.deepEqual(withFewCorners(each), each);
  });

  it('lies within whatever it is of, with eight corners at the most', () => {
    let seed = 7;
    const random = () => (seed = (seed * 16807) % 2147483647) / 2147483647;
    for (let round = 0; round < 8; round++) {
      const count = 8 + Math.floor(60 * random());
      const star = ringOf(
        Array.from({ length: count }, (_, i): [number, number] => {
          const [angle, far] = [(2 * Math.PI * i) / count, 40 + 120 * random()];
          return [far * Math.cos(angle), far * Math.sin(angle)];
        }),
      );
      const found = withFewCorners(star);
      assert.ok(differenceAreaByJts(found, star) < 1e-3);
      assert.ok(cornersOf(found) <= 8, `${cornersOf(found)} of ${count} corners`);
      // Stars with spikes of any length: most of their wood is in the spikes.
      assert.ok(unionAreaByJts([found]) > 0.3 * unionAreaByJts([star]));
    }
  });

  it('has more where a hole asks for them', () => {
    const hole = Array.from({ length: 40 }, (_, i): [number, number] => [
      150 + 40 * Math.cos((2 * Math.PI * i) / 40),
      100 - 40 * Math.sin((2 * Math.PI * i) / 40),
    ]);
    const sheet = ringOf([
      [0, 0],
      [300, 0],
      [300, 200],
      [0, 200],
    ]);
    const found = withFewCorners([...sheet, ...ringOf(hole)]);
    assert.equal(found.length, 2);
    assert.ok(cornersOf(found) <= 12);
    assert.ok(differenceAreaByJts(found, [...sheet, ...ringOf(hole)]) < 1e-3);
    // No worse than the square around it.
    assert.ok(unionAreaByJts([found]) >= 300 * 200 - 80 * 80 - 1);
  });
});
