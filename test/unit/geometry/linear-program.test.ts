import assert from 'node:assert/strict';
import { maximise } from '../../../src/geometry/linear-program.ts';
import type { Constraint } from '../../../src/geometry/linear-program.ts';
import { assertNear } from '../support/engine.ts';
import { seededRandom } from '../support/shapes.ts';

describe('A linear program', () => {
  it('is solved as in the textbook: 3x + 5y, x ≤ 4, 2y ≤ 12, 3x + 2y ≤ 18 gives 36 at (2, 6) (Hillier and Lieberman)', () => {
    const most = (normal: number[], value: number): Constraint => ({
      normal: normal.map((each) => -each),
      least: -value,
    });
    const best = maximise([3, 5], [most([1, 0], 4), most([0, 2], 12), most([3, 2], 18)], [100, 100]);
    assertNear(best![0]!, 2, 1e-9);
    assertNear(best![1]!, 6, 1e-9);
  });

  it('stays within reach, and has no answer where conditions contradict each other', () => {
    assert.deepEqual(maximise([1, -1, 1], [], [1, 2, 3]), [1, -2, 3]);
    const apart = [
      { normal: [1, 0], least: 1 },
      { normal: [-1, 0], least: 0 },
    ];
    assert.equal(maximise([0, 1], apart, [5, 5]), undefined);
  });

  it('has the best corner of all: each corner of random conditions is tried', () => {
    const random = seededRandom(7);
    for (let round = 0; round < 60; round++) {
      const goal = [random() - 0.5, random() - 0.5];
      const conditions = Array.from({ length: 12 }, () => {
        const angle = 2 * Math.PI * random();
        return { normal: [Math.cos(angle), Math.sin(angle)], least: -random() };
      });
      const box = [1, -1].flatMap((sign) => [
        { normal: [sign, 0], least: -3 },
        { normal: [0, sign], least: -3 },
      ]);
      const all = [...conditions, ...box];
      let most = -Infinity;
      for (const [i, a] of all.entries()) {
        for (const b of all.slice(i + 1)) {
          const cross = a.normal[0]! * b.normal[1]! - a.normal[1]! * b.normal[0]!;
          if (Math.abs(cross) < 1e-9) continue;
          const x = (a.least * b.normal[1]! - b.least * a.normal[1]!) / cross;
          const y = (a.normal[0]! * b.least - b.normal[0]! * a.least) / cross;
          if (all.every(({ normal, least }) => normal[0]! * x + normal[1]! * y >= least - 1e-9))
            most = Math.max(most, goal[0]! * x + goal[1]! * y);
        }
      }
      const best = maximise(goal, conditions, [3, 3])!;
      assertNear(goal[0]! * best[0]! + goal[1]! * best[1]!, most, 1e-7);
    }
  });
});
