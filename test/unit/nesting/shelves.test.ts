import assert from 'node:assert/strict';
import { nest } from '../../../src/nesting/nest.ts';
import type { PartToNest } from '../../../src/nesting/nest.ts';
import { assertKept, boxOf, never } from '../support/sheets.ts';
import { disc, seededRandom, unite } from '../support/shapes.ts';

/** Sheets that rows of boxes take: first fit, the tallest first, reckoned here by itself. */
function sheetsByRows(parts: readonly PartToNest[], width: number, height: number, gap: number): number {
  const rows: { room: number; high: number }[] = [];
  const sizes = parts.map(({ region }) => {
    const { minX, minY, maxX, maxY } = boxOf([region]);
    return { w: maxX - minX, h: maxY - minY };
  });
  sizes.sort((a, b) => b.h - a.h);
  for (const { w, h } of sizes) {
    const row = rows.find(({ room }) => w <= room);
    if (row) row.room -= w + gap;
    else rows.push({ room: width - w - gap, high: h });
  }
  const left: number[] = [];
  for (const { high } of rows) {
    const sheet = left.findIndex((room) => high <= room);
    if (sheet < 0) left.push(height - high - gap);
    else left[sheet]! -= high + gap;
  }
  return left.length;
}

describe('Many parts that are all different', () => {
  const random = seededRandom(4);
  const blot = () =>
    unite(...Array.from({ length: 3 }, () => disc(24 * random(), 5 * random(), 3 + 3 * random(), 0.2)));
  const parts = Array.from({ length: 110 }, (): PartToNest => ({ region: blot(), turns: 'none' }));
  const room = { width: 160, height: 120, margin: 2, gap: 1 };

  it('never take more sheets than rows of boxes would, with hardly any effort', async () => {
    const layout = await nest(parts, room, never, 1);
    assertKept(parts, room, layout);
    assert.deepEqual(layout.unplaced, []);
    const rows = sheetsByRows(parts, room.width - 2 * room.margin, room.height - 2 * room.margin, room.gap);
    assert.ok(rows > 1 && layout.sheets <= rows, `${layout.sheets}, in rows ${rows}`);
  });

  it('keep what a layout promises once they are separated', async () => {
    const layout = await nest(parts, room, never, 4_000_000);
    assertKept(parts, room, layout);
    assert.deepEqual(layout.unplaced, []);
  });
});
