import assert from 'node:assert/strict';
import fc from 'fast-check';
import { closeEdges } from '../../../src/geometry/close-edges.ts';
import type { ClosePlace } from '../../../src/geometry/close-edges.ts';
import { unitsPerMm } from '../../../src/geometry/clipper.ts';
import { area, ringArea } from '../../../src/geometry/measure.ts';
import { partsOf } from '../../../src/geometry/parts.ts';
import type { Point, Region, Ring } from '../../../src/geometry/types.ts';
import { distance } from '../support/distance.ts';
import { assertNear } from '../support/engine.ts';
import { box, disc, erode, polygon, seededRandom, star, subtract, transformed, unite } from '../support/shapes.ts';
import { word } from '../support/words.ts';
import { assertWorked, worked } from '../support/effort.ts';

function only(places: readonly ClosePlace[]): ClosePlace {
  assert.equal(places.length, 1, JSON.stringify(places));
  return places[0]!;
}

function apart([a, b]: readonly [Point, Point]): number {
  return Math.hypot(a.x - b.x, a.y - b.y);
}

/** A ring that starts elsewhere. */
function restarted(ring: Ring, by: number): Ring {
  const at = by % ring.length;
  return [...ring.slice(at), ...ring.slice(0, at)];
}

const plate = [box(0, 0, 20, 10)];

describe('Gaps between edges', () => {
  it('of two boxes are found exactly when they are nearer than the reach, however they are turned', () => {
    const millimetres = fc.double({ min: 0.02, max: 0.6, noNaN: true });
    const angle = fc.double({ min: 0, max: 2 * Math.PI, noNaN: true });
    fc.assert(
      fc.property(millimetres, millimetres, angle, (gap, reach, turn) => {
        fc.pre(Math.abs(gap - reach) > 1e-4);
        const places = closeEdges(transformed([box(0, 0, 10, 6), box(10 + gap, 1, 20, 5)], turn), reach, 'gap');
        if (gap > reach) return places.length === 0;
        const { width, ends, length } = only(places);
        assertNear(width, gap, 1e-9);
        assertNear(apart(ends), gap, 1e-9);
        // Four millimetres side by side, and the left edge some way beyond both ends of the right one.
        assertNear(length, 4 + Math.sqrt(reach ** 2 - gap ** 2), 1e-6);
        return true;
      }),
      { seed: 11, numRuns: 200 },
    );
  });

  it('are as wide as an eccentric ring at its thinnest, R − r − e', () => {
    for (const e of [0.7, 0.8, 0.9]) {
      const holed: Region = [...subtract([disc(0, 0, 12)], [disc(0, 0, 10)]), disc(e, 0, 9)];
      const { width, ends } = only(closeEdges(holed, 0.5, 'gap'));
      assertNear(width, 1 - e, 0.005);
      for (const { x } of ends) assert.ok(x > 9.6);
      assert.deepEqual(closeEdges(holed, 1 - e - 0.01, 'gap'), []);
    }
  });

  it('run all round between concentric rings', () => {
    const rings: Region = [...subtract([disc(0, 0, 12)], [disc(0, 0, 10)]), disc(0, 0, 9.8)];
    const { width, length } = only(closeEdges(rings, 0.3, 'gap'));
    assertNear(width, 0.2, 0.005);
    assertNear(length, 2 * Math.PI * 9.9, 0.1);
    assert.deepEqual(closeEdges(rings, 0.19, 'gap'), []);
  });

  it('are slits from the edge, and narrow mouths of bays', () => {
    const slit = only(closeEdges(subtract(plate, [box(5, 3, 5.1, 12)]), 0.2, 'gap'));
    assertNear(slit.width, 0.1, 1e-9);
    assertNear(slit.length, 7, 0.01);
    const bay = only(closeEdges(subtract(plate, [disc(10, 5, 3)], [box(9.9, 5, 10.1, 12)]), 0.25, 'gap'));
    assertNear(bay.width, 0.2, 1e-4);
    assertNear(bay.length, 2, 0.05);
  });

  it('are long narrow holes, even and lens-shaped, and the waist of a wide one', () => {
    assertNear(only(closeEdges(subtract(plate, [box(2, 3, 18, 3.1)]), 0.2, 'gap')).width, 0.1, 1e-9);
    const lens = polygon([2, 5], [10, 4.93], [18, 5], [10, 5.07]);
    only(closeEdges(subtract(plate, [lens]), 0.16, 'gap'));
    const waist = [polygon([3, 2], [10, 4.9], [17, 2], [17, 8], [10, 5.1], [3, 8])];
    assertNear(only(closeEdges(subtract(plate, waist), 0.3, 'gap')).width, 0.2, 1e-4);
  });

  it('are none in corners, wedges, notches, cusps and the spaces of a gear', () => {
    const silent: Record<string, Region> = {
      'a wedge from the edge': subtract(plate, [polygon([5, 2], [5.4, 12], [4.6, 12])]),
      'a star of forty tips': [star(40, 8, 20)],
      'a hole in the shape of that star': subtract([box(-30, -30, 30, 30)], [star(40, 8, 20)]),
      'two discs that overlap a little': unite(disc(0, 0, 10), disc(19.5, 0, 10)),
      'a teardrop with a long tail': subtract(plate, [disc(5, 5, 2)], [polygon([5, 3.1], [19, 5], [5, 6.9])]),
    };
    for (const [what, region] of Object.entries(silent)) {
      for (const reach of [0.1, 0.2, 0.4]) assert.deepEqual(closeEdges(region, reach, 'gap'), [], `${what}, ${reach}`);
    }
  });

  it('have no width where outlines meet in a point', () => {
    const { width } = only(closeEdges([box(0, 0, 5, 5), box(5, 5, 10, 10)], 0.2, 'gap'));
    assert.equal(width, 0);
  });

  it('are not seen through material', () => {
    const web = [box(0, 0, 5, 5), box(5.05, 0, 5.1, 5), box(5.15, 0, 10, 5)];
    const places = closeEdges(web, 0.2, 'gap');
    assert.ok(places.length > 0);
    for (const { width } of places) assertNear(width, 0.05, 1e-9);
  });
});

describe('Narrow material', () => {
  it('is a hairline between two bodies, a wall round a hole and a free end, but no serif or tip', () => {
    const dumbbell: Region = [
      polygon(
        [0, 0],
        [4, 0],
        [4, 2],
        [14, 2],
        [14, 0],
        [18, 0],
        [18, 4],
        [14, 4],
        [14, 2.15],
        [4, 2.15],
        [4, 4],
        [0, 4],
      ),
    ];
    const hair = only(closeEdges(dumbbell, 0.2, 'material'));
    assertNear(hair.width, 0.15, 1e-9);
    assertNear(hair.length, 10, 0.2);
    assertNear(only(closeEdges(subtract([disc(0, 0, 5)], [disc(0.9, 0, 4)]), 0.2, 'material')).width, 0.1, 0.005);
    const tongue = polygon([0, 0], [10, 0], [10, 5], [18, 5], [18, 5.1], [10, 5.1], [10, 10], [0, 10]);
    assertNear(only(closeEdges([tongue], 0.2, 'material')).length, 8, 0.2);
    const serif = polygon([0, 0], [10, 0], [10, 10], [6, 10], [6, 3], [-6, 0.1], [-6, 0]);
    assert.deepEqual(closeEdges([serif], 0.2, 'material'), []);
    assert.deepEqual(closeEdges([star(12, 4, 10)], 0.2, 'material'), []);
  });

  it('is what a gap is when material and gaps change places', () => {
    const slit = subtract(plate, [box(5, 3, 5.1, 12)]);
    const mould = subtract([box(-5, -5, 25, 15)], slit);
    const [gap, web] = [closeEdges(slit, 0.2, 'gap'), closeEdges(mould, 0.2, 'material')].map(only);
    assertNear(gap!.width, web!.width, 1e-9);
    assertNear(gap!.length, web!.length, 0.01);
  });
});

/** A wobbly outline, different for each seed. */
function blob(random: () => number, x: number, y: number): Ring {
  const waves = [2, 3, 5].map((count) => ({ count, height: 0.25 * random(), phase: 7 * random() }));
  return Array.from({ length: 120 }, (_, i) => {
    const angle = (2 * Math.PI * i) / 120;
    const r = 4 * waves.reduce((sum, { count, height, phase }) => sum + height * Math.sin(count * angle + phase), 1);
    return { x: x + r * Math.cos(angle), y: y + r * Math.sin(angle) };
  });
}

describe('Places where edges are close, against other methods', () => {
  it('lie between any two outlines exactly as far apart as trying every point against every edge says', () => {
    const random = seededRandom(3);
    let close = 0;
    for (let i = 0; i < 60; i++) {
      const [a, b] = [blob(random, 0, 0), blob(random, 8.2 + 1.8 * random(), 3 * random() - 1.5)];
      const gap = distance([a], [b]);
      // By Clipper2: grown by half the reach each, they become one exactly when they are nearer than the reach.
      const merged = partsOf(erode([a, b], -0.5)).length === 1;
      if (Math.abs(gap - 1) < 0.01 || unite(a, b).length < 2) continue;
      const [first] = closeEdges([a, b], 1, 'gap').filter(({ ends: [p, q] }) => isBetween(p, q, a, b));
      assert.equal(first !== undefined, merged, `gap ${gap}`);
      if (!first) continue;
      close++;
      assertNear(first.width, gap, 1e-6);
      assertNear(apart(first.ends), gap, 1e-3);
    }
    assert.ok(close > 10, `only ${close} were close`);
  });

  it('are slits that closing by half the reach fills (Clipper2), and no others', () => {
    const random = seededRandom(8);
    for (let i = 0; i < 30; i++) {
      const [slit, reach] = [0.05 + 0.4 * random(), 0.05 + 0.4 * random()];
      if (Math.abs(slit - reach) < 0.01) continue;
      const region = transformed(subtract(plate, [box(8, 2, 8 + slit, 12)]), 7 * random());
      const filled = area(erode(erode(region, -reach / 2), reach / 2)) - area(region);
      assert.equal(closeEdges(region, reach, 'gap').length === 1, filled > 0.9 * 8 * slit, `${slit}, ${reach}`);
    }
  });

  for (const [font, text, width, reach] of [
    ['roboto', 'Lovage', 40, 0.5],
    ['roboto', 'Kohlrabi', 40, 0.4],
    ['source-sans-3', 'Borage', 30, 0.5],
    ['source-serif-4', 'Yarrow', 40, 0.5],
  ] as const) {
    it(`join the letters of ${text} in ${font} that growing by half the reach joins (Clipper2)`, async () => {
      const region = await word(font, text, width);
      const outer = region.filter((ring) => ringArea(ring) > 0);
      const group = outer.map((_, index) => index);
      for (const { ends } of closeEdges(region, reach, 'gap')) {
        const [a, b] = ends.map((end) => group[nearest(outer, end)]!);
        group.forEach((each, index) => {
          if (each === b) group[index] = a!;
        });
      }
      assert.equal(new Set(group).size, erode(region, -reach / 2).filter((ring) => ringArea(ring) > 0).length);
    });
  }
});

function nearest(rings: readonly Ring[], point: Point): number {
  const distances = rings.map((ring) => distance([[point]], [ring]));
  return distances.indexOf(Math.min(...distances));
}

function isBetween(p: Point, q: Point, a: Ring, b: Ring): boolean {
  return nearest([a, b], p) !== nearest([a, b], q);
}

/** In an order that rounding does not change: equally wide places by their length. */
function byWidth(places: readonly ClosePlace[]): ClosePlace[] {
  const rounded = (mm: number): number => Math.round(mm * 1000);
  return places.toSorted((a, b) => rounded(a.width) - rounded(b.width) || a.length - b.length);
}

const onGrid = (mm: number): number => Math.round(mm * unitsPerMm) / unitsPerMm;

describe('Close edges', () => {
  it('are the same however the outline is turned and wherever its rings start', async () => {
    for (const [font, text, grow, reach, side] of [
      ['pacifico', 'Waffle bean', 0.35, 0.3, 'gap'],
      ['great-vibes', 'Jostaberry', 0.35, 0.3, 'gap'],
      ['great-vibes', 'Jostaberry', 0, 0.5, 'material'],
    ] as const) {
      const region = erode(await word(font, text, 70, 0.01), -grow);
      const before = closeEdges(region, reach, side);
      assert.ok(before.length > 1, `${text}, ${side}`);
      const turned = region.map((ring, index) => restarted(ring, 37 * index + 11)).toReversed();
      const after = closeEdges(transformed(turned, 0.7), reach, side);
      assert.equal(after.length, before.length);
      before.forEach(({ width, length }, index) => {
        assertNear(after[index]!.width, width, 1e-4);
        assertNear(after[index]!.length, length, 1e-2);
      });
    }
  });

  // Stems that stand on one line, edges along which the next edge is seen, and gaps as wide as the reach to the digit.
  for (const [font, text, grow, reach] of [
    ['source-serif-4', 'Hannah', 0, 1],
    ['source-serif-4', 'HIMLET', 0, 1],
    ['source-sans-3', 'Jostaberry', 0.35, 0.5],
    ['source-sans-3', 'Jostaberry', 0.35, 1],
  ] as const) {
    it(`are as long turned by odd angles, exactly and on the grid of booleans: ${text}, within ${reach} mm`, async () => {
      const region = erode(await word(font, text, 60, 0.01), -grow);
      const upright = byWidth(closeEdges(region, reach, 'material'));
      assert.ok(upright.length > 0);
      for (const angle of [0.013, 0.37, 1.234, 2.9, 4.4]) {
        const exact = transformed(region, angle);
        const rounded = exact.map((ring) => ring.map(({ x, y }) => ({ x: onGrid(x), y: onGrid(y) })));
        for (const [turned, allowed] of [
          [exact, 1e-6],
          [rounded, 1e-3],
        ] as const) {
          const after = byWidth(closeEdges(turned, reach, 'material'));
          assert.equal(after.length, upright.length);
          upright.forEach(({ width, length }, index) => {
            assertNear(after[index]!.width, width, allowed);
            assertNear(after[index]!.length, length, allowed);
          });
        }
      }
    });
  }

  it('are none for a reach that is none, and in a region without edges', () => {
    for (const reach of [0, -1, NaN, Infinity]) assert.deepEqual(closeEdges(plate, reach, 'gap'), []);
    assert.deepEqual(closeEdges([], 1, 'gap'), []);
  });

  it('end in bounded time for tens of thousands of edges that all lie near each other', () => {
    const spikes = Array.from({ length: 20_000 }, (_, i) => {
      const angle = (2 * Math.PI * i) / 20_000;
      const r = i % 2 ? 1 : 0.9;
      return { x: r * Math.cos(angle), y: r * Math.sin(angle) };
    });
    const tiles = Array.from({ length: 5_000 }, (_, i) => {
      const [x, y] = [0.05 * (i % 100), 0.05 * Math.floor(i / 100)];
      return box(x, y, x + 0.03, y + 0.03);
    });
    const started = worked();
    for (const region of [[spikes], tiles]) {
      closeEdges(region, 0.45, 'gap');
      closeEdges(region, 0.45, 'material');
    }
    assertWorked(started, 10);
  });
});
