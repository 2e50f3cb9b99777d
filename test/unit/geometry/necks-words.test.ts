import assert from 'node:assert/strict';
import { normalise } from '../../../src/geometry/clipper.ts';
import { area, contains } from '../../../src/geometry/measure.ts';
import { findNecks } from '../../../src/geometry/necks.ts';
import type { Neck } from '../../../src/geometry/necks.ts';
import { partsOf } from '../../../src/geometry/parts.ts';
import type { Region, Ring } from '../../../src/geometry/types.ts';
import { Eroded } from '../support/eroded.ts';
import { compareByErosion } from '../support/necks-by-erosion.ts';
import { box, disc, seededRandom, transformed, unite } from '../support/shapes.ts';
import { cases } from '../support/sweep.ts';
import { word } from '../support/words.ts';

const minWeb = 1.5;

describe('Necks against erosion by Clipper2 (a piece falls apart where the disc no longer passes)', () => {
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
        if (new Eroded(region, middle).together(...neck.samples)) whole = middle;
        else apart = middle;
      }
      assert.ok(Math.abs(whole - neck.width) < 0.02, `${whole} by erosion, ${neck.width} found`);
    }
  });

  it('words whose letters lap over each other part at the necks found, and nowhere else', async () => {
    for (const part of partsOf(await word('lobster', 'Thyme', 55, 0.01))) {
      assert.deepEqual(compareByErosion(part, findNecks(part, minWeb), minWeb).disagreements, []);
    }
  });

  it('a neck 0.03 mm wider or narrower than found would be noticed, and one that was not found', async () => {
    const [part] = partsOf(await word('lobster', 'Sage', 60, 0.01));
    const necks = findNecks(part!, minWeb);
    const isDenied = (changed: readonly Neck[]) => compareByErosion(part!, changed, minWeb).disagreements.length > 0;
    assert.ok(!isDenied(necks) && necks.length >= 6);
    for (const neck of necks) {
      const others = necks.filter((other) => other !== neck);
      assert.ok(isDenied([...others, { ...neck, width: neck.width + 0.03 }]), `${neck.width}, wider`);
      assert.ok(isDenied([...others, { ...neck, width: neck.width - 0.03 }]), `${neck.width}, narrower`);
      // One of about the same width could stand in for it.
      if (others.some(({ width }) => Math.abs(width - neck.width) < 0.03)) continue;
      assert.ok(isDenied(others), `${neck.width}, left out`);
    }
  });
});

/** Every neck of the first list has one of the same kind and width (to 0.01 mm) in the second, and the other way round. */
function assertSameNecks(first: readonly Neck[], second: readonly Neck[], what: string): void {
  const description = `${what}: ${JSON.stringify(first.map(brief))} and ${JSON.stringify(second.map(brief))}`;
  assert.equal(first.length, second.length, description);
  for (const kind of ['bridge', 'loop', 'stroke'] as const) {
    const widths = [first, second].map((necks) => necks.filter((neck) => neck.kind === kind).map(({ width }) => width));
    assert.equal(widths[0]!.length, widths[1]!.length, description);
    for (const [i, width] of widths[0]!.entries()) assert.ok(Math.abs(width - widths[1]![i]!) <= 0.01, description);
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
    for (let seed = 0; seed < cases(600, 2000); seed += 1) {
      const region = scribble(seed);
      const whole = area(region);
      for (const { kind, width, ends, length, areas, samples } of findNecks(region, minWeb)) {
        const description = `seed ${seed}: ${kind} of ${width} at ${JSON.stringify(ends)}`;
        assert.ok(width >= 0 && width < minWeb && length >= 0, description);
        assert.ok(Math.abs(Math.hypot(ends[0].x - ends[1].x, ends[0].y - ends[1].y) - width) < 1e-4, description);
        assert.ok(areas[0] >= areas[1] && areas[1] >= 0 && areas[0] <= whole + 0.1, description);
        if (kind === 'bridge') assert.ok(areas[1] >= 2.2 && areas[0] + areas[1] <= whole + 0.1, description);
        for (const sample of samples) assert.ok(Number.isFinite(sample.x) && Number.isFinite(sample.y), description);
        const middle = { x: (ends[0].x + ends[1].x) / 2, y: (ends[0].y + ends[1].y) / 2 };
        if (width > 0.01) assert.ok(contains(region, middle), `${description}, across material`);
      }
    }
  });
});
