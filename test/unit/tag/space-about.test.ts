import assert from 'node:assert/strict';
import type { Ring } from '../../../src/geometry/types.ts';
import { spaceAbout } from '../../../src/tag/fit/space-about.ts';
import { boxRing } from '../../../src/geometry/measure.ts';

const box = (minX: number, minY: number, maxX: number, maxY: number): Ring => boxRing({ minX, minY, maxX, maxY });

describe('The space about an upright line', () => {
  const plate = box(0, 0, 20, 10);
  const hole = box(14, 4, 16, 6).toReversed();

  it('holds what lies within the region, and nothing that reaches beyond or across an opening', () => {
    const space = spaceAbout([plate, hole], { x: 10, y: 0 });
    assert.ok(space.holds(box(-9.9, 0.5, 3.9, 9.5)));
    assert.ok(space.holds(box(-9.9, 6.2, 9.9, 9.5)));
    assert.ok(!space.holds(box(-9.9, 3, 5, 7)), 'across the opening');
    assert.ok(!space.holds(box(-10.1, 1, 1, 2)), 'beyond the left edge');
    assert.ok(!space.holds(box(-1, 9, 1, 11)), 'beyond the upper edge');
    assert.ok(!space.holds(box(-1, -1, 1, 1)), 'beyond the lower edge');
    assert.deepEqual([space.minY, space.maxY], [0, 10]);
  });

  it('is none where the line runs outside', () => {
    const space = spaceAbout([plate], { x: 30, y: 0 });
    assert.ok(!space.holds(box(-1, 2, 1, 3)));
    assert.ok(!spaceAbout([], { x: 0, y: 0 }).holds(box(-1, 2, 1, 3)));
  });
});
