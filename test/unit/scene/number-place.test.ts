import assert from 'node:assert/strict';
import { numberPlace } from '../../../src/scene/number-place.ts';
import { boxRing } from '../../../src/geometry/measure.ts';
import type { Region } from '../../../src/geometry/types.ts';
import { box, disc, subtract } from '../support/shapes.ts';
import { area, difference, intersection } from '../support/clipper2.ts';

/** In mm², by Clipper2: what the ground of a number hides, and what of it is beside the material. */
function hidden(solid: Region, marks: Region, text: string) {
  const { box: ground, size } = numberPlace(solid, marks, text)!;
  const region = [boxRing(ground)];
  return {
    size,
    ground,
    marked: area(intersection(region, marks)),
    beside: area(difference(region, solid)),
    all: area(region),
  };
}

describe('The number of a piece on its sheet', () => {
  const plate: Region = [box(0, 0, 75, 28)];

  it('stands on free material, though the middle of the most room is too narrow for it', () => {
    // A name all across, and a shorter line below: free are strips of 3 mm and two corners of 18 × 10 mm.
    const marks: Region = [box(3, 12, 72, 25), box(18, 4, 57, 10)];
    for (const text of ['7', '12', '10»']) {
      const { marked, beside, size } = hidden(plate, marks, text);
      assert.deepEqual([marked, beside], [0, 0], text);
      assert.ok(size >= 0.55 * 0.3 * 28 - 1e-9, `${text}: ${size}`);
    }
  });

  it('is as large as it may be where there is room, and as far from everything as it goes', () => {
    const { size, ground, marked, beside } = hidden(plate, [box(0, 0, 45, 28)], '7');
    assert.deepEqual([marked, beside], [0, 0]);
    assert.ok(Math.abs(size - 0.3 * 28) < 1e-9);
    // 14 mm from the marks and from the edges, to two squares of 0.54 mm: 59 to 61 mm from the left.
    assert.ok(Math.abs((ground.minX + ground.maxX) / 2 - 60) < 2.1);
    assert.ok(Math.abs((ground.minY + ground.maxY) / 2 - 14) < 1.1);
  });

  it('hides no hole where it need not', () => {
    const holed: Region = subtract([box(0, 0, 40, 20)], [disc(8, 10, 2.5)]);
    const { beside, marked } = hidden(holed, [box(16, 6, 38, 14)], '3');
    assert.ok(beside + marked < 0.5, `${beside} ${marked}`);
  });

  it('hides what is least where there is no free material', () => {
    const marks: Region = [box(0, 0, 75, 22)];
    const { marked, beside, all } = hidden([box(0, 0, 75, 24)], marks, '5');
    assert.equal(beside, 0);
    assert.ok(marked < all && marked > 0);
  });
});
