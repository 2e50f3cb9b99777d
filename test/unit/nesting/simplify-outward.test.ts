import assert from 'node:assert/strict';
import { ringArea } from '../../../src/geometry/measure.ts';
import type { Region } from '../../../src/geometry/types.ts';
import { simplifiedOutline, outlineOf } from '../../../src/nesting/part-outline.ts';
import { simplifyOutward } from '../../../src/nesting/simplify-outward.ts';
import { unionAreaByJts } from '../support/reference.ts';
import { distance } from '../support/distance.ts';
import {
  box,
  disc,
  erode,
  polygon,
  roundedBox,
  seededRandom,
  star,
  subtract,
  transformed,
  unite,
} from '../support/shapes.ts';
import { boxOf } from '../support/sheets.ts';
import { word } from '../support/words.ts';

const count = (region: Region): number => region.reduce((sum, ring) => sum + ring.length, 0);

/** How much of the first is outside of the second, in mm², by Clipper2. */
function outside(region: Region, cover: Region): number {
  return subtract(erode(region, 0.00005), cover).reduce((sum, ring) => sum + Math.abs(ringArea(ring)), 0);
}

/** Each point of the first by the nearest edge of the second: the furthest. */
function furthest(from: Region, to: Region): number {
  return Math.max(...from.flat().map((point) => distance([[point]], to)));
}

describe('An outline with fewer points', () => {
  const random = seededRandom(11);
  const between = (low: number, high: number) => low + (high - low) * random();
  const regions: Readonly<Record<string, () => Region>> = {
    'of a disc with a hole': () => subtract([disc(0, 0, 20)], [disc(2, 1, 6)]),
    'of a box with round corners': () => roundedBox(0, 0, 60, 25, 4),
    'of a star': () => [star(7, 6, 14)],
    'of blots': () => unite(...Array.from({ length: 9 }, () => disc(between(-15, 15), between(-9, 9), between(2, 6)))),
    'of a scribble': () => unite(Array.from({ length: 14 }, () => ({ x: between(-20, 20), y: between(-20, 20) }))),
  };
  for (const [name, make] of Object.entries(regions)) {
    it(`${name} covers it and strays no further than it may`, () => {
      const region = make();
      for (const tolerance of [0.015, 0.1, 0.8]) {
        const simple = simplifyOutward(region, tolerance);
        assert.ok(count(simple) <= count(region));
        assert.equal(outside(region, simple), 0);
        // Where a ring runs over itself afterwards, only what is outermost is its outline.
        assert.ok(furthest(unite(...simple), region) <= tolerance + 1e-5);
      }
    });
  }

  it('of lettering has far fewer points, and covers it', async () => {
    const region = await word('pacifico', 'Rosemary', 60);
    const simple = simplifyOutward(region, 0.015);
    assert.ok(count(simple) < count(region) / 2, `${count(region)} to ${count(simple)}`);
    assert.equal(outside(region, simple), 0);
    assert.ok(furthest(simple, region) <= 0.015 + 1e-5);
  });

  it('keeps straight sides where they are', () => {
    const plate = [polygon([0, 0], [30, 0], [30, 10], [10, 10], [10, 30], [0, 30])];
    assert.deepEqual(new Set(simplifyOutward(plate, 0.8)[0]), new Set(plate[0]));
  });
});

describe('What stands for a part', () => {
  it('reaches half the gap beyond it, and no further than it may', () => {
    for (const drawn of [[disc(0, 0, 12)], [box(0, 0, 30, 8)], [polygon([0, 0], [40, 5], [9, 7], [12, 30])]]) {
      const { minX, minY } = boxOf([drawn]);
      const region = transformed(drawn, 0, 1, -minX, -minY);
      for (const gap of [0.5, 2, 6]) {
        const outline = outlineOf(region, gap)!.region;
        assert.ok(distance(region, outline) >= gap / 2 - 2e-5, String(distance(region, outline)));
        assert.ok(furthest(outline, region) <= gap / 2 + 0.0251);
        assert.equal(
          outside(outline, simplifiedOutline({ region: outline, bounds: outlineOf(region, gap)!.bounds }).region),
          0,
        );
      }
    }
  });

  it('is a box where there are more corners than can be counted', () => {
    const saw = polygon(
      [0, -5],
      ...Array.from({ length: 40_000 }, (_, i) => [20 + (i % 2) * 8, -5 + i / 4000] as const),
      [0, 5],
    );
    const { region, bounds } = simplifiedOutline({ region: [saw], bounds: { minX: 0, minY: -5, maxX: 28, maxY: 5 } });
    assert.equal(count(region), 4);
    assert.equal(unionAreaByJts([region]), 280);
    assert.equal(bounds.maxX, 28);
  });
});
