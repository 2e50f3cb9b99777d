import assert from 'node:assert/strict';
import { nest } from '../../../src/nesting/nest.ts';
import type { PartToNest, SheetRoom } from '../../../src/nesting/layout.ts';
import type { Turn } from '../../../src/nesting/orientation.ts';
import { nestParts } from '../../../src/nesting/shapes.ts';
import { upright } from '../../../src/nesting/upright.ts';
import { assertKept, never } from '../support/sheets.ts';
import { box, disc, polygon, roundedBox, seededRandom, subtract } from '../support/shapes.ts';

const room: SheetRoom = { width: 200, height: 160, margin: 5, gap: 2 };

/** How many lie upside down, of the layouts of several seeds; every layout keeps its distances. */
async function upsideDown(parts: readonly PartToNest[]): Promise<number> {
  let count = 0;
  for (const seed of [1, 2, 3]) {
    const layout = await nest(parts, room, never, 300_000, { seed });
    assert.equal(layout.unplaced.length, 0);
    assertKept(parts, room, layout);
    count += layout.placements.filter(({ transform: { a, b } }) => a < -0.5 || b < -0.5).length;
  }
  return count;
}

describe('Parts on a sheet', () => {
  it('lie upright where a half turn leaves their outline as it is, whatever the holes for their ties', async () => {
    const random = seededRandom(3);
    for (const turns of ['half', 'quarter'] as const) {
      const parts = Array.from({ length: 14 }, (): PartToNest => {
        const width = 30 + 30 * random();
        return { region: subtract(roundedBox(0, 0, width, 20, 4), [disc(4, 10, 1.5)]), turns };
      });
      assert.equal(await upsideDown(parts), 0, turns);
    }
  });

  it('are turned where that makes them fit better', async () => {
    const triangle = { region: [polygon([0, 0], [40, 0], [0, 34])], turns: 'half' } as const;
    assert.ok((await upsideDown(Array.from({ length: 20 }, () => triangle))) > 0);
  });

  it('stay turned where an opening off their middle could hold another, or their outline is not the same', async () => {
    const frame = subtract(roundedBox(0, 0, 80, 60, 4), [disc(26, 30, 20)]);
    const tag = subtract(roundedBox(0, 0, 80, 50, 4), [disc(5, 25, 1.5)]);
    const cut = subtract(tag, [box(70, 40, 90, 60)]);
    const turned = async (narrowest: number, turn: Turn, quarters: 0 | 1) => {
      const regions = [frame, tag, cut, [box(0, 0, narrowest, 60)]];
      const parts = await nestParts(
        regions.map((region) => ({ region, turns: 'quarter' }) as const),
        2,
        never,
      );
      const laid = [0, 1, 2].map((part) => ({
        part,
        sheet: 0,
        orientation: parts[part]!.shape!.orientation(turn),
        x: 0,
        y: 0,
      }));
      return upright(laid, parts, quarters).map(({ orientation }) => orientation.turn);
    };
    assert.deepEqual(await turned(39, 2, 0), [2, 0, 2]);
    assert.deepEqual(await turned(41, 2, 0), [0, 0, 2]);
    assert.deepEqual(await turned(41, 3, 0), [1, 1, 3]);
    assert.deepEqual(await turned(41, 0, 1), [2, 2, 0], 'on a sheet that is turned by a quarter, 0 is three quarters');
    assert.deepEqual(await turned(41, 1, 0), [1, 1, 1]);
  });

  it('stay turned where what is fixed lies in their opening', async () => {
    const frame = subtract(roundedBox(0, 0, 80, 60, 4), [disc(26, 30, 20)]);
    const tight: SheetRoom = { width: 90, height: 70, margin: 5, gap: 2 };
    // Only upside down does the frame go round it.
    const fixed = [[[disc(59, 35, 5)]]];
    const layout = await nest([{ region: frame, turns: 'half' }], tight, never, 300_000, { fixed });
    assert.deepEqual(
      layout.placements.map(({ sheet, transform: { a } }) => [sheet, a]),
      [[0, -1]],
    );
  });
});
