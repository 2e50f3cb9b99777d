import assert from 'node:assert/strict';
import { difference } from '../../../src/geometry/clipper.ts';
import { thinnestWall } from '../../../src/geometry/thinnest-wall.ts';
import { circle, roundedRectangle } from '../../../src/tag/shapes/plates.ts';
import { assertNear } from '../support/engine.ts';

describe('The thinnest wall', () => {
  it('of a disc with a hole off its middle is R − r − e, on the line through both centres', () => {
    // R 20, r 5, centres 9 apart: 20 − 5 − 9 = 6, and 24 on the other side.
    const disc = difference([circle({ x: 0, y: 0 }, 20)], [[circle({ x: 9, y: 0 }, 5)]]);
    const wall = thinnestWall(disc, 1.5)!;
    assertNear(wall.width, 6, 0.01);
    for (const { x, y } of wall.ends) {
      assertNear(Math.abs(y), 0, 0.5);
      assert.ok(x > 13.9 && x < 20.1);
    }
  });

  it('of a dumbbell is its bar, of whichever is narrower of two', () => {
    const bar = roundedRectangle(60, 4, 0);
    const [left, right] = [-30, 30].map((x) => circle({ x, y: 0 }, 12));
    const plain = thinnestWall(difference([bar, left!, right!], []), 1.5)!;
    assertNear(plain.width, 4, 0.01);
    const holed = difference([bar, left!, right!], [[circle({ x: -30, y: 0 }, 9.5)]]);
    assertNear(thinnestWall(holed, 1.5)!.width, 2.5, 0.01);
  });

  it('is not there in a plate, nor in nothing', () => {
    assert.equal(thinnestWall([roundedRectangle(80, 40, 5)], 1.5), undefined);
    assert.equal(thinnestWall([], 1.5), undefined);
  });
});
