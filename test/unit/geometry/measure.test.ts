import assert from 'node:assert/strict';
import { area, boundsOf, boxCentre, centroid, contains, perimeter, ringArea } from '../../../src/geometry/measure.ts';
import type { Point, Region } from '../../../src/geometry/types.ts';
import { box, disc, polygon, seededRandom, subtract, transformed, unite } from '../support/shapes.ts';
import { assertNear } from '../support/engine.ts';

function assertPoint(actual: Point | undefined, x: number, y: number, tolerance = 1e-9): void {
  assert.ok(actual);
  assertNear(actual.x, x, tolerance, 'x');
  assertNear(actual.y, y, tolerance, 'y');
}

// Exact mathematics: centroids by integration.
const bitten = polygon([0, 0], [3, 0], [3, 1], [1, 1], [1, 3], [0, 3]);
const triangle = polygon([0, 0], [4, 0], [0, 3]);

describe('The centre of mass', () => {
  it('of a 3 × 3 square less its 2 × 2 corner is (1.1, 1.1), its box centre (1.5, 1.5)', () => {
    assertPoint(centroid([bitten]), 1.1, 1.1);
    assertPoint(boxCentre(boundsOf([bitten])!), 1.5, 1.5);
  });

  it('of the 3-4-5 triangle is a third of the way up each leg', () => {
    assertPoint(centroid([triangle]), 4 / 3, 1);
  });

  it('of a semicircle lies 4r/3π from its diameter', () => {
    const half = Array.from({ length: 2001 }, (_, i) => {
      const angle = (Math.PI * i) / 2000;
      return { x: 10 * Math.cos(angle), y: 10 * Math.sin(angle) };
    });
    assertPoint(centroid([half]), 0, 40 / (3 * Math.PI), 1e-5);
  });

  it('takes holes off', () => {
    const holed = subtract([box(0, 0, 4, 4)], [box(2, 0, 4, 4)]);
    assertPoint(centroid(holed), 1, 2, 1e-5);
    // 100·(5, 5) less 4·(8, 8), over 96.
    assertPoint(centroid([box(0, 0, 10, 10), box(7, 7, 9, 9).toReversed()]), 468 / 96, 468 / 96);
  });

  it('keeps its digits far from the origin', () => {
    assertPoint(centroid(transformed([bitten], 0, 1, 2e6, -2e6)), 2e6 + 1.1, -2e6 + 1.1, 1e-6);
  });

  it('turns with the shape', () => {
    const angle = 0.7;
    const { x, y } = centroid(transformed([bitten], angle, 2, 5, -3))!;
    const [c, s] = [2.2 * Math.cos(angle), 2.2 * Math.sin(angle)];
    assertPoint({ x, y }, c - s + 5, s + c - 3);
  });

  it('is unknown where there is no area', () => {
    assert.equal(centroid([]), undefined);
    assert.equal(centroid([polygon([0, 0], [5, 5])]), undefined);
    assert.equal(centroid([[{ x: 1, y: 1 }]]), undefined);
  });
});

describe('Area and perimeter', () => {
  it('of triangle, ring and nothing are exact', () => {
    assert.equal(ringArea(triangle), 6);
    assert.equal(ringArea(triangle.toReversed()), -6);
    assert.equal(perimeter([triangle]), 12);
    const holed: Region = [box(0, 0, 10, 10), box(4, 4, 6, 6).toReversed()];
    assert.equal(area(holed), 96);
    assert.equal(perimeter(holed), 48);
    assert.equal(area([]), 0);
    assert.equal(perimeter([]), 0);
    assert.equal(area([[]]), 0);
    assert.equal(boundsOf([]), undefined);
    assert.equal(boundsOf([[]]), undefined);
  });
});

describe('Whether a point lies in material', () => {
  it('agrees with the equation of a holed disc at 2,000 random points', () => {
    const region = subtract(unite(disc(0, 0, 10)), unite(disc(3, 0, 4)));
    const random = seededRandom(11);
    let inside = 0;
    for (let i = 0; i < 2000; i++) {
      const point = { x: 24 * random() - 12, y: 24 * random() - 12 };
      const outer = Math.hypot(point.x, point.y);
      const inner = Math.hypot(point.x - 3, point.y);
      // Nearer to an edge than the flattening either answer is right.
      if (Math.abs(outer - 10) < 0.005 || Math.abs(inner - 4) < 0.005) continue;
      const expected = outer < 10 && inner > 4;
      if (expected) inside++;
      assert.equal(contains(region, point), expected, JSON.stringify(point));
    }
    assert.ok(inside > 500);
  });
});
