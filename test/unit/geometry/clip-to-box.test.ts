import assert from 'node:assert/strict';
import fc from 'fast-check';
import { clippedToBox } from '../../../src/geometry/clip-to-box.ts';
import { intersection, normalise } from '../../../src/geometry/clipper.ts';
import { area } from '../../../src/geometry/measure.ts';
import type { Region } from '../../../src/geometry/types.ts';

const star = fc
  .array(fc.double({ min: 2, max: 10, noNaN: true }), { minLength: 3, maxLength: 20 })
  .map((radii): Region[number] =>
    radii.map((radius, k) => {
      const angle = (2 * Math.PI * k) / radii.length;
      return { x: radius * Math.cos(angle), y: radius * Math.sin(angle) };
    }),
  );

describe('What of rings lies in a box', () => {
  it('is their intersection with it (as Clipper makes it)', () => {
    const side = fc.double({ min: -12, max: 12, noNaN: true });
    fc.assert(
      fc.property(star, side, side, side, side, (ring, x1, x2, y1, y2) => {
        const box = { minX: Math.min(x1, x2), maxX: Math.max(x1, x2), minY: Math.min(y1, y2), maxY: Math.max(y1, y2) };
        const hole = ring.map(({ x, y }) => ({ x: x / 2, y: y / 2 })).reverse();
        const corners = [
          { x: box.minX, y: box.minY },
          { x: box.maxX, y: box.minY },
          { x: box.maxX, y: box.maxY },
          { x: box.minX, y: box.maxY },
        ];
        const clipped = area(normalise(clippedToBox([ring, hole], box)));
        assert.ok(Math.abs(clipped - area(intersection([ring, hole], [corners]))) < 1e-2);
      }),
      { seed: 1, numRuns: 200 },
    );
  });

  it('is the very ring where all of it lies there, and nothing where none does', () => {
    const ring = [
      { x: 0, y: 0 },
      { x: 1, y: 0 },
      { x: 0, y: 1 },
    ];
    assert.equal(clippedToBox([ring], { minX: -1, minY: -1, maxX: 2, maxY: 2 })[0], ring);
    assert.deepEqual(clippedToBox([ring], { minX: 2, minY: 2, maxX: 3, maxY: 3 }), []);
  });
});
