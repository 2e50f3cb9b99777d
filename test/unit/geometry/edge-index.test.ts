import assert from 'node:assert/strict';
import { EdgeIndex } from '../../../src/geometry/edge-index.ts';
import type { Point, Ring } from '../../../src/geometry/types.ts';
import { assertNear } from '../support/engine.ts';
import { box, seededRandom, star } from '../support/shapes.ts';

function edgesOf(ring: Ring): [Point, Point][] {
  return ring.map((point, index) => [ring.at(index - 1)!, point]);
}

describe('The index of edges', () => {
  it('finds every edge that comes within reach, as a search through all of them does', () => {
    const ring = star(30, 20, 30);
    const index = new EdgeIndex([ring]);
    const random = seededRandom(5);
    for (let i = 0; i < 200; i++) {
      const centre = { x: 80 * random() - 40, y: 80 * random() - 40 };
      const reach = 6 * random();
      const expected = edgesOf(ring).filter(
        ([a, b]) =>
          Math.min(a.x, b.x) <= centre.x + reach &&
          Math.max(a.x, b.x) >= centre.x - reach &&
          Math.min(a.y, b.y) <= centre.y + reach &&
          Math.max(a.y, b.y) >= centre.y - reach,
      );
      assert.equal(index.near(centre, reach).length, expected.length);
    }
  });

  it('tells whether a ray leaves freely', () => {
    const bay = new EdgeIndex([box(0, 0, 10, 2), box(0, 8, 10, 10), box(0, 2, 2, 8)]);
    const inBay = { x: 6, y: 5 };
    assert.equal(bay.crossedBy(inBay, { x: 1, y: 0 }), false);
    assert.equal(bay.crossedBy(inBay, { x: -1, y: 0 }), true);
    assert.equal(bay.crossedBy(inBay, { x: 0, y: 1 }), true);
    assert.equal(bay.crossedBy(inBay, { x: Math.SQRT1_2, y: Math.SQRT1_2 }), true);
    assert.equal(bay.crossedBy({ x: 11, y: 1 }, { x: -1, y: 0 }), true);
    assert.equal(bay.crossedBy({ x: 11, y: 1 }, { x: 1, y: 0 }), false);
  });

  it('tells inside from outside as the angle does that the outline turns through, seen from the point', () => {
    const rings = [star(30, 20, 30), box(-5, -5, 5, 5).toReversed(), box(-2, -3, 2, 3)];
    const index = new EdgeIndex(rings);
    const random = seededRandom(6);
    const found = Array.from({ length: 500 }, () => {
      const { x, y } = { x: 80 * random() - 40, y: 80 * random() - 40 };
      let turned = 0;
      for (const [a, b] of rings.flatMap(edgesOf)) {
        const [ax, ay, bx, by] = [a.x - x, a.y - y, b.x - x, b.y - y];
        turned += Math.atan2(ax * by - ay * bx, ax * bx + ay * by);
      }
      assert.equal(index.contains({ x, y }), Math.round(turned / (2 * Math.PI)) === 1, `at ${x}, ${y}`);
      return index.contains({ x, y });
    });
    assert.ok(found.includes(true) && found.includes(false));
  });

  it('has nothing near where there are no edges', () => {
    const none = new EdgeIndex([]);
    assert.deepEqual(none.near({ x: 0, y: 0 }, 100), []);
    assert.equal(none.crossedBy({ x: 0, y: 0 }, { x: 1, y: 0 }), false);
    assert.equal(none.contains({ x: 0, y: 0 }), false);
  });
});

describe('Where a circle crosses edges', () => {
  const centre = { x: 0, y: 0 };
  const crossings = (...rings: Ring[]): number[] => {
    const index = new EdgeIndex(rings);
    const angles = index.circleCrossings(centre, 5);
    assert.equal(index.countCircleCrossings(centre, 5), angles.length);
    return angles;
  };

  it('is where the equations of line and circle say', () => {
    // x = 3 meets the circle of radius 5 at (3, ±4).
    const angles = crossings(box(3, -10, 30, 10));
    assert.equal(angles.length, 2);
    assertNear(angles[0]!, -Math.atan2(4, 3), 1e-12);
    assertNear(angles[1]!, Math.atan2(4, 3), 1e-12);
  });

  it('counts a corner that lies on the circle once', () => {
    const angles = crossings([
      { x: 0, y: 0 },
      { x: 5, y: 0 },
      { x: 10, y: 1 },
    ]);
    // The other is on the way back, along y = x / 10.
    assert.equal(angles.length, 2);
    assertNear(angles[0]!, 0, 1e-12);
    assertNear(angles[1]!, Math.atan2(1, 10), 1e-12);
  });

  it('is nowhere for an edge that is missed, touched or has no length', () => {
    const corner = { x: 5, y: 0 };
    assert.deepEqual(crossings(box(6, -9, 30, 9)), []);
    assert.deepEqual(crossings(box(5, -9, 30, 9)), []);
    assert.deepEqual(crossings([corner, corner]), []);
  });
});
