import assert from 'node:assert/strict';
import {
  crossings,
  effectiveWidth,
  massCentre,
  pointAt,
  stretchesAcross,
  stretchesBetween,
  totalLength,
} from '../../../src/strength/line-stretches.ts';
import { assertNear } from '../support/engine.ts';
import { box, polygon } from '../support/shapes.ts';

const right = { x: 1, y: 0 };
/** A square of 10 with a square hole of 2 in its middle. */
const frame = [box(0, 0, 10, 10), [...box(4, 4, 6, 6)].reverse()];

function assertNearAll(actual: readonly (readonly number[])[], expected: readonly (readonly number[])[]): void {
  assert.equal(actual.length, expected.length, JSON.stringify(actual));
  actual.forEach((each, i) => {
    assert.equal(each.length, expected[i]!.length);
    each.forEach((value, k) => {
      assertNear(value, expected[i]![k]!, 1e-12);
    });
  });
}

describe('A line across a region', () => {
  it('crosses its edges where mathematics says, in order', () => {
    assertNearAll([crossings(frame, { x: -1, y: 5 }, right)], [[1, 5, 7, 11]]);
    assertNearAll([crossings(frame, { x: 7, y: 5 }, { x: -1, y: 0 })], [[-3, 1, 3, 7]]);
    // 3, 4, 5: 3 and 6 to the right are 5 and 10 along the line.
    assertNearAll([crossings([box(4, -99, 7, 99)], { x: 1, y: 2 }, { x: 0.6, y: 0.8 })], [[5, 10]]);
    // 2 mm to the right, a slope of 1 : 2 rises by 1.
    assertNearAll([crossings([polygon([0, 0], [4, -9], [4, 2])], { x: 2, y: 0 }, { x: 0, y: 1 })], [[-4.5, 1]]);
    assert.deepEqual(crossings(frame, { x: 0, y: 11 }, right), []);
  });

  it('counts a corner once', () => {
    const diagonal = { x: Math.SQRT1_2, y: Math.SQRT1_2 };
    assertNearAll([crossings([box(0, 0, 10, 10)], { x: -1, y: -1 }, diagonal)], [[Math.SQRT2, 11 * Math.SQRT2]]);
    const lozenge = [polygon([-2, 0], [0, -2], [2, 0], [0, 2])];
    assertNearAll([crossings(lozenge, { x: -5, y: 0 }, right)], [[3, 7]]);
    // It touches a tip: in and out at once, or not at all.
    assert.ok([0, 2].includes(crossings(lozenge, { x: -5, y: 2 }, right).length));
    assert.ok([0, 2].includes(crossings(lozenge, { x: -5, y: -2 }, right).length));
  });

  it('runs through material between every other two crossings', () => {
    assertNearAll(stretchesAcross(frame, { x: -1, y: 5 }, right), [
      [1, 5],
      [7, 11],
    ]);
    assert.deepEqual(stretchesAcross(frame, { x: 0, y: 11 }, right), []);
  });
});

describe('A line between two points of the outline', () => {
  it('is cut where it leaves material', () => {
    const [left, end] = [
      { x: 0, y: 5 },
      { x: 10, y: 5 },
    ];
    assertNearAll(stretchesBetween(frame, left, end), [
      [0, 4],
      [6, 10],
    ]);
    assertNearAll(stretchesBetween(frame, { x: 0, y: 2 }, { x: 10, y: 2 }), [[0, 10]]);
    assertNearAll(stretchesBetween(frame, { x: 6, y: 5 }, end), [[0, 4]]);
    // Across the hole, and where there is no line.
    assert.deepEqual(stretchesBetween(frame, { x: 4, y: 5 }, { x: 6, y: 5 }), []);
    assert.deepEqual(stretchesBetween(frame, end, end), []);
    // Along y = x − 1 the hole is from (5, 4) to (6, 5).
    assertNearAll(
      stretchesBetween(frame, { x: 1, y: 0 }, { x: 10, y: 9 }),
      [
        [0, 4],
        [5, 9],
      ].map((stretch) => stretch.map((x) => x * Math.SQRT2)),
    );
  });

  it('may end a hundredth of a millimetre off it', () => {
    assertNearAll(stretchesBetween(frame, { x: -0.008, y: 2 }, { x: 10.008, y: 2 }), [[0, 10.016]]);
    assertNearAll(stretchesBetween(frame, { x: -0.02, y: 2 }, { x: 10.02, y: 2 }), [[0.02, 10.02]]);
  });
});

describe('Stretches of a line', () => {
  it('have a length and a centre of mass', () => {
    // 2 mm about 1 and 6 mm about 7: (2 + 42)/8.
    const two = [
      [0, 2],
      [4, 10],
    ] as const;
    assert.equal(totalLength(two), 8);
    assert.equal(massCentre(two), 5.5);
    assert.equal(massCentre([]), 0);
    assert.deepEqual(pointAt({ x: 1, y: 2 }, { x: 0.6, y: -0.8 }, 5), { x: 4, y: -2 });
  });

  it('off the pull bear F/bt + 6Fe/tb² (straight beam): 10 N, b 3, t 3, e 2 → 5.556 MPa', () => {
    assertNear(10 / (3 * effectiveWidth([[0, 3]], 2)), 5.556, 5e-4);
    assert.equal(effectiveWidth([[1, 4]], 0), 3);
    assert.equal(effectiveWidth([], 2), 0);
  });

  it('bear with the moment of inertia of all of them (parallel axes)', () => {
    // Two of 2 mm, 10 mm apart from middle to middle: A 4, I = 2·(8/12 + 2·25) = 101.33, y 6; e 3 → 1/(1/4 + 18/101.33).
    const two = [
      [-6, -4],
      [4, 6],
    ] as const;
    assertNear(effectiveWidth(two, 3), 1 / (1 / 4 + 18 / (304 / 3)), 1e-12);
  });
});
