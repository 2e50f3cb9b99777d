import assert from 'node:assert/strict';
import { contains } from '../../../src/geometry/measure.ts';
import { findNecks } from '../../../src/geometry/necks.ts';
import type { Neck } from '../../../src/geometry/necks.ts';
import type { Region, Ring } from '../../../src/geometry/types.ts';
import { box, disc, ellipse, polygon, roundedBox, star, subtract, transformed, unite } from '../support/shapes.ts';

const minWeb = 1.5;
const kinds = (necks: readonly Neck[]) => necks.map(({ kind }) => kind);
const near = (actual: number | undefined, expected: number, within = 0.01) => {
  assert.ok(actual !== undefined && Math.abs(actual - expected) <= within, `${actual} instead of ${expected}`);
};

describe('Necks', () => {
  it('of two discs of radius 10, 16 apart, are one of 12 mm between halves of 297.81 mm² (exact: chord and lens)', () => {
    const necks = findNecks(unite(disc(0, 0, 10, 0.0002), disc(16, 0, 10, 0.0002)), 13);
    assert.deepEqual(kinds(necks), ['bridge']);
    near(necks[0]!.width, 12);
    near(necks[0]!.areas[0], 595.61831 / 2, 0.05);
    near(necks[0]!.areas[1], 595.61831 / 2, 0.05);
  });

  it('of a disc with a hole off its centre are R − r − e wide (exact)', () => {
    const necks = findNecks(subtract([disc(0, 0, 6)], [disc(1.6, 0, 3.4)]), minWeb);
    assert.equal(necks.length, 1);
    near(necks[0]!.width, 6 - 3.4 - 1.6);
  });

  it('of a strip with two round notches are W − 2ρ wide, even where the strip is hardly wider (exact)', () => {
    for (const [strip, notch] of [
      [4, 1.5],
      [1.6, 0.1],
    ] as const) {
      const necks = findNecks(subtract([box(0, 0, 20, strip)], [disc(8, 0, notch)], [disc(8, strip, notch)]), minWeb);
      assert.deepEqual(kinds(necks), ['bridge'], `strip of ${strip}`);
      near(necks[0]!.width, strip - 2 * notch);
    }
  });

  it('tell where they are, how large the two portions are, and a point in each, the larger first', () => {
    const region = unite(disc(0, 0, 3), box(0, -0.5, 8, 0.5), box(7, -5, 17, 5));
    const [neck, ...others] = findNecks(region, minWeb);
    assert.equal(others.length, 0);
    assert.equal(neck?.kind, 'bridge');
    near(neck.width, 1);
    for (const end of neck.ends) assert.ok(end.x > 2.9 && end.x < 7.1 && Math.abs(Math.abs(end.y) - 0.5) < 0.001);
    // 100 mm² of plate, 9π = 28.27 mm² of disc; of the bar between them, 4 mm², each has a part.
    assert.ok(neck.areas[0] >= 100 && neck.areas[0] <= 104.1, `${neck.areas[0]}`);
    near(neck.areas[0] + neck.areas[1], 100 + 9 * Math.PI + 4, 0.3);
    assert.ok(neck.samples[0].x > 8 && neck.samples[0].x < 16, 'well inside the plate');
    assert.ok(Math.hypot(neck.samples[1].x, neck.samples[1].y) < 2, 'well inside the disc');
  });

  it('are as wide whatever has been asked about the same region before', () => {
    const region = unite(disc(0, 0, 10), ellipse(14, 0, 5, 3), box(17, -0.6, 30, 0.6), disc(34, 0, 5));
    const copy = (): Region => region.map((ring) => [...ring]);
    for (const width of [1, 1.5, 1.65, 1.95, 3]) {
      const [asked, fresh] = [findNecks(region, width), findNecks(copy(), width)];
      assert.deepEqual(kinds(asked), kinds(fresh), `below ${width} mm`);
      for (const [i, neck] of asked.entries()) near(neck.width, fresh[i]!.width, 0.006);
    }
  });

  it('take their samples from the part next to them, not from the largest one beyond', () => {
    const letters = [0, 1, 2, 3].map((i) => disc(8 * i, 0, 3));
    const region = unite(...letters, box(0, -0.4, 40, 0.4), disc(40, 0, 9));
    const necks = findNecks(region, minWeb).toSorted((a, b) => a.ends[0].x - b.ends[0].x);
    assert.equal(necks.length, 4);
    for (const [i, { samples }] of necks.slice(0, 3).entries()) {
      const xs = samples.map(({ x }) => x).sort((a, b) => a - b);
      near(xs[0], 8 * i, 1.5);
      near(xs[1], 8 * (i + 1), 1.5);
    }
  });

  it('are walls where a hole comes near the edge or another hole, and cutting them parts nothing', () => {
    const plate = subtract([box(0, 0, 40, 20)], [disc(6, 3, 2)], [disc(11.2, 3, 2)], [disc(30, 10, 2)]);
    const necks = findNecks(plate, minWeb);
    assert.deepEqual(kinds(necks), ['loop', 'loop', 'loop']);
    near(necks[0]!.width, 1);
    near(necks[1]!.width, 1);
    near(necks[2]!.width, 1.2);
    const whole = 800 - 3 * 4 * Math.PI;
    for (const neck of necks) assert.ok(neck.areas[0] > 0.95 * whole && neck.areas[0] < whole);
  });

  it('are told of every part of a chain that they separate', () => {
    const region = unite(...[0, 1, 2].map((i) => disc(8 * i, 0, 3)), box(0, -0.3, 8, 0.3), box(8, -0.5, 16, 0.5));
    const necks = findNecks(region, minWeb);
    assert.deepEqual(kinds(necks), ['bridge', 'bridge']);
    near(necks[0]!.width, 0.6);
    near(necks[1]!.width, 1);
    // One part against two, either way round.
    for (const { areas } of necks) near(areas[0] / areas[1], 2, 0.15);
  });

  it('are not as wide as min_web, to 0.01 mm', () => {
    const joined = (width: number) => unite(disc(0, 0, 4), disc(9, 0, 4), box(0, -width / 2, 9, width / 2));
    assert.equal(findNecks(joined(1.5), minWeb).length, 0);
    assert.equal(findNecks(joined(1.496), minWeb).length, 0);
    assert.equal(findNecks(joined(1.48), minWeb).length, 1);
    // The wall of a ring as wide as min_web, whatever its flattening takes away.
    assert.equal(findNecks(subtract([disc(0, 0, 4, 0.005)], [disc(0, 0, 2.5, 0.005)]), minWeb).length, 0);
  });

  it('are none where material only tapers: ellipses, stars, spikes, corners, wedges', () => {
    const shapes: Record<string, Region> = {
      'flat ellipse': [ellipse(0, 0, 30, 1)],
      'ellipse of b²/a = 0.1': [ellipse(0, 0, 40, 2)],
      star: [star(5, 4, 14)],
      gear: [star(24, 9, 12)],
      triangle: [polygon([0, 0], [20, 1], [20, 6])],
      needle: unite(disc(0, 0, 3), polygon([0, -0.7], [16, 0], [0, 0.7])),
      lens: subtract([disc(0, 0, 10)], [disc(4, 0, 11)]),
      'rounded rectangle': roundedBox(0, 0, 20, 2, 1),
      cross: unite(box(-10, -1, 10, 1), box(-1, -10, 1, 10)),
    };
    for (const [name, region] of Object.entries(shapes)) assert.deepEqual(findNecks(region, minWeb), [], name);
  });
});

describe('Thin strokes', () => {
  it('are one finding for a long thin bar between two bodies, a short one a bridge', () => {
    const bar = (length: number) =>
      unite(box(0, 0, 8, 8), box(7, 3.4, 9 + length, 4.6), box(8 + length, 0, 16 + length, 8));
    const [stroke, ...more] = findNecks(bar(12), minWeb);
    assert.equal(more.length, 0);
    assert.equal(stroke?.kind, 'stroke');
    near(stroke.width, 1.2);
    near(stroke.length, 12, 0.6);
    // 64 mm² at each end, and 14.4 mm² of bar.
    near(stroke.areas[0] + stroke.areas[1], 142.4, 0.01);
    assert.ok(stroke.areas[1] >= 64);
    assert.deepEqual(kinds(findNecks(bar(3), minWeb)), ['bridge']);
  });

  it('are one for a part that is thin all over: a bar, a ring, a letter with branches', () => {
    const bar = findNecks([box(0, 0, 9, 1.2)], minWeb);
    assert.deepEqual(kinds(bar), ['stroke']);
    near(bar[0]!.width, 1.2, 0.001);
    near(bar[0]!.length, 9, 0.8);
    // Marked where it is seen best, in the middle.
    near(bar[0]!.ends[0].x, 4.5, 0.5);

    const ring = findNecks(subtract([disc(0, 0, 6)], [disc(0, 0, 5)]), minWeb);
    assert.deepEqual(kinds(ring), ['stroke']);
    near(ring[0]!.width, 1);
    near(ring[0]!.length, 2 * Math.PI * 5.5, 0.3);

    const letter = unite(box(0, 0, 1, 10), box(0, 9, 8, 10), box(0, 4.5, 6, 5.3));
    assert.deepEqual(kinds(findNecks(letter, minWeb)), ['stroke']);
  });

  it('are one for a web of hairlines between thick spots, with the least width of all', () => {
    // Bars that cross, and are 1.7 mm wide where they do; one of them is thinner.
    const bars = [-9, 0, 9, 18].map((x) => box(x - 0.6, -4, x + 0.6, 4));
    const region = unite(...bars, box(-13, -0.6, 9, 0.6), box(8.8, -0.45, 22, 0.45));
    const necks = findNecks(region, minWeb);
    assert.deepEqual(kinds(necks), ['stroke']);
    near(necks[0]!.width, 0.9);
    assert.ok(necks[0]!.length > 20 && necks[0]!.length < 50, `${necks[0]!.length}`);
  });

  it('are seen where a long even run ends free, but not in a short one or one that tapers', () => {
    const body = box(-10, -5, 0, 5);
    const free = findNecks(unite(body, box(-1, -0.6, 10, 0.6)), minWeb);
    assert.deepEqual(kinds(free), ['stroke']);
    near(free[0]!.width, 1.2, 0.001);
    near(free[0]!.length, 10, 0.8);
    assert.deepEqual(findNecks(unite(body, box(-1, -0.6, 4, 0.6)), minWeb), []);
    assert.deepEqual(findNecks(unite(body, polygon([-1, -0.7], [14, -0.1], [14, 0.1], [-1, 0.7])), minWeb), []);
  });

  it('are not dots: something small and round is no stroke', () => {
    assert.deepEqual(findNecks([disc(0, 0, 0.6)], minWeb), []);
    assert.deepEqual(findNecks([box(0, 0, 1, 1)], minWeb), []);
  });
});

describe('Pieces that only just hang together', () => {
  it('have a neck of width 0 where two parts meet in a point', () => {
    const [neck, ...more] = findNecks([box(0, 0, 5, 5), box(5, 5, 9, 9)], minWeb);
    assert.equal(more.length, 0);
    assert.equal(neck?.kind, 'bridge');
    assert.equal(neck.width, 0);
    for (const end of neck.ends) {
      near(end.x, 5, 1e-4);
      near(end.y, 5, 1e-4);
    }
    near(neck.areas[0], 25, 0.001);
    near(neck.areas[1], 16, 0.001);
    assert.ok(contains([box(0, 0, 5, 5)], neck.samples[0]) && contains([box(5, 5, 9, 9)], neck.samples[1]));
  });

  it('have one where a corner meets the middle of an edge', () => {
    const necks = findNecks([box(0, 0, 10, 5), polygon([4, 5], [7, 9], [1, 9])], minWeb);
    assert.deepEqual(kinds(necks), ['bridge']);
    assert.equal(necks[0]!.width, 0);
  });

  it('have one where a hole touches the edge', () => {
    const notch: Ring = polygon([10, 0], [8, 5], [12, 5]);
    assert.deepEqual(kinds(findNecks([box(0, 0, 20, 20), notch], minWeb)), ['loop']);
  });

  it('have a neck of a hundredth of a mm where that is all there is', () => {
    const hourglass = polygon([-5, -5], [0, -0.005], [5, -5], [5, 5], [0, 0.005], [-5, 5]);
    for (const angle of [0, 0.4, 2]) {
      const necks = findNecks(transformed([hourglass], angle), minWeb);
      assert.deepEqual(kinds(necks), ['bridge']);
      near(necks[0]!.width, 0.01, 0.0001);
    }
  });

  it('have no necks between islands that do not touch, however near', () => {
    assert.deepEqual(findNecks([box(0, 0, 5, 5), box(5.00005, 0, 9, 5), box(20, 0, 30, 9)], minWeb), []);
  });

  it('are not held weak by the debris of booleans: spikes, hair slits and specks', () => {
    const spike = polygon([0, 0], [10, 0], [10, 4.99999], [17, 5], [10, 5.00001], [10, 10], [0, 10]);
    const slit = polygon([0, 0], [10, 0], [10, 4.99999], [2, 5], [10, 5.00001], [10, 10], [0, 10]);
    const speck: Region = [box(0, 0, 10, 10), polygon([0.5, 5], [0.5, 5.004], [0.504, 5])];
    for (const region of [[spike], [slit], speck]) assert.deepEqual(findNecks(region, minWeb), []);
  });

  it('are one piece where outlines run along each other without a gap', () => {
    const shared = [box(0, 0, 5, 5), polygon([5, 1], [9, 1], [9, 4], [5, 4])];
    assert.deepEqual(findNecks(shared, minWeb), []);
    const tilted = transformed(shared, 0.3);
    assert.ok(findNecks(tilted, minWeb).every(({ kind, width }) => kind !== 'bridge' || width > 1));
  });
});

describe('The neck analysis', () => {
  it('finds nothing in nothing', () => {
    const nothing: Region[] = [
      [],
      [[]],
      [polygon([1, 1])],
      [polygon([0, 0], [5, 5])],
      [polygon([0, 0], [5, 5], [9, 9])],
      [polygon([1, 1], [1, 1], [1, 1])],
      [polygon([0, 0], [NaN, 5], [9, 0])],
    ];
    for (const region of nothing) assert.deepEqual(findNecks(region, minWeb), []);
    for (const width of [0, -1, NaN, Infinity]) assert.deepEqual(findNecks([box(0, 0, 1, 9)], width), []);
  });

  it('gives the same answer every time, the narrowest neck first', () => {
    const rings = Array.from({ length: 12 }, (_, i) => disc(7.1 * i + Math.sin(i), Math.cos(3 * i), 3));
    const region = unite(...rings, box(0, -0.4, 78, 0.4));
    const necks = findNecks(region, minWeb);
    assert.ok(necks.length >= 5);
    assert.deepEqual(findNecks(structuredClone(region), minWeb), necks);
    assert.ok(necks.every(({ width }, i) => i === 0 || width >= necks[i - 1]!.width));
    // The rings of a region are in no particular order, nor does a ring start at a particular place.
    const shifted = region.toReversed().map((ring) => [...ring.slice(7), ...ring.slice(0, 7)]);
    assert.deepEqual(
      findNecks(shifted, minWeb).map(({ width }) => width.toFixed(3)),
      necks.map(({ width }) => width.toFixed(3)),
    );
  });
});
