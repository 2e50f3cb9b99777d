import assert from 'node:assert/strict';
import { arcToleranceMm, offset } from '../../../src/geometry/clipper.ts';
import { boundsOf, contains, ringArea } from '../../../src/geometry/measure.ts';
import type { Point, Region, Ring } from '../../../src/geometry/types.ts';
import { Outlines } from '../support/distance.ts';
import { offsetAreaByClipper2 } from '../support/reference.ts';
import { disc, seededRandom, subtract, transformed, unite } from '../support/shapes.ts';

/** Slight corners go half a thousandth of a mm beyond their arcs, and the grid's rounding adds to it. */
const beyondMm = 0.00055;
const withinMm = arcToleranceMm + 0.0001;

type Random = (low: number, high: number) => number;

function jagged(between: Random): Ring {
  const corners = Math.floor(between(3, 30));
  return Array.from({ length: corners }, (_, i) => {
    const radius = between(2, 12);
    const angle = (2 * Math.PI * (i + between(0, 0.8))) / corners;
    return { x: radius * Math.cos(angle), y: radius * Math.sin(angle) };
  });
}

function scribble(between: Random): Region {
  return unite(Array.from({ length: 12 }, () => ({ x: between(-10, 10), y: between(-10, 10) })));
}

function discs(between: Random): Region {
  const some = (count: number, radius: number) =>
    Array.from({ length: count }, () => disc(between(-10, 10), between(-10, 10), between(0.3, radius), 0.01));
  return subtract(unite(...some(8, 6)), some(4, 3));
}

const families: Readonly<Record<string, (between: Random) => Region>> = {
  'jagged rings': (between) => unite(jagged(between)),
  'jagged holes in a plate': (between) => subtract([disc(0, 0, 14, 0.01)], [jagged(between)]),
  'lines that crossed themselves': scribble,
  'discs on one another and missing from them': discs,
};

function assertIsOffset(region: Region, delta: number, between: Random, description: string): void {
  const result = offset(region, delta);
  const outlines = new Outlines(region);
  // How far beyond the offset's true edge a point lies.
  const beyond = (point: Point): number => {
    const isWithin = contains(region, point);
    if (delta > 0) return (isWithin ? 0 : outlines.distance(point)) - delta;
    return isWithin ? -delta - outlines.distance(point) : -delta;
  };
  const slack = delta > 0 ? [withinMm, beyondMm] : [beyondMm, withinMm];
  for (const ring of result) {
    ring.forEach((point, index) => {
      const next = ring[(index + 1) % ring.length]!;
      for (const each of [point, { x: (point.x + next.x) / 2, y: (point.y + next.y) / 2 }]) {
        const by = beyond(each);
        assert.ok(by > -slack[0]! && by < slack[1]!, `${description}: an edge is ${by} mm beyond`);
      }
    });
  }
  const box = boundsOf(region)!;
  const margin = Math.max(delta, 0) + 0.5;
  for (let i = 0; i < 60; i++) {
    const point = {
      x: between(box.minX - margin, box.maxX + margin),
      y: between(box.minY - margin, box.maxY + margin),
    };
    const by = beyond(point);
    if (by < -slack[0]!) assert.ok(contains(result, point), `${description}: ${by} mm inside is left out`);
    if (by > slack[1]!) assert.ok(!contains(result, point), `${description}: ${by} mm outside is taken in`);
  }
}

describe('The offsets of random shapes', () => {
  // By definition: a grown region is what lies within the distance of material, a thinned one what lies deeper than it.
  for (const [name, make] of Object.entries(families)) {
    it(`hold every point within the distance and none beyond, their edges exactly at it: ${name}`, () => {
      for (let seed = 0; seed < 60; seed++) {
        const random = seededRandom(seed);
        const between: Random = (low, high) => low + random() * (high - low);
        const region = transformed(make(between), between(0, 6), between(0.3, 1.5), between(-90, 90), between(-90, 90));
        for (const delta of [between(0.05, 1), between(1, 8), -between(0.05, 1), -between(0.5, 3)])
          assertIsOffset(region, delta, between, `seed ${seed}, ${delta.toFixed(3)} mm`);
      }
    });

    it(`have the areas that Clipper2 finds: ${name}`, () => {
      for (let seed = 0; seed < 150; seed++) {
        const random = seededRandom(seed);
        const between: Random = (low, high) => low + random() * (high - low);
        const region = make(between);
        for (const delta of [between(0.05, 2), -between(0.05, 1)]) {
          const found = offset(region, delta);
          const outline = found.reduce((sum, ring) => sum + lengthOf(ring), 0);
          const area = found.reduce((sum, ring) => sum + ringArea(ring), 0);
          const expected = offsetAreaByClipper2(region, delta);
          const difference = Math.abs(area - expected);
          assert.ok(
            difference <= outline * arcToleranceMm + 1e-6,
            `seed ${seed}, ${delta} mm: ${area}, not ${expected}`,
          );
        }
      }
    });
  }

  it('are the same to the last digit however often, and whatever was offset in between', () => {
    const random = seededRandom(7);
    const between: Random = (low, high) => low + random() * (high - low);
    const region = discs(between);
    const first = offset(region, 0.7);
    for (let i = 0; i < 5; i++) offset(discs(between), between(-1, 3));
    assert.deepEqual(offset(region, 0.7), first);
  });
});

function lengthOf(ring: Ring): number {
  return ring.reduce((sum, point, index) => {
    const next = ring[(index + 1) % ring.length]!;
    return sum + Math.hypot(next.x - point.x, next.y - point.y);
  }, 0);
}
