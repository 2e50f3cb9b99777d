import assert from 'node:assert/strict';
import { movedOff } from '../../../src/geometry/move-off.ts';
import { assertNear } from '../support/engine.ts';

const square = [
  [0, 0],
  [2, 0],
  [2, 2],
  [0, 2],
].map(([x, y]) => ({ x: x!, y: y! }));

describe('A line moved off an outline', () => {
  it('keeps the distance where it was nearer, and stays where it was not', () => {
    const line = Array.from({ length: 21 }, (_, k) => ({ x: 0.1 * k, y: -0.2 }));
    for (const { y } of movedOff(line, [square], 0.5)) assertNear(y, -0.5, 1e-9);
    assert.deepEqual(
      movedOff(line, [square], 0.2).map(({ y }) => y),
      line.map(({ y }) => y),
    );
  });

  it('goes round a corner at that distance, and comes back without a step', () => {
    const line = Array.from({ length: 61 }, (_, k) => ({ x: 0.1 * k - 1, y: 2.1 }));
    const moved = movedOff(line, [square], 0.5);
    const beyond = moved.filter(({ x }) => x > 2.8);
    assert.ok(beyond.length > 20);
    for (const { y } of beyond) assertNear(y, 2.1, 1e-9);
    const steps = moved.slice(1).map(({ y }, k) => Math.abs(y - moved[k]!.y));
    assert.ok(Math.max(...steps) < 0.2, `${Math.max(...steps)}`);
  });
});
