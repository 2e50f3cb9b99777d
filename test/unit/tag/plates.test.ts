import assert from 'node:assert/strict';
import fc from 'fast-check';
import { area, boundsOf } from '../../../src/geometry/measure.ts';
import type { Region } from '../../../src/geometry/types.ts';
import { assertNear, makeShape, report, specOf } from '../support/engine.ts';
import type { Made } from '../support/engine.ts';
import { isSimpleByJts, unionAreaByJts } from '../support/reference.ts';

/** Sizes are exact. Areas are, but for what the chords of round edges leave out: less than the tolerance along the edge. */
const exact = 1e-4;
const toleranceMm = 0.002;

function assertPlate({ bounds, area: found, region }: Made, width: number, height: number, expected: number): void {
  assertNear(bounds.maxX, width / 2, exact, 'maxX');
  assertNear(bounds.minX, -width / 2, exact, 'minX');
  assertNear(bounds.maxY, height / 2, exact, 'maxY');
  assertNear(bounds.minY, -height / 2, exact, 'minY');
  assertNear(found, expected, Math.max(exact, toleranceMm * 2 * (width + height)), 'area');
  assert.equal(region.length, 1);
  assertSound(region);
}

/** By jsts: one outline that does not touch itself, and encloses the area that the engine measures. */
function assertSound(region: Region): void {
  assert.ok(isSimpleByJts(region[0]!));
  assertNear(unionAreaByJts([region]), area(region), 1e-6, 'area by jsts');
}

async function problemOf(shape: string): Promise<string> {
  const { issues, source } = await report(specOf([`body: ${shape}`]));
  return issues.map(({ message, range }) => `${source.text.slice(range.start, range.end)}: ${message}`).join('\n');
}

/** The gamma function by Lanczos' approximation (g = 7, nine terms; Numerical Recipes, from memory), for x ≥ ½. */
function gamma(x: number): number {
  const terms = [
    0.99999999999980993, 676.5203681218851, -1259.1392167224028, 771.32342877765313, -176.61502916214059,
    12.507343278686905, -0.13857109526572012, 9.9843695780195716e-6, 1.5056327351493116e-7,
  ];
  const sum = terms.reduce((total, term, i) => total + (i === 0 ? term : term / (x - 1 + i)));
  const t = x + 6.5;
  return Math.sqrt(2 * Math.PI) * t ** (x - 0.5) * Math.exp(-t) * sum;
}

// Areas and bounds are exact mathematics unless a source is named.
describe('Plates that go by a name', () => {
  it('oval: 4ab·Γ(1 + 1/e)² / Γ(1 + 2/e), the area of a superellipse', async () => {
    assertNear(gamma(5), 24, 1e-9, 'Γ(5)');
    for (const exponent of [2, 2.5, 3, 4, 10]) {
      const expected = (60 * 40 * gamma(1 + 1 / exponent) ** 2) / gamma(1 + 2 / exponent);
      assertPlate(await makeShape(`{oval: {size: [60, 40], exponent: ${exponent}}}`), 60, 40, expected);
    }
    const usual = await makeShape('{oval: {size: [60, 40]}}');
    assert.equal(usual.area, (await makeShape('{oval: {size: [60, 40], exponent: 2.5}}')).area);
  });

  it('oval: every corner lies on the curve, and no chord strays from it', async () => {
    for (const exponent of [2, 2.5, 6, 10]) {
      const { region } = await makeShape(`{oval: {size: [90, 30], exponent: ${exponent}}}`);
      const ring = region[0]!;
      const level = (x: number, y: number): number => (Math.abs(x) / 45) ** exponent + (Math.abs(y) / 15) ** exponent;
      // How far a point lies from the curve, by the first order of its equation.
      const stray = (x: number, y: number): number => {
        const slope = Math.hypot(
          (exponent / 45) * (Math.abs(x) / 45) ** (exponent - 1),
          (exponent / 15) * (Math.abs(y) / 15) ** (exponent - 1),
        );
        return Math.abs(level(x, y) - 1) / slope;
      };
      ring.forEach((point, i) => {
        const next = ring[(i + 1) % ring.length]!;
        assert.ok(stray(point.x, point.y) < 1e-4, `corner ${i} of e = ${exponent}`);
        for (const t of [0.2, 0.5, 0.8]) {
          const [x, y] = [point.x + t * (next.x - point.x), point.y + t * (next.y - point.y)];
          assert.ok(stray(x, y) < toleranceMm, `chord ${i} of e = ${exponent} strays ${stray(x, y)}`);
        }
      });
      assert.ok(ring.length < 800, String(ring.length));
    }
  });

  it('heart: a square s² and two half discs, π·s²/4, as wide as s·(√½ + 1)', async () => {
    const s = 30;
    const width = s * (Math.SQRT1_2 + 1);
    const height = s * (1.5 * Math.SQRT1_2 + 0.5);
    assertPlate(await makeShape(`{heart: ${width}}`), width, height, s * s * (1 + Math.PI / 4));
    // Stretched, the area grows by the same factor.
    const stretched = await makeShape(`{heart: [${width}, ${2 * height}]}`);
    assertPlate(stretched, width, 2 * height, 2 * s * s * (1 + Math.PI / 4));
  });

  it('house: walls under a gable, with and without eaves', async () => {
    // 40 × 35 and a gable of 40 × 15 / 2.
    assertPlate(await makeShape('{house: {size: [40, 50], roof: 15}}'), 40, 50, 40 * 35 + 300);
    assertPlate(await makeShape('{house: {size: [40, 50], roof: 15, eaves: 4}}'), 40, 50, 32 * 35 + 300);
    assertPlate(await makeShape('{house: {size: [40, 60]}}'), 40, 60, 40 * 40 + 400);
  });

  it('label: a rectangle less two triangles, at whichever end', async () => {
    const { region } = await makeShape('{label: {size: [90, 40], clip: 12}}');
    assertPlate(await makeShape('{label: {size: [90, 40], clip: 12}}'), 90, 40, 3600 - 144);
    assert.ok(
      region[0]!.every(({ x, y }) => x > -44 || Math.abs(y) <= 8 + exact),
      'it is cut at the left',
    );
    for (const [end, beyond] of [
      ['right', (x: number, y: number) => x > 44 && Math.abs(y) > 8.01],
      ['top', (x: number, y: number) => y > 19 && Math.abs(x) > 33.01],
      ['bottom', (x: number, y: number) => y < -19 && Math.abs(x) > 33.01],
    ] as const) {
      const made = await makeShape(`{label: {size: [90, 40], clip: 12, end: ${end}}}`);
      assertPlate(made, 90, 40, 3600 - 144);
      assert.ok(!made.region[0]!.some(({ x, y }) => beyond(x, y)), end);
    }
    // Cut to a point: a pentagon.
    const pointed = await makeShape('{label: {size: [90, 40], clip: 20, end: right}}');
    assertPlate(pointed, 90, 40, 3600 - 400);
    assert.equal(pointed.region[0]!.length, 5);
  });

  it('ticket: a rectangle less four quarters of a disc', async () => {
    assertPlate(await makeShape('{ticket: {size: [80, 40], bite: 6}}'), 80, 40, 3200 - Math.PI * 36);
    assertPlate(await makeShape('{ticket: {size: [80, 40]}}'), 80, 40, 3200 - Math.PI * 64);
  });

  it('scallops on a rectangle: half an ellipse a lobe along the sides, three quarters at the corners', async () => {
    const expected = (w: number, h: number, columns: number, rows: number): number => {
      const [dx, dy] = [w / columns, h / rows];
      const inner = (w - dx) * (h - dy);
      const lobes = (2 * (columns - 2) + 2 * (rows - 2)) / 2 + 4 * 0.75;
      return inner + (lobes * Math.PI * dx * dy) / 4;
    };
    assertPlate(await makeShape('{scallops: {size: [80, 48], lobe: 8}}'), 80, 48, expected(80, 48, 10, 6));
    assertPlate(await makeShape('{scallops: {size: [85, 50], lobe: 8}}'), 85, 50, expected(85, 50, 11, 6));
    assertPlate(await makeShape('{scallops: {size: [20, 20], lobe: 10}}'), 20, 20, expected(20, 20, 2, 2));
  });

  it('scallops round a disc: a regular polygon with half a disc on each side', async () => {
    for (const lobes of [5, 12, 17, 40]) {
      const side = 60 / (1 + 1 / Math.tan(Math.PI / lobes));
      const polygon = (lobes * side * side) / (4 * Math.tan(Math.PI / lobes));
      const made = await makeShape(`{scallops: {across: 60, lobes: ${lobes}}}`);
      assertNear(made.area, polygon + (lobes * Math.PI * side * side) / 8, 0.4, `area of ${lobes}`);
      assertNear(made.bounds.maxY, 30, exact, 'a lobe at the top');
      if (lobes % 4 === 0) assertNear(made.width, 60, exact, 'width');
      assertSound(made.region);
      assert.ok(made.region[0]!.every(({ x, y }) => Math.hypot(x, y) <= 30 + exact));
    }
  });

  it('arrow with a forked tail: a notched one whose points spread as wide as the head', async () => {
    // Tip 20 long under a head of 40; shaft 26 wide, from −51 to 40; two prongs of base 13 and height 9.
    const forked = await makeShape('{arrow: {length: 120, width: 40, shaft: 26, tip: 90, tail: forked, notch: 9}}');
    assertPlate(forked, 120, 40, 400 + 26 * 91 + 2 * ((13 * 9) / 2));
    const tail = forked.region[0]!.filter(({ x }) => x < -59);
    assert.deepEqual(
      tail.map(({ y }) => Math.abs(y)),
      [20, 20],
    );
  });

  it('are sound at any size, whatever their figures', async () => {
    const mm = fc.double({ min: 8, max: 120, noNaN: true });
    const share = fc.double({ min: 0.02, max: 0.98, noNaN: true });
    const ends = fc.constantFrom('left', 'right', 'top', 'bottom');
    await fc.assert(
      fc.asyncProperty(mm, mm, share, share, ends, async (w, h, one, other, end) => {
        const least = Math.min(w, h);
        for (const shape of [
          `{oval: {size: [${w}, ${h}], exponent: ${2 + 8 * one}}}`,
          `{heart: [${w}, ${h}]}`,
          `{house: {size: [${w}, ${h}], roof: ${h * one}, eaves: ${(w / 2) * other}}}`,
          `{label: {size: [${w}, ${h}], clip: ${(least / 2) * one}, end: ${end}}}`,
          `{ticket: {size: [${w}, ${h}], bite: ${(least / 2) * one}}}`,
          `{scallops: {size: [${w}, ${h}], lobe: ${least / (2 + 6 * one)}}}`,
        ]) {
          const { region } = await makeShape(shape);
          const box = boundsOf(region)!;
          assertNear(box.maxX - box.minX, w, exact, `width of ${shape}`);
          assertNear(box.maxY - box.minY, h, exact, `height of ${shape}`);
          assert.equal(region.length, 1);
          assertSound(region);
        }
      }),
      { numRuns: 25, seed: 4 },
    );
  });

  for (const [shape, problem] of [
    ['{house: {size: [40, 50], roof: 50}}', '50: “roof” must be less than the height, 50 mm.'],
    ['{house: {size: [40, 50], eaves: 20}}', '20: “eaves” must be less than half the width, 20 mm.'],
    ['{label: {size: [90, 40], clip: 21}}', '21: “clip” can be at most half the end, 20 mm.'],
    ['{label: {size: [15, 40], clip: 18}}', '18: “clip” can be at most the length, 15 mm.'],
    ['{ticket: {size: [80, 40], bite: 20}}', '20: “bite” must be less than half the shorter side, 20 mm.'],
    ['{scallops: {size: [80, 40], lobe: 30}}', '30: Not even two lobes of this width fit along the shorter side.'],
    ['{scallops: {size: [800, 400], lobe: 1}}', '1: More than 200 lobes would fit along a side.'],
    ['{scallops: {size: [80, 40], lobes: 9}}', 'Scallops need either size and lobe, or across and lobes.'],
    ['{scallops: {across: 80}}', 'Scallops need either size and lobe, or across and lobes.'],
    ['{scallops: {across: 80, lobes: 2}}', '2: “lobes” must be at least 5.'],
    ['{oval: {exponent: 3}}', '“oval” needs “size”.'],
    ['{heart: -3}', '-3: “heart” must be more than 0.'],
  ] as const) {
    it(`say what is wrong with ${shape}`, async () => {
      const found = await problemOf(shape);
      assert.ok(found.split('\n').length === 1 && found.includes(problem), found);
    });
  }
});
