import assert from 'node:assert/strict';
import ClipperLib from 'clipper-lib';
import fc from 'fast-check';
import { cleanPath } from '../../../src/geometry/clean-path.ts';

describe('Cleaning a path of whole units', () => {
  it('drops what lies on a line, doubles and spikes', () => {
    const square = [
      [0, 0],
      [50, 1],
      [100, 0],
      [100, 100],
      [101, 100],
      [100, 170],
      [100, 100],
      [0, 100],
    ];
    const path = square.map(([X, Y]) => ({ X: X!, Y: Y! }));
    assert.deepEqual(
      cleanPath(path).map(({ X, Y }) => [X, Y]),
      [
        [0, 0],
        [100, 0],
        [100, 100],
        [0, 100],
      ],
    );
    assert.deepEqual(cleanPath([]), []);
    assert.deepEqual(
      cleanPath([
        { X: 0, Y: 0 },
        { X: 1, Y: 0 },
        { X: 0, Y: 1 },
      ]),
      [],
    );
  });

  it('gives what clipper-lib gives, point by point, from the same first point on', () => {
    // Few values, so that points coincide, lie on lines and run back.
    const coordinate = fc.oneof(fc.integer({ min: -6, max: 6 }), fc.integer({ min: -3000, max: 3000 }));
    const paths = fc.array(fc.record({ X: coordinate, Y: coordinate }), { maxLength: 40 });
    fc.assert(
      fc.property(paths, (path) => {
        const expected = ClipperLib.Clipper.CleanPolygons([path.map((point) => ({ ...point }))])[0]!;
        assert.deepEqual(
          cleanPath(path).map(({ X, Y }) => [X, Y]),
          expected.map(({ X, Y }) => [X, Y]),
        );
      }),
      { numRuns: 2000 },
    );
  });
});
