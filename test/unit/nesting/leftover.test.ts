import assert from 'node:assert/strict';
import { sheetUses } from '../../../src/nesting/leftover.ts';
import type { Layout, PartToNest } from '../../../src/nesting/layout.ts';
import { box, polygon } from '../support/shapes.ts';

const at = (e: number, f: number) => ({ a: 1, b: 0, c: 0, d: 1, e, f });
const room = { width: 200, height: 100, margin: 5, gap: 2 };

describe('What is left of a sheet', () => {
  const parts: readonly PartToNest[] = [
    { region: [box(0, 0, 40, 30)], turns: 'none' },
    { region: [polygon([0, 0], [20, 0], [0, 20])], turns: 'none' },
  ];
  const layout: Layout = {
    placements: [
      { part: 0, sheet: 0, transform: at(5, 5) },
      { part: 1, sheet: 1, transform: at(150, 70) },
    ],
    unplaced: [],
    sheets: 2,
    used: 1.95,
  };

  it('is the larger of the strips that one straight cut leaves', () => {
    const [first, second] = sheetUses(parts, room, layout);
    assert.deepEqual(first!.used, { minX: 5, minY: 5, maxX: 45, maxY: 35 });
    // 153 × 100 mm beside the part, and not 200 × 63 above it.
    assert.deepEqual(first!.offcut, { minX: 47, minY: 0, maxX: 200, maxY: 100 });
    assert.equal(first!.area, 1200);
    assert.equal(first!.utilisation, 1200 / (200 * 100 - 153 * 100));
    // 8 mm above and 28 mm beside.
    assert.deepEqual(second!.offcut, { minX: 172, minY: 0, maxX: 200, maxY: 100 });
    assert.equal(second!.area, 200);
  });

  it('is on the side that is asked for, if it is worth keeping', () => {
    const [first, second] = sheetUses(parts, { ...room, keep: 'width' }, layout);
    assert.deepEqual(first!.offcut, { minX: 0, minY: 37, maxX: 200, maxY: 100 });
    assert.equal(second!.offcut, undefined);
    assert.equal(second!.utilisation, 200 / (200 * 100));
  });
});
