/** Layouts round what lies already on the sheets; distances by jts. */

import assert from 'node:assert/strict';
import fc from 'fast-check';
import { rotation, transform } from '../../../src/geometry/affine.ts';
import type { Region } from '../../../src/geometry/types.ts';
import { nest } from '../../../src/nesting/nest.ts';
import type { Layout, PartToNest, SheetRoom } from '../../../src/nesting/layout.ts';
import { distanceByJts } from '../support/reference.ts';
import { boxOf, never, roundingMm, sheetsOf } from '../support/sheets.ts';
import { box, disc, seededRandom, star } from '../support/shapes.ts';

const effort = 400_000;

/** Each part on a sheet is the gap away from what is fixed there. */
function assertClear(
  parts: readonly PartToNest[],
  room: SheetRoom,
  layout: Layout,
  fixed: readonly (readonly Region[])[],
) {
  for (const [sheet, laid] of sheetsOf(parts, layout).entries()) {
    for (const [i, one] of laid.entries()) {
      const { minX, minY, maxX, maxY } = boxOf([one]);
      const spare = Math.min(minX, minY, room.width - maxX, room.height - maxY);
      assert.ok(spare >= room.margin - roundingMm, `${spare} mm from the edge`);
      for (const other of [...(fixed[sheet] ?? []), ...laid.slice(0, i)]) {
        const distance = distanceByJts(one, other);
        assert.ok(distance >= room.gap - roundingMm, `${distance} mm apart on sheet ${sheet}, not ${room.gap}`);
      }
    }
  }
}

describe('What is fixed on a sheet', () => {
  it('is gone round, whatever it is and however it is turned', async () => {
    await fc.assert(
      fc.asyncProperty(fc.integer(), async (seed) => {
        const random = seededRandom(seed);
        const between = (low: number, high: number) => low + (high - low) * random();
        const room: SheetRoom = {
          width: between(60, 110),
          height: between(50, 90),
          margin: between(0, 5),
          gap: between(0.2, 4),
          ...(random() < 0.3 ? { keep: 'width' as const } : {}),
        };
        const shapes: Region[] = [
          [box(3, 4, between(6, 20), between(6, 20))],
          [star(5, 4, 10)],
          [disc(0, 0, between(3, 9), 0.05)],
        ];
        const parts = Array.from({ length: 10 }, (_, i): PartToNest => ({ region: shapes[i % 3]!, turns: 'quarter' }));
        const fixed = Array.from({ length: 1 + Math.floor(between(0, 2)) }, () =>
          Array.from({ length: Math.floor(between(0, 3)) }, (): Region => {
            const region = shapes[Math.floor(between(0, 3))]!;
            const turned = transform(region, rotation(between(0, 360), { x: 0, y: 0 }));
            const { minX, minY, maxX, maxY } = boxOf([turned]);
            const x = between(0, room.width - (maxX - minX)) - minX;
            const y = between(0, room.height - (maxY - minY)) - minY;
            return turned.map((ring) => ring.map((point) => ({ x: point.x + x, y: point.y + y })));
          }),
        );
        const layout = await nest(parts, room, never, effort, { fixed });
        assert.deepEqual(layout.unplaced, []);
        assert.equal(layout.placements.length, parts.length);
        assert.ok(layout.sheets >= fixed.length);
        assertClear(parts, room, layout, fixed);
      }),
      { numRuns: 12 },
    );
  });

  it('takes no room from sheets behind it, and its sheet is filled up all the same', async () => {
    const room: SheetRoom = { width: 100.2, height: 98.2, margin: 0, gap: 2 };
    const plates = (length: number) =>
      Array.from({ length }, (): PartToNest => ({ region: [box(0, 0, 32, 48)], turns: 'none' }));
    // Alone they fill a sheet: three by two of 32 × 48 mm with 2 mm between them are 100 × 98 mm.
    assert.equal((await nest(plates(6), room, never, effort)).sheets, 1);
    const fixed = [[[box(34.1, 50.1, 66.1, 98.1)]]];
    // With two left over the second sheet is used to a third, one above the other; with three to a half.
    const parts = plates(7);
    const layout = await nest(parts, room, never, effort, { fixed });
    assert.equal(layout.sheets, 2);
    assert.equal(layout.placements.filter(({ sheet }) => sheet === 0).length, 5, 'five beside the fixed one');
    assertClear(parts, room, layout, fixed);
  });

  it('may lie in the margin, beyond the edge or on another without keeping others from being laid', async () => {
    const room: SheetRoom = { width: 80, height: 60, margin: 5, gap: 3 };
    const fixed = [[[box(-4, -4, 20, 12)], [box(10, 2, 20, 12)]], []];
    const parts = Array.from({ length: 5 }, (): PartToNest => ({ region: [box(0, 0, 18, 12)], turns: 'half' }));
    const layout = await nest(parts, room, never, effort, { fixed });
    assert.equal(layout.sheets, 2, 'a sheet that is asked for is there, though nothing lies on it');
    assertClear(parts, room, layout, fixed);
  });

  it('leaves a sheet to itself where nothing else goes', async () => {
    const room: SheetRoom = { width: 40, height: 40, margin: 0, gap: 1 };
    const layout = await nest([], room, never, effort, { fixed: [[[box(0, 0, 10, 10)]]] });
    assert.deepEqual(layout, { placements: [], unplaced: [], sheets: 1, used: 1 });
  });
});

describe('A layout on its way', () => {
  const room: SheetRoom = { width: 120, height: 90, margin: 2, gap: 2 };
  const parts = Array.from({ length: 24 }, (_, i): PartToNest => {
    return { region: [i % 2 === 0 ? star(5, 5, 12) : box(0, 0, 14 + (i % 5), 9)], turns: 'half' };
  });

  it('is told as it becomes better: every layout is whole, and none takes more sheets than the one before', async () => {
    const reported: Layout[] = [];
    const last = await nest(parts, room, never, 3_000_000, { onBetter: (layout) => reported.push(layout) });
    assert.ok(reported.length > 1, String(reported.length));
    let sheets = Infinity;
    for (const layout of [...reported, last]) {
      assert.equal(layout.placements.length, parts.length);
      assert.ok(layout.sheets <= sheets);
      sheets = layout.sheets;
    }
    for (const layout of [reported[0]!, reported.at(-1)!]) assertClear(parts, room, layout, []);
  });

  it('comes out the same whether anyone looks or not, and stops at once when that is asked for', async () => {
    const looked = await nest(parts, room, never, effort, { onBetter: () => undefined });
    assert.deepEqual(looked, await nest(parts, room, never, effort));
    const controller = new AbortController();
    const checkpoint = () => {
      controller.signal.throwIfAborted();
      return Promise.resolve();
    };
    let count = 0;
    const stopped = nest(parts, room, checkpoint, 30_000_000, {
      onBetter: () => {
        count += 1;
        controller.abort();
      },
    });
    await assert.rejects(stopped, { name: 'AbortError' });
    assert.equal(count, 1, 'the first answer is there to be kept');
  });
});
