import { DistanceField } from '../../../src/geometry/distance-field.ts';
import { normalise } from '../../../src/geometry/clipper.ts';
import { circle } from '../../../src/tag/shapes/plates.ts';
import { assertNear } from '../support/engine.ts';
import { seededRandom } from '../support/shapes.ts';

describe('A field of distances', () => {
  it('says how far a point is within a ring-shaped plate or beside it: what the radii say, to a quarter of a step', () => {
    const outer = circle({ x: 5, y: -3 }, 30);
    const inner = circle({ x: 5, y: -3 }, 10);
    const field = new DistanceField(normalise([outer, inner.toReversed()], 'evenodd'));
    const random = seededRandom(3);
    for (let i = 0; i < 2000; i++) {
      const [x, y] = [5 + 66 * (random() - 0.5), -3 + 66 * (random() - 0.5)];
      const from = Math.hypot(x - 5, y + 3);
      const expected = Math.min(30 - from, from - 10);
      // Outside its box it says how far the box is.
      if (Math.abs(x - 5) > 30 || Math.abs(y + 3) > 30) continue;
      // Where two walls are as near as each other the distance has a ridge, which a grid rounds off.
      const rounding = Math.abs(from - 20) < field.step ? 0.5 : 0.25;
      assertNear(field.at(x, y), expected, rounding * field.step, `at ${x}, ${y}`);
    }
  });
});
