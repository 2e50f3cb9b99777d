import assert from 'node:assert/strict';
import { normalise } from '../../../src/geometry/clipper.ts';
import { area, contains } from '../../../src/geometry/measure.ts';
import { findNecks } from '../../../src/geometry/necks.ts';
import type { Neck } from '../../../src/geometry/necks.ts';
import { partsOf } from '../../../src/geometry/parts.ts';
import type { Point, Region, Ring } from '../../../src/geometry/types.ts';
import { box, disc, erode, seededRandom, transformed, unite } from '../support/shapes.ts';
import { word } from '../support/words.ts';

const minWeb = 1.5;

/** Whether two points are still in one part once a disc of diameter `width` must be able to pass from one to the other. */
function togetherAt(region: Region, width: number, a: Point, b: Point): boolean {
  return partsOf(erode(region, width / 2)).some((part) => contains(part, a) && contains(part, b));
}

/** The point that lasts longest when a region is eroded bit by bit. */
function innermost(region: Region): Point {
  let last = region;
  for (let by = 0.1; by < 50; by *= 1.3) {
    const left = partsOf(erode(region, by))[0];
    if (!left) break;
    last = left;
  }
  const ring = last[0]!;
  const sum = ring.reduce((s, { x, y }) => ({ x: s.x + x, y: s.y + y }), { x: 0, y: 0 });
  return { x: sum.x / ring.length, y: sum.y / ring.length };
}

describe('Necks against erosion by clipper2-ts (a piece falls apart where the disc no longer passes)', () => {
  it('dumbbells part at the width found, to 0.02 mm by bisection', () => {
    const random = seededRandom(5);
    for (let i = 0; i < 20; i += 1) {
      const width = 0.2 + 1.2 * random();
      const far = 8 + 6 * random();
      const region = transformed(
        unite(disc(0, 0, 3), disc(far, 0, 3.5), box(0, -width / 2, far, width / 2)),
        7 * random(),
        1,
        50 * random(),
        50 * random(),
      );
      const [neck, ...more] = findNecks(region, minWeb);
      assert.ok(neck && more.length === 0);
      let [whole, apart] = [0, 3];
      while (apart - whole > 0.005) {
        const middle = (whole + apart) / 2;
        if (togetherAt(region, middle, ...neck.samples)) whole = middle;
        else apart = middle;
      }
      assert.ok(Math.abs(whole - neck.width) < 0.02, `${whole} by erosion, ${neck.width} found`);
    }
  });

  for (const [font, text, width] of [
    ['pacifico', 'Rosemary', 70],
    ['lobster', 'Sage', 60],
    ['lobster', 'Thyme', 55],
  ] as const) {
    it(`${text} in ${font} parts at each bridge found, to 0.02 mm`, async () => {
      const region = await word(font, text, width, 0.01);
      const necks = findNecks(region, minWeb);
      const bridges = necks.filter(({ kind }) => kind === 'bridge');
      assert.ok(bridges.length >= 2, 'the word has bridges');
      for (const { width: found, samples } of bridges) {
        assert.ok(!togetherAt(region, found + 0.02, ...samples), `at ${found}`);
        // A narrower bridge may lie between the two samples, but then it was found as well.
        const narrower = bridges.filter((other) => other.width < found).map((other) => other.width);
        const widths = [found, ...narrower].filter((candidate) => togetherAt(region, candidate - 0.02, ...samples));
        assert.ok(widths.length > 0, `at ${found}`);
      }
    });

    it(`${text} in ${font} has no place narrower than min_web between two bodies that was not found`, async () => {
      const region = await word(font, text, width, 0.01);
      const necks = findNecks(region, minWeb);
      const bodies = partsOf(erode(region, minWeb / 2))
        .filter((body) => area(erode(body, -minWeb / 2)) > 1.5 * minWeb ** 2)
        .map(innermost);
      assert.ok(bodies.length >= 3);
      const step = 0.02;
      const levels = Array.from({ length: Math.round(minWeb / step) }, (_, i) =>
        partsOf(erode(region, (i * step) / 2)),
      );
      const lastTogether = (a: Point, b: Point): number => {
        const apart = levels.findIndex((parts) => !parts.some((part) => contains(part, a) && contains(part, b)));
        return ((apart < 0 ? levels.length : apart) - 1) * step;
      };
      for (const [i, a] of bodies.entries()) {
        for (const b of bodies.slice(0, i)) {
          const least = lastTogether(a, b);
          if (least < 0 || least > minWeb - 0.04) continue; // Separate letters, and what may be as wide as min_web.
          const found = necks.some((neck) => neck.width > least - 0.02 && neck.width < least + step + 0.02);
          assert.ok(found, `a neck of about ${least} between ${JSON.stringify([a, b])}`);
        }
      }
    });
  }
});

/** Every neck of the first list has one of the same kind and width (to 0.01 mm) in the second, and the other way round. */
function assertSameNecks(first: readonly Neck[], second: readonly Neck[], what: string): void {
  const told = `${what}: ${JSON.stringify(first.map(brief))} and ${JSON.stringify(second.map(brief))}`;
  assert.equal(first.length, second.length, told);
  for (const kind of ['bridge', 'loop', 'stroke'] as const) {
    const widths = [first, second].map((necks) => necks.filter((neck) => neck.kind === kind).map(({ width }) => width));
    assert.equal(widths[0]!.length, widths[1]!.length, told);
    for (const [i, width] of widths[0]!.entries()) assert.ok(Math.abs(width - widths[1]![i]!) <= 0.01, told);
  }
}

const brief = ({ kind, width }: Neck) => [kind, Number(width.toFixed(3))];

describe('The necks of words', () => {
  const fonts = ['pacifico', 'lobster', 'great-vibes', 'source-serif-4', 'roboto', 'parisienne'];

  it('are the same however the piece is turned, to 0.01 mm', async () => {
    for (const font of fonts) {
      const region = await word(font, 'Marjoram', 70);
      const upright = findNecks(region, minWeb);
      for (const angle of [0.3, Math.PI / 2, 2.2]) {
        assertSameNecks(upright, findNecks(transformed(region, angle), minWeb), `${font} turned by ${angle}`);
      }
    }
  });

  it('are the same however finely the curves are flattened, to 0.01 mm', async () => {
    for (const font of fonts) {
      const fine = findNecks(await word(font, 'Rosemary', 70, 0.001), minWeb);
      const coarse = findNecks(await word(font, 'Rosemary', 70, 0.004), minWeb);
      assertSameNecks(fine, coarse, font);
    }
  });

  it('are none in bold letters: serifs, corners and tapers are no necks', async () => {
    for (const [font, text] of [
      ['source-serif-4', 'ILTHEJ'],
      ['roboto', 'ILTHEFXVWYZ'],
      ['amiri', 'ILTJ'],
    ] as const) {
      // So large that no stroke of these letters is thinner than min_web.
      assert.deepEqual(findNecks(await word(font, text, 260), minWeb).map(brief), [], font);
    }
  });

  it('are few where a hairline script is thin all over', async () => {
    const necks = findNecks(await word('great-vibes', 'Marjoram', 50), minWeb);
    assert.ok(necks.length > 0 && necks.length <= 6, `${necks.length}`);
    assert.ok(necks.every(({ kind }) => kind === 'stroke'));
  });
});

describe('The neck analysis of random scribble', () => {
  /** Polygons that cross themselves and each other, some of them on a coarse grid, so that corners meet corners and edges. */
  function scribble(seed: number): Region {
    const random = seededRandom(seed);
    const grid = [0, 1, 0.25][seed % 3]!;
    const coordinate = () => (grid === 0 ? 20 * random() : grid * Math.round((20 * random()) / grid));
    const rings = Array.from({ length: 1 + Math.floor(5 * random()) }, (): Ring =>
      Array.from({ length: 3 + Math.floor(8 * random()) }, () => ({ x: coordinate(), y: coordinate() })),
    );
    return normalise(rings, seed % 2 === 0 ? 'nonzero' : 'evenodd');
  }

  it('never fails, and says of every neck what holds for necks', () => {
    for (let seed = 0; seed < 2000; seed += 1) {
      const region = scribble(seed);
      const whole = area(region);
      for (const { kind, width, ends, length, areas, samples } of findNecks(region, minWeb)) {
        const told = `seed ${seed}: ${kind} of ${width} at ${JSON.stringify(ends)}`;
        assert.ok(width >= 0 && width < minWeb && length >= 0, told);
        assert.ok(Math.abs(Math.hypot(ends[0].x - ends[1].x, ends[0].y - ends[1].y) - width) < 1e-4, told);
        assert.ok(areas[0] >= areas[1] && areas[1] >= 0 && areas[0] <= whole + 0.1, told);
        if (kind === 'bridge') assert.ok(areas[1] >= 2.2 && areas[0] + areas[1] <= whole + 0.1, told);
        for (const sample of samples) assert.ok(Number.isFinite(sample.x) && Number.isFinite(sample.y), told);
        const middle = { x: (ends[0].x + ends[1].x) / 2, y: (ends[0].y + ends[1].y) / 2 };
        if (width > 0.01) assert.ok(contains(region, middle), `${told}, across material`);
      }
    }
  });
});
