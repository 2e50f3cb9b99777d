import assert from 'node:assert/strict';
import { BoxBands } from '../../../src/nesting/separation/box-bands.ts';
import { seededRandom } from '../support/shapes.ts';

interface Box {
  readonly x: number;
  readonly y: number;
  readonly halfWidth: number;
  readonly halfHeight: number;
}

const meet = (a: Box, b: Box): boolean =>
  Math.abs(a.x - b.x) < a.halfWidth + b.halfWidth && Math.abs(a.y - b.y) < a.halfHeight + b.halfHeight;

describe('Boxes found by their bands', () => {
  it('are all that meet a box, each once and ascending, wherever they were before and beyond the rectangle too', () => {
    const random = seededRandom(5);
    const somewhere = (): Box => ({
      x: 500 * random() - 50,
      y: 400 * random() - 50,
      halfWidth: 1 + 30 * random(),
      halfHeight: 1 + 30 * random(),
    });
    const count = 70;
    const bands = new BoxBands(count, 400, 300);
    const boxes: Box[] = [];
    const into = new Int32Array(count);
    let [met, offered] = [0, 0];
    for (let i = 0; i < 600; i += 1) {
      const box = somewhere();
      boxes[i % count] = box;
      bands.put(i % count, box.x, box.y, box.halfWidth, box.halfHeight);
      const asked = somewhere();
      const found = into.subarray(0, bands.near(asked.x, asked.y, asked.halfWidth, asked.halfHeight, into));
      assert.deepEqual(
        [...found],
        [...new Set(found)].sort((a, b) => a - b),
      );
      for (const [k, each] of boxes.entries()) {
        if (!meet(each, asked)) continue;
        met += 1;
        assert.ok(found.includes(k), `box ${k} is missed`);
      }
      offered += found.length;
    }
    // Few are offered that do not meet.
    assert.ok(met > 500 && offered < 2.5 * met, `${offered} for ${met}`);
  });

  it('are none before any lies anywhere', () => {
    assert.equal(new BoxBands(40, 100, 100).near(50, 50, 60, 60, new Int32Array(40)), 0);
  });
});
