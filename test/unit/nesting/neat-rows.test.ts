import assert from 'node:assert/strict';
import { nest } from '../../../src/nesting/nest.ts';
import type { PartToNest } from '../../../src/nesting/layout.ts';
import { box, disc, subtract } from '../support/shapes.ts';

const room = { width: 300, height: 150, margin: 5, gap: 2 };
const effort = 1_000_000;

/** A plate whose corners are hollow, so that others reach into them. */
const ticket = (): PartToNest => {
  const corners = [0, 84].flatMap((x) => [0, 40].map((y) => [disc(x, y, 6, 0.05)]));
  return { region: subtract([box(0, 0, 84, 40)], ...corners), turns: 'none' };
};

const lay = (parts: readonly PartToNest[]) => nest(parts, room, () => Promise.resolve(), effort);

describe('Plates that are all alike', () => {
  it('lie in rows and in order, if nothing worth keeping is gained otherwise', async () => {
    const { placements, sheets } = await lay(Array.from({ length: 16 }, ticket));
    assert.equal(sheets, 2);
    for (const sheet of [0, 1]) {
      const on = placements.filter((each) => each.sheet === sheet);
      const columns = new Set(on.map(({ transform }) => transform.e.toFixed(2)));
      const rows = new Set(on.map(({ transform }) => transform.f.toFixed(2)));
      assert.ok(columns.size === 3 && rows.size === 3, `${columns.size} columns, ${rows.size} rows`);
    }
    assert.deepEqual(
      placements.filter(({ sheet }) => sheet === 0).map(({ part }) => part),
      [0, 1, 2, 3, 4, 5, 6, 7, 8],
    );
  });

  it('do not where rows take up more', async () => {
    // Triangles side by side, every second upside down, take half of what their boxes do.
    const triangle: PartToNest = {
      region: [
        [
          { x: 0, y: 0 },
          { x: 40, y: 0 },
          { x: 20, y: 60 },
        ],
      ],
      turns: 'half',
    };
    const { used } = await lay(Array.from({ length: 12 }, () => triangle));
    assert.ok(used < 0.75, `${used} of a sheet, of which rows of boxes take up 0.89`);
  });
});

describe('Plates and labels beside them', () => {
  it('leave no teeth: the labels stand on each other, and what is left is one wide piece', async () => {
    const sheet = { width: 305, height: 204, margin: 5, gap: 2 };
    const plates = Array.from({ length: 3 }, (): PartToNest => ({ region: [box(0, 0, 150, 60)], turns: 'none' }));
    const labels = Array.from({ length: 3 }, (): PartToNest => ({ region: [box(0, 0, 75, 30)], turns: 'none' }));
    const { placements, sheets } = await nest([...plates, ...labels], sheet, () => Promise.resolve(), effort);
    assert.equal(sheets, 1);
    const tops = placements.slice(3).map(({ transform }) => transform.f + 30);
    // The margin, three labels and two gaps; in rows with the plates the third ends at 5 + 2 · 62 + 30.
    assert.ok(Math.max(...tops) < 5 + 3 * 30 + 2 * 2 + 0.5, `${Math.max(...tops)} mm`);
    assert.ok(Math.max(...placements.slice(3).map(({ transform }) => transform.e)) < 158);
  });
});
