import assert from 'node:assert/strict';
import { nest } from '../../../src/nesting/nest.ts';
import type { Layout, PartToNest, SheetRoom } from '../../../src/nesting/layout.ts';
import type { Region } from '../../../src/geometry/types.ts';
import { assertKept, boxOf, never, roundingMm, sheetsOf } from '../support/sheets.ts';
import { box, disc, polygon, subtract } from '../support/shapes.ts';

const times = (count: number, region: Region, turns: PartToNest['turns'] = 'none'): PartToNest[] =>
  Array.from({ length: count }, () => ({ region, turns }));

async function laid(parts: readonly PartToNest[], room: SheetRoom): Promise<Layout> {
  const layout = await nest(parts, room, never, 2_000_000);
  assertKept(parts, room, layout);
  return layout;
}

/** All on one sheet that has no room for more. */
async function assertFull(parts: readonly PartToNest[], room: SheetRoom): Promise<void> {
  const { sheets, unplaced } = await laid(parts, room);
  assert.deepEqual([sheets, unplaced], [1, []]);
}

describe('Layouts of which the best is known', () => {
  it('fill a sheet with boxes that fit exactly', async () => {
    await assertFull(times(40, [box(0, 0, 10, 7)]), { width: 80, height: 35, margin: 0, gap: 0 });
    await assertFull(times(21, [box(-3, 2, 100 / 7 - 3, 2 + 100 / 3)]), { width: 100, height: 100, margin: 0, gap: 0 });
  });

  it('do so with margins and gaps', async () => {
    await assertFull(times(30, [box(0, 0, 12, 8)]), {
      width: 6 * 12 + 5 * 2 + 10,
      height: 5 * 8 + 4 * 2 + 10,
      margin: 5,
      gap: 2,
    });
    await assertFull(times(30, [box(0, 0, 11.1, 8.3)]), {
      width: 6 * 11.1 + 5 * 0.7,
      height: 5 * 8.3 + 4 * 0.7,
      margin: 0,
      gap: 0.7,
    });
  });

  it('take another sheet for one box more', async () => {
    const { sheets } = await laid(times(41, [box(0, 0, 10, 7)]), { width: 80, height: 35, margin: 0, gap: 0 });
    assert.equal(sheets, 2);
  });

  it('make a square of two triangles, if they may be turned', async () => {
    const triangle = [polygon([0, 0], [30, 0], [0, 30])];
    const room = { width: 30, height: 30, margin: 0, gap: 0 };
    await assertFull(times(2, triangle, 'half'), room);
    assert.equal((await laid(times(2, triangle, 'none'), room)).sheets, 2);
  });

  it('make boxes of eight triangles', async () => {
    const triangle = [polygon([5, 5], [25, 5], [5, 15])];
    await assertFull(times(8, triangle, 'half'), { width: 40, height: 20, margin: 0, gap: 0 });
  });

  it('put corners of frames into one another', async () => {
    const corner = [polygon([0, 0], [30, 0], [30, 10], [10, 10], [10, 30], [0, 30])];
    // Each lies in the corner of the one before, 10 mm up and to the right; as drawn, three take 50 mm.
    const nested = { width: 50, height: 50, margin: 0, gap: 0 };
    await assertFull(times(3, corner), nested);
    // Two make a box: each fills what the other leaves of 30 by 40 mm.
    await assertFull(times(2, corner, 'half'), { width: 40, height: 30, margin: 0, gap: 0 });
  });

  it('turn a part by a quarter where only that fits', async () => {
    const plank = [box(0, 0, 80, 10)];
    const room = { width: 20, height: 100, margin: 0, gap: 0 };
    await assertFull(times(2, plank, 'quarter'), room);
    for (const turns of ['none', 'half'] as const) {
      assert.deepEqual((await laid(times(2, plank, turns), room)).unplaced, [0, 1]);
    }
  });

  it('let discs touch as the pennies on a table do', async () => {
    // Three rows, each half a disc aside from the one below: 2 + 2·√3 radii high.
    const room = { width: 50.1, height: 10 * (2 + 2 * Math.sqrt(3)) + 0.15, margin: 0, gap: 0 };
    await assertFull(times(6, [disc(0, 0, 10)]), room);
  });

  it('keep parts no further apart than the gap and a twentieth of a millimetre', async () => {
    const discs = times(2, [disc(40, 1, 10)]);
    await assertFull(discs, { width: 42.05, height: 20, margin: 0, gap: 2 });
    assert.equal((await laid(discs, { width: 41.98, height: 20, margin: 0, gap: 2 })).sheets, 2);
  });

  it('use what is inside of a frame', async () => {
    const frame = subtract([box(0, 0, 60, 60)], [box(5, 5, 55, 55)]);
    const parts = [...times(1, frame), ...times(4, [box(0, 0, 24, 24)])];
    await assertFull(parts, { width: 60, height: 60, margin: 0, gap: 0.5 });
    const inFrame = sheetsOf(parts, await laid(parts, { width: 60, height: 60, margin: 0, gap: 0.5 }))[0]!;
    assert.ok(boxOf(inFrame.slice(1)).minX >= 5.5 - roundingMm);
    // A hair more than the hole holds.
    const wider = [...times(1, frame), ...times(1, [box(0, 0, 49.1, 20)])];
    assert.equal((await laid(wider, { width: 60, height: 60, margin: 0, gap: 0.5 })).sheets, 2);
  });

  it('list what goes on no sheet', async () => {
    const parts = [...times(1, [box(0, 0, 61, 5)], 'quarter'), ...times(1, [box(0, 0, 60, 5)]), ...times(1, [])];
    const layout = await laid(parts, { width: 64, height: 40, margin: 2, gap: 1 });
    assert.deepEqual(layout.unplaced, [0, 2]);
    assert.deepEqual(await laid([], { width: 64, height: 40, margin: 2, gap: 1 }), {
      placements: [],
      unplaced: [],
      sheets: 0,
      used: 0,
    });
    const narrow = await laid(times(1, [box(0, 0, 1, 1)]), { width: 64, height: 40, margin: 30, gap: 1 });
    assert.deepEqual(narrow, { placements: [], unplaced: [0], sheets: 0, used: 0 });
  });

  it('push what is used towards the side that leaves most, or that is asked for', async () => {
    const parts = times(3, [box(0, 0, 40, 20)]);
    const room = { width: 200, height: 100, margin: 0, gap: 0 };
    // 3 × 20 high and 40 wide uses 40 × 100 mm; beside each other they use 200 × 20.
    const low = boxOf(sheetsOf(parts, await laid(parts, room))[0]!);
    assert.ok(Math.abs(low.maxX - 120) < roundingMm && Math.abs(low.maxY - 20) < roundingMm, JSON.stringify(low));
    const beside = boxOf(sheetsOf(parts, await laid(parts, { ...room, keep: 'height' }))[0]!);
    assert.ok(Math.abs(beside.maxX - 40) < roundingMm, JSON.stringify(beside));
  });
});
