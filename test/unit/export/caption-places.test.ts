import assert from 'node:assert/strict';
import { captionPlaces } from '../../../src/export/page/caption-places.ts';
import type { Captioned } from '../../../src/export/page/caption-places.ts';
import type { Bounds, Region } from '../../../src/geometry/types.ts';
import { box } from '../support/shapes.ts';
import { area as areaByClipper2, intersection } from '../support/clipper2.ts';

const area: Bounds = { minX: -6, minY: -6, maxX: 106, maxY: 66 };

function rectangle(x: number, y: number, width: number, height: number): Region {
  return [box(x, y, x + width, y + height)];
}

/** mm² that two regions share. */
const shared = (a: Region, b: Region): number => areaByClipper2(intersection(a, b));

const boxRegion = ({ minX, minY, maxX, maxY }: Bounds): Region => [box(minX, minY, maxX, maxY)];

const number = (region: Region, more: Partial<Captioned> = {}): Captioned => ({
  region,
  marks: [],
  wide: 1.2,
  ...more,
});

describe('Captions on the picture of a sheet', () => {
  it('stand on their piece beside what is engraved, where there is room', () => {
    const plate = rectangle(10, 10, 30, 12);
    const marks = rectangle(12, 12, 16, 8);
    const [place] = captionPlaces([number(plate, { marks, middle: { x: 34, y: 16 } })], area, []);
    assert.equal(place!.leader, undefined);
    assert.ok(Math.abs(shared(boxRegion(place!.box), plate) - areaOf(place!.box)) < 1e-6);
    assert.equal(shared(boxRegion(place!.box), marks), 0);
  });

  it('hide no piece, no mark, no caption and no other number, and are led to their own', () => {
    // Stems too narrow for a number, a hand's width of them, with room here and there.
    const stems = Array.from({ length: 24 }, (_, index) =>
      rectangle(2 + (index % 8) * 12, 4 + Math.floor(index / 8) * 20, index % 3 === 0 ? 9 : 1, 14),
    );
    const pieces = stems.map((region) => number(region, { middle: middleOf(region) }));
    const caption = { minX: 40, minY: 19, maxX: 60, maxY: 23 };
    const places = captionPlaces(pieces, area, [caption]);
    for (const [index, { box, leader, covers }] of places.entries()) {
      assert.equal(covers, undefined);
      const others = stems.filter((_, each) => each !== index || leader !== undefined);
      for (const other of others) assert.equal(shared(boxRegion(box), other), 0, `number ${index}`);
      for (const other of [caption, ...places.slice(0, index).map((place) => place.box)])
        assert.equal(shared(boxRegion(box), boxRegion(other)), 0, `number ${index}`);
      if (!leader) continue;
      // It ends at its own piece, which is the nearest.
      const far = stems.map((stem) => distanceTo(leader[1], stem));
      assert.ok(far[index]! < 0.3, `number ${index}: ${far[index]}`);
      assert.ok(
        far.every((each) => each >= far[index]!),
        `number ${index}`,
      );
    }
    assert.ok(places.some(({ leader }) => leader) && places.some(({ leader }) => !leader));
  });

  it('cover something only where no room is anywhere near', () => {
    const bars = Array.from({ length: 90 }, (_, index) => rectangle(-6 + index * 1.25, -6, 1, 72));
    const places = captionPlaces(
      bars.map((region) => number(region)),
      area,
      [],
    );
    assert.ok(places[45]!.covers);
    assert.ok(places.every(({ size }) => size >= 1.7));
  });
});

function areaOf({ minX, minY, maxX, maxY }: Bounds): number {
  return (maxX - minX) * (maxY - minY);
}

function middleOf([ring]: Region): { readonly x: number; readonly y: number } {
  const [low, , high] = ring!;
  return { x: (low!.x + high!.x) / 2, y: (low!.y + high!.y) / 2 };
}

/** From a point to an upright rectangle. */
function distanceTo({ x, y }: { readonly x: number; readonly y: number }, [ring]: Region): number {
  const [low, , high] = ring!;
  return Math.hypot(Math.max(low!.x - x, 0, x - high!.x), Math.max(low!.y - y, 0, y - high!.y));
}
