import {
  applyTo,
  chain,
  identity,
  inverse,
  rotation,
  scaling,
  transform,
  translation,
} from '../../../src/geometry/affine.ts';
import { area, boundsOf, ringArea } from '../../../src/geometry/measure.ts';
import type { Affine } from '../../../src/geometry/types.ts';
import assert from 'node:assert/strict';
import { assertNear } from '../support/engine.ts';
import { box, polygon } from '../support/shapes.ts';

function assertMaps(map: Affine, [x, y]: [number, number], [toX, toY]: [number, number]): void {
  const point = applyTo({ x, y }, map);
  assertNear(point.x, toX, 1e-12, 'x');
  assertNear(point.y, toY, 1e-12, 'y');
}

describe('Affine maps', () => {
  it('turn clockwise, as CSS does (CSS Transforms: positive angles are clockwise as one looks at the screen)', () => {
    assertMaps(rotation(90, { x: 0, y: 0 }), [0, 1], [1, 0]);
    assertMaps(rotation(90, { x: 2, y: 3 }), [2, 5], [4, 3]);
    assertMaps(rotation(-90, { x: 0, y: 0 }), [0, 1], [-1, 0]);
    assertMaps(rotation(360, { x: 7, y: -4 }), [1, 1], [1, 1]);
  });

  it('scale about a point that stays', () => {
    assertMaps(scaling(2, 3, { x: 1, y: 1 }), [1, 1], [1, 1]);
    assertMaps(scaling(2, 3, { x: 1, y: 1 }), [2, 2], [3, 4]);
  });

  it('are done one after the other in the order of their names', () => {
    const turn = rotation(90, { x: 0, y: 0 });
    const move = translation(10, 0);
    assertMaps(chain(move, turn), [0, 1], [1, -10]);
    assertMaps(chain(turn, move), [0, 1], [11, 0]);
    assertMaps(chain(identity, move), [1, 2], [11, 2]);
    assertMaps(chain(rotation(30, { x: 4, y: 5 }), rotation(-30, { x: 4, y: 5 })), [9, 8], [9, 8]);
  });

  it('are undone by their inverse', () => {
    const map = chain(chain(rotation(30, { x: 4, y: 5 }), scaling(-2, 3, { x: 1, y: 1 })), translation(7, -2));
    assertMaps(chain(map, inverse(map)), [9, 8], [9, 8]);
    assertMaps(chain(inverse(map), map), [-3, 2], [-3, 2]);
    assertMaps(inverse(translation(1, 2)), [1, 2], [0, 0]);
  });

  it('keep outer rings counter-clockwise when they mirror', () => {
    const holed = [polygon([0, 0], [4, 0], [0, 3]), box(0.5, 0.5, 1, 1).toReversed()];
    const mirrored = transform(holed, scaling(-1, 1, { x: 0, y: 0 }));
    assert.deepEqual(
      mirrored.map((ring) => Math.sign(ringArea(ring))),
      [1, -1],
    );
    assertNear(area(mirrored), 5.75, 1e-12);
    assertNear(boundsOf(mirrored)!.minX, -4, 1e-12);
  });
});
