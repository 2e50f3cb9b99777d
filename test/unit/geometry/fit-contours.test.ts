import assert from 'node:assert/strict';
import fc from 'fast-check';
import { contourLength, flattenContour, radiusOf, segmentLength, startsOf } from '../../../src/geometry/contour.ts';
import type { Contour } from '../../../src/geometry/contour.ts';
import { normalise, offset } from '../../../src/geometry/clipper.ts';
import { flatten } from '../../../src/geometry/flatten.ts';
import { fitContours } from '../../../src/geometry/fit-contours.ts';
import { area, ringArea } from '../../../src/geometry/measure.ts';
import type { Point, Region } from '../../../src/geometry/types.ts';
import { layoutText } from '../../../src/text/text-layout.ts';
import { bundledFace, packagedFace } from '../../fonts/faces.ts';
import { hausdorff, walked } from '../support/contours.ts';
import { assertNear } from '../support/engine.ts';
import { box, disc, ellipse, erode, roundedBox, seededRandom, star, transformed, unite } from '../support/shapes.ts';
import { wordIn } from '../support/words.ts';

/** What the cut files promise. */
const toleranceMm = 0.01;

const nodesOf = (contours: readonly Contour[]): number =>
  contours.reduce((sum, { segments }) => sum + segments.length, 0);

const kindsOf = (contours: readonly Contour[], kind: string): number =>
  contours.flatMap(({ segments }) => segments).filter(({ type }) => type === kind).length;

const apart = (a: Point, b: Point): number => Math.hypot(a.x - b.x, a.y - b.y);

/** A rectangle about the origin with round corners, its points on them. */
function plate(width: number, height: number, radius: number): Point[] {
  const steps = 24;
  const corner = (x: number, y: number, quarter: number): Point[] =>
    Array.from({ length: steps + 1 }, (_, i) => {
      const angle = ((quarter + i / steps) * Math.PI) / 2;
      return { x: x + radius * Math.cos(angle), y: y + radius * Math.sin(angle) };
    });
  const [x, y] = [width / 2 - radius, height / 2 - radius];
  return [...corner(x, y, 0), ...corner(-x, y, 1), ...corner(-x, -y, 2), ...corner(x, -y, 3)];
}

/** Fits a region and holds the result to everything that is true of any. */
function fitted(region: Region, what: string): Contour[] {
  const contours = fitContours(region);
  assert.equal(contours.length, region.length, what);
  contours.forEach((contour, i) => {
    const ring = region[i]!;
    const off = hausdorff(walked(contour), ring);
    assert.ok(off <= toleranceMm, `${what}: ${off.toFixed(4)} mm off`);
    assert.ok(contour.closed);
    assert.ok(apart(contour.start, contour.segments.at(-1)!.to) < 1e-9, `${what}: not closed`);
    assert.equal(Math.sign(ringArea(walked(contour))), Math.sign(ringArea(ring)), `${what}: turned round`);
    const starts = startsOf(contour);
    contour.segments.forEach((segment, k) => {
      const length = segmentLength(starts[k]!, segment);
      assert.ok(length > 1e-3, `${what}: a segment of ${length} mm`);
      if (segment.type !== 'arc') return;
      assertNear(apart(segment.to, segment.centre), radiusOf(starts[k]!, segment), 2e-3, `${what}: radius at the end`);
    });
  });
  return contours;
}

describe('Curves in polygons', () => {
  it('are the four arcs and four lines of a rounded rectangle, with its radius', () => {
    const [contour] = fitted([plate(80, 40, 6)], 'plate');
    assert.equal(kindsOf([contour!], 'line'), 4);
    assert.equal(kindsOf([contour!], 'arc'), 4);
    const starts = startsOf(contour!);
    contour!.segments.forEach((segment, i) => {
      if (segment.type === 'arc') assertNear(radiusOf(starts[i]!, segment), 6, 2e-3, 'radius');
    });
    // Exact: perimeter 2(a + b) − (8 − 2π)r, area ab − (4 − π)r².
    assertNear(contourLength(contour!), 240 - (8 - 2 * Math.PI) * 6, 0.01, 'length');
    assertNear(ringArea(flattenContour(contour!, 1e-4)), 3200 - (4 - Math.PI) * 36, 0.05, 'area');
  });

  it('are circles: four arcs of the true radius, whichever way round', () => {
    for (const radius of [0.4, 1.4, 3, 20, 60]) {
      for (const ring of [disc(3, -2, radius), [...disc(3, -2, radius)].reverse()]) {
        const [contour] = fitted([ring], `disc of ${radius}`);
        assert.deepEqual(
          contour!.segments.map(({ type }) => type),
          ['arc', 'arc', 'arc', 'arc'],
        );
        assertNear(radiusOf(contour!.start, contour!.segments[0] as never), radius, 1e-3, 'radius');
      }
    }
  });

  it('keep corners: straight outlines come back point by point', () => {
    for (const ring of [box(0, 0, 30, 20), star(7, 8, 20), star(24, 15, 17)]) {
      const [contour] = fitted([ring], 'straight');
      assert.equal(kindsOf([contour!], 'line'), ring.length);
      for (const corner of ring)
        assert.ok(
          contour!.segments.some(({ to }) => apart(to, corner) < 1e-6),
          'a corner was lost',
        );
    }
  });

  it('keep corners between curves, where two discs meet', () => {
    // Exact: discs of radius 10 whose centres are 16 apart meet at (±0, ±6).
    const contours = fitted(unite(disc(-8, 0, 10), disc(8, 0, 10)), 'two discs');
    for (const y of [6, -6])
      assert.ok(
        contours[0]!.segments.some(({ to }) => apart(to, { x: 0, y }) < 0.05),
        'the notch is there',
      );
    assert.equal(kindsOf(contours, 'cubic'), 0);
    assert.ok(nodesOf(contours) <= 10, String(nodesOf(contours)));
  });

  it('are few for an ellipse, and lie on it', () => {
    const contours = fitted([ellipse(0, 0, 30, 12)], 'ellipse');
    assert.ok(nodesOf(contours) <= 16, String(nodesOf(contours)));
    for (const { x, y } of walked(contours[0]!)) assertNear(Math.hypot(x / 30, y / 12), 1, 1e-3, 'on the ellipse');
  });

  for (const slug of ['pacifico', 'great-vibes', 'roboto', 'source-serif-4', 'lobster']) {
    it(`need at most 1.5 times the nodes that ${slug} draws a letter with`, async () => {
      const face = await packagedFace(slug);
      for (const letter of 'BKQSagoxz&8') {
        const { curves } = layoutText(face, { text: letter, align: 'left' });
        const own = curves.filter(({ type }) => type !== 'Z' && type !== 'M').length;
        const nodes = nodesOf(fitted(wordIn(face, letter, 18, 0.002), letter));
        assert.ok(nodes <= 1.5 * own, `${letter}: ${nodes} nodes for ${own}`);
      }
    }).timeout(180_000);
  }

  it('need at most a tenth of the points that Clipper2 needs for lettering grown by half a kerf, or set on a backing', async () => {
    for (const [family, text] of [
      ['Pacifico', 'Angelica'],
      ['Great Vibes', 'Chives'],
      ['Alfa Slab One', 'Sage'],
    ] as const) {
      const name = wordIn(await bundledFace(family), text, 80, 0.002);
      for (const [what, grown, polygon] of [
        ['kerf', offset(name, 0.08), erode(name, -0.08)],
        ['backing', offset(offset(name, 6), 0.08), erode(erode(name, -6), -0.08)],
      ] as const) {
        const contours = fitted(grown, `${text} ${what}`);
        const points = polygon.flat().length;
        assert.ok(10 * nodesOf(contours) <= points, `${text} ${what}: ${nodesOf(contours)} nodes of ${points} points`);
        assertNear(area(contours.map((each) => flattenContour(each, 2e-4))), area(grown), 5e-4 * area(grown), 'area');
      }
    }
  }).timeout(180_000);

  it('hold for any heap of discs, plates and stars, at any angle and size', () => {
    const shape = fc.record({
      kind: fc.constantFrom('disc', 'plate', 'star', 'ellipse'),
      x: fc.integer({ min: -20, max: 20 }),
      y: fc.integer({ min: -20, max: 20 }),
      size: fc.integer({ min: 2, max: 15 }),
    });
    const heap = fc.tuple(
      fc.array(shape, { minLength: 1, maxLength: 5 }),
      fc.integer({ min: 0, max: 359 }),
      fc.constantFrom(0, 0.08, 1, -0.3),
    );
    fc.assert(
      fc.property(heap, ([shapes, degrees, grow]) => {
        const rings = shapes.flatMap(({ kind, x, y, size }): Region => {
          if (kind === 'disc') return [disc(x, y, size)];
          if (kind === 'ellipse') return [ellipse(x, y, size, size / 2)];
          if (kind === 'star') return transformed([star(5, size / 2, size)], 0, 1, x, y);
          return roundedBox(x, y, x + 2 * size, y + size, size / 4);
        });
        const region = offset(normalise(transformed(rings, (degrees * Math.PI) / 180)), grow);
        fitted(region, 'heap');
      }),
      { numRuns: 30, seed: 1990 },
    );
  }).timeout(180_000);

  it('hold for wild closed curves', () => {
    const random = seededRandom(77);
    for (let n = 0; n < 16; n++) {
      const at = (): Point => ({ x: 50 * random(), y: 50 * random() });
      const count = 2 + Math.floor(4 * random());
      const start = at();
      const curves = Array.from({ length: count }, (_, i) => {
        const [a, b, to] = [at(), at(), i + 1 === count ? start : at()];
        return { type: 'C' as const, x1: a.x, y1: a.y, x2: b.x, y2: b.y, x: to.x, y: to.y };
      });
      fitted(normalise(flatten([{ type: 'M', ...start }, ...curves, { type: 'Z' }])), `curve ${n}`);
    }
  }).timeout(180_000);

  it('are not made of nothing', () => {
    assert.deepEqual(fitContours([]), []);
    assert.deepEqual(
      fitContours([
        [
          { x: 0, y: 0 },
          { x: 1e-5, y: 0 },
          { x: 0, y: 1e-5 },
        ],
      ]),
      [],
    );
  });
});
