/** A search that can gain nothing ends. What can be gained is reckoned by hand, of plates in rows. */

import assert from 'node:assert/strict';
import type { Ring } from '../../../src/geometry/types.ts';
import { nest, usualEffort } from '../../../src/nesting/nest.ts';
import type { PartToNest } from '../../../src/nesting/nest.ts';
import { box, polygon } from '../support/shapes.ts';

const room = { width: 200, height: 100, margin: 5, gap: 2 };
const parts = (count: number, ring: Ring, turns: PartToNest['turns'] = 'half'): PartToNest[] =>
  Array.from({ length: count }, () => ({ region: [ring], turns }));

/** Turns that a search takes: each is so many edges of its budget. */
async function turnsOf(all: readonly PartToNest[], effort = usualEffort / 4) {
  let turns = 0;
  const layout = await nest(all, room, () => Promise.resolve(void turns++), effort);
  return { turns, layout };
}

describe('A search', () => {
  const plate = box(0, 0, 90, 43);

  it('ends by itself where four plates fill all that can be filled, on one sheet or on each of three', async () => {
    for (const [count, sheets] of [
      [4, 1],
      [12, 3],
    ] as const) {
      const { turns, layout } = await turnsOf(parts(count, plate));
      assert.equal(layout.sheets, sheets);
      assert.equal((await turnsOf(parts(count, plate), usualEffort)).turns, turns);
    }
  });

  it('ends by itself where what is left over could not be more', async () => {
    // Three rows of three, which are wider than high for the sheet; of six, three rows of two leave more than two of three.
    for (const [count, used] of [
      [8, (3 * 60 + 2 * 2) / 190],
      [6, (2 * 60 + 2) / 190],
    ] as const) {
      const { turns, layout } = await turnsOf(parts(count, box(0, 0, 60, 28)));
      assert.ok(Math.abs(layout.used - used) < 1e-6, `${layout.used}`);
      assert.equal((await turnsOf(parts(count, box(0, 0, 60, 28)), usualEffort)).turns, turns);
    }
  });

  it('goes on where rows are no bound: triangles go into one another, and plates may lie across', async () => {
    for (const [what, all] of [
      ['triangles', parts(7, polygon([0, 0], [56, 0], [28, 39]))],
      ['plates of two sizes', [...parts(3, box(0, 0, 60, 30)), ...parts(3, box(0, 0, 50, 20))]],
      ['plates that may lie across', parts(5, box(0, 0, 75, 28), 'quarter')],
    ] as const) {
      const [little, more] = [await turnsOf(all, usualEffort / 20), await turnsOf(all, usualEffort / 5)];
      assert.ok(more.turns > 1.5 * little.turns, `${what}: ${little.turns} and ${more.turns} turns`);
    }
  });
});
