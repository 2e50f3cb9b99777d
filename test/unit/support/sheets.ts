/** What a layout promises, held against it without the engine's own geometry. */

import assert from 'node:assert/strict';
import type { Affine, Region } from '../../../src/geometry/types.ts';
import type { Layout, PartToNest, SheetRoom } from '../../../src/nesting/layout.ts';
import { nestHere } from '../../../src/nesting/best-of.ts';
import { distanceByJts, unionAreaByJts } from './reference.ts';

/** What rounding may take of a margin or a gap, in mm: two steps of the grid that regions are on. */
export const roundingMm = 2e-5;

export const never = (): Promise<void> => Promise.resolve();

/** For tests of what becomes of a layout, to which its density is nothing. */
export const littleEffort = 300_000;

export const nestSoon: typeof nestHere = (parts, room, checkpoint, _effort, options) =>
  nestHere(parts, room, checkpoint, littleEffort, options);

export function moved(region: Region, { a, b, c, d, e, f }: Affine): Region {
  return region.map((ring) => ring.map(({ x, y }) => ({ x: a * x + c * y + e, y: b * x + d * y + f })));
}

/** The parts on each sheet, where they lie. */
export function sheetsOf(parts: readonly PartToNest[], { placements, sheets }: Layout): Region[][] {
  return Array.from({ length: sheets }, (_, sheet) =>
    placements
      .filter((each) => each.sheet === sheet)
      .map(({ part, transform }) => moved(parts[part]!.region, transform)),
  );
}

export function boxOf(regions: readonly Region[]): { minX: number; minY: number; maxX: number; maxY: number } {
  const points = regions.flat(2);
  const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)];
  return { minX: Math.min(...xs), minY: Math.min(...ys), maxX: Math.max(...xs), maxY: Math.max(...ys) };
}

const quarters = ['1 0 0 1', '0 1 -1 0', '-1 0 0 -1', '0 -1 1 0'];
const allowed = { none: quarters.slice(0, 1), half: [quarters[0]!, quarters[2]!], quarter: quarters };

/** Every part is laid once or listed; inside the margins, turned as it may be, and a gap from every other, by jsts. */
export function assertKept(parts: readonly PartToNest[], room: SheetRoom, layout: Layout): void {
  const laid = layout.placements.map(({ part }) => part);
  assert.deepEqual(
    [...laid, ...layout.unplaced].sort((a, b) => a - b),
    [...parts.keys()],
  );
  for (const { part, transform: t } of layout.placements) {
    assert.ok(allowed[parts[part]!.turns].includes(`${t.a} ${t.b} ${t.c} ${t.d}`), JSON.stringify(t));
  }
  for (const sheet of sheetsOf(parts, layout)) {
    assert.ok(sheet.length > 0, 'a sheet without parts');
    const { minX, minY, maxX, maxY } = boxOf(sheet);
    const spare = Math.min(minX, minY, room.width - maxX, room.height - maxY);
    assert.ok(spare >= room.margin - roundingMm, `${spare} mm from the edge`);
    for (const [i, one] of sheet.entries()) {
      for (const other of sheet.slice(0, i)) {
        const [a, b] = [boxOf([one]), boxOf([other])];
        const apart = Math.max(a.minX - b.maxX, b.minX - a.maxX, a.minY - b.maxY, b.minY - a.maxY);
        if (apart >= room.gap - roundingMm) continue;
        const distance = distanceByJts(one, other);
        assert.ok(distance >= room.gap - roundingMm, `${distance} mm apart, not ${room.gap}`);
        // Two that touch are 0 mm apart, and so are two that overlap.
        if (room.gap === 0) assertNoOverlap(one, other);
      }
    }
  }
}

function assertNoOverlap(one: Region, other: Region): void {
  const each = unionAreaByJts([one]) + unionAreaByJts([other]);
  const overlap = each - unionAreaByJts([one, other]);
  // As much as outlines of 20 cm that overlap by what rounding may take.
  assert.ok(overlap < 200 * roundingMm, `they overlap by ${overlap} mm²`);
}
