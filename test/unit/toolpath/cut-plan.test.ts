import assert from 'node:assert/strict';
import InteriorPointArea from 'jsts/org/locationtech/jts/algorithm/InteriorPointArea.js';
import Coordinate from 'jsts/org/locationtech/jts/geom/Coordinate.js';
import type Geometry from 'jsts/org/locationtech/jts/geom/Geometry.js';
import GeometryFactory from 'jsts/org/locationtech/jts/geom/GeometryFactory.js';
import BufferOp from 'jsts/org/locationtech/jts/operation/buffer/BufferOp.js';
import OverlayOp from 'jsts/org/locationtech/jts/operation/overlay/OverlayOp.js';
import { memoizeRecent } from '../../../src/core/recent.ts';
import { contourBounds, contourLength, directionsOf, endOf, startsOf } from '../../../src/geometry/contour.ts';
import type { Contour } from '../../../src/geometry/contour.ts';
import { area, boundsOf, contains, ringArea } from '../../../src/geometry/measure.ts';
import type { Bounds, Point, Region, Ring } from '../../../src/geometry/types.ts';
import { planCuts } from '../../../src/toolpath/cut-plan.ts';
import type { CutPlan } from '../../../src/toolpath/cut-plan.ts';
import type { Tag } from '../../../src/tag/tag.ts';
import { words } from '../../fonts/faces.ts';
import { hausdorff, walked } from '../support/contours.ts';
import { assertNear, make, makeUnchecked, specOf } from '../support/engine.ts';
import { samples } from '../support/samples.ts';
import { erode } from '../support/shapes.ts';
// from '../support/samples.ts';

const factory = new GeometryFactory();

const planOf = memoizeRecent(100, async (text): Promise<CutPlan> => {
  const { report } = await makeUnchecked(text);
  return planCuts(report.tag!)!;
});

const contoursOf = (plan: CutPlan, ...operations: string[]): Contour[] =>
  plan.steps
    .filter(({ operation }) => operations.includes(operation))
    .flatMap(({ paths }) => paths.flatMap(({ contours }) => contours));

const cutsOf = (plan: CutPlan): Contour[] => contoursOf(plan, 'cut-inner', 'cut-outer');

const apart = (a: Point, b: Point): number => Math.hypot(a.x - b.x, a.y - b.y);

/** The way of the head between cuts, from the corner where it begins. */
function travel(contours: readonly Contour[]): number {
  let at: Point = { x: 0, y: 0 };
  return contours.reduce((sum, contour) => {
    const length = apart(at, contour.start);
    at = endOf(contour);
    return sum + length;
  }, 0);
}

/** The width of the beam along outlines and in openings. */
interface Beam {
  readonly outer: number;
  readonly inner: number;
}

/**
 * What a beam leaves of a sheet when its middle runs along the cuts, by jsts: the sheet less the swept path, without what lies
 * outside of every cut and without what drops out of openings.
 */
function leftBy(plan: CutPlan, { outer, inner }: Beam): Region {
  const cuts = [...contoursOf(plan, 'cut-inner'), ...contoursOf(plan, 'cut-outer')];
  const rings = cuts.map(walked);
  const swept = rings
    .map((ring) => BufferOp.bufferOp(line(ring), (ringArea(ring) > 0 ? outer : inner) / 2, 32) as Geometry)
    .reduce((sum, each) => OverlayOp.union(sum, each) as Geometry);
  const { minX, minY, maxX, maxY } = boundsOf(rings)!;
  const margin = 10;
  const sheet = polygon([
    { x: minX - margin, y: minY - margin },
    { x: maxX + margin, y: minY - margin },
    { x: maxX + margin, y: maxY + margin },
    { x: minX - margin, y: maxY + margin },
  ]);
  const rest = OverlayOp.difference(sheet, swept) as Geometry;
  const pieces: Region[] = [];
  for (let i = 0; i < rest.getNumGeometries(); i++) {
    const part = rest.getGeometryN(i) as Polygon;
    const { x, y } = new InteriorPointArea(part).getInteriorPoint() as Point;
    // Material is where an odd number of cuts goes round.
    if (rings.filter((ring) => contains([ring], { x, y })).length % 2 === 0) continue;
    const holes = Array.from({ length: part.getNumInteriorRing() }, (_, n) => part.getInteriorRingN(n));
    pieces.push([part.getExteriorRing(), ...holes].map((ring, n) => turnedTo(pointsOf(ring), n === 0)));
  }
  return pieces.flat();
}

interface Polygon extends Geometry {
  getExteriorRing(): Drawn;
  getNumInteriorRing(): number;
  getInteriorRingN(n: number): Drawn;
}

interface Drawn {
  getCoordinates(): Point[];
}

function line(ring: Ring): Geometry {
  return factory.createLineString([...ring, ring[0]!].map(({ x, y }) => new Coordinate(x, y))) as Geometry;
}

function polygon(ring: Ring): Geometry {
  return factory.createPolygon(
    factory.createLinearRing([...ring, ring[0]!].map(({ x, y }) => new Coordinate(x, y))),
  ) as Geometry;
}

function pointsOf(ring: Drawn): Ring {
  return ring
    .getCoordinates()
    .slice(0, -1)
    .map(({ x, y }) => ({ x, y }));
}

function turnedTo(ring: Ring, outer: boolean): Ring {
  return ringArea(ring) > 0 === outer ? ring : [...ring].reverse();
}

/** Both regions' outlines, moved to begin at their lower left corners, each with the one of the other that it lies on. */
function assertSame(left: Region, wanted: Region, tolerance: number): void {
  const moved = (region: Region) => {
    const { minX, minY } = boundsOf(region)!;
    return region.map((ring) => {
      const placed = ring.map(({ x, y }) => ({ x: x - minX, y: y - minY }));
      return { ring: placed, bounds: boundsOf([placed])! };
    });
  };
  const [found, others] = [moved(left), moved(wanted)];
  assert.equal(found.length, others.length);
  for (const { ring, bounds } of found) {
    const away = (box: Bounds) =>
      Math.max(...(['minX', 'minY', 'maxX', 'maxY'] as const).map((side) => Math.abs(box[side] - bounds[side])));
    const nearest = others.reduce((best, each) => (away(each.bounds) < away(best.bounds) ? each : best));
    others.splice(others.indexOf(nearest), 1);
    const off = hausdorff(ring, nearest.ring);
    assert.ok(off <= tolerance, `off by ${off.toFixed(4)} mm`);
  }
}

describe('The cut plan', () => {
  for (const { name, text } of samples) {
    it(`of ${name} leaves the finished pieces when a disc of one kerf sweeps along it, by jsts`, async () => {
      // The test of the kerf is without one until it is known.
      const { report } = await makeUnchecked(
        name.startsWith('kerf-test') ? text.replace('thickness: 3 mm', '$&, kerf: 0.19 mm') : text,
      );
      const tag = report.tag!;
      const beam = { outer: tag.stock.kerf, inner: tag.stock.kerf };
      for (const piece of tag.pieces) assertLeaves({ ...tag, pieces: [piece] }, beam);
    }).timeout(180_000);
  }

  it('leaves the finished piece also when the beam is wider outside than in openings', async () => {
    const shapes = [
      'plate: {rectangle: [70, 34], radius: 5}',
      'name: {text: Bean, font: Nunito, weight: 800, width: 50}',
    ];
    const { report } = await makeUnchecked(
      specOf(shapes, 'body: [plate], cut: [name]', ['stock: {kerf: {outer: 0.24 mm, inner: 0.1 mm}}']),
    );
    assertLeaves(report.tag!, { outer: 0.24, inner: 0.1 });
  });

  /** Of a tag of one piece. */
  function assertLeaves(tag: Tag, beam: Beam): void {
    const { region, cutLine } = tag.pieces[0]!;
    const left = leftBy(planCuts(tag)!, beam);
    // A round beam leaves a fillet in every inward corner, so its part is the finished one closed by the disc (Clipper2).
    const radius = Math.max(beam.outer, beam.inner) / 2;
    const expected = cutLine ? region : erode(erode(region, -radius), radius);
    assertSame(left, expected, 0.01);
    assertNear(area(left), area(expected), 5e-4 * area(region), 'area');
  }

  it('allows for another kerf in openings than outside', async () => {
    const shapes = ['plate: {rectangle: [20, 40]}', 'window: {rectangle: [8, 10]}'];
    const spec = specOf(shapes, 'body: [plate], cut: [window]', ['stock: {kerf: {outer: 0.2 mm, inner: 0.1 mm}}']);
    const plan = await planOf(spec);
    const outer = contourBounds(contoursOf(plan, 'cut-outer'))!;
    const inner = contourBounds(contoursOf(plan, 'cut-inner'))!;
    assertNear(outer.maxX - outer.minX, 20.2, 1e-3);
    assertNear(outer.maxY - outer.minY, 40.2, 1e-3);
    assertNear(inner.maxX - inner.minX, 7.9, 1e-3);
    assertNear(inner.maxY - inner.minY, 9.9, 1e-3);
  });

  it('draws engraved areas smaller by half an engraved line, where its width is given', async () => {
    const shapes = ['plate: {rectangle: [40, 40]}', 'dot: {ellipse: 10}'];
    const plan = await planOf(specOf(shapes, 'body: [plate], engrave: [dot]', ['stock: {kerf: {engrave: 0.3 mm}}']));
    const dot = contourBounds(contoursOf(plan, 'engrave'))!;
    assertNear(dot.maxX - dot.minX, 9.7, 5e-3);
  });

  it('unites engraved areas that overlap, so that none leaves the other out', async () => {
    const shapes = ['plate: {rectangle: [40, 40]}', 'a: {ellipse: 10}', 'b: {ellipse: 10, nudge: {right: 4}}'];
    const plan = await planOf(specOf(shapes, 'body: [plate], engrave: [a, b]'));
    assert.equal(contoursOf(plan, 'engrave').length, 1);
  });

  it('scores no outline twice, whether it is named twice, of two shapes, or a hole of one of them', async () => {
    const shapes = [
      'plate: {rectangle: [60, 40]}',
      'a: {rectangle: [20, 10], radius: 2}',
      'same: {rectangle: [20, 10], radius: 2}',
      'frame: {difference: [{rectangle: [40, 30]}, a]}',
      'near: {rectangle: [20, 10], radius: 2, nudge: {right: 0.1}}',
      'triangle: {polygon: {points: [[0, 0], [20, 0], [0, 10]]}}',
      'mirrored: {polygon: {points: [[0, 0], [20, 0], [20, 10]]}}',
    ];
    const scored = async (list: string) =>
      contoursOf(await planOf(specOf(shapes, `body: [plate], score: [${list}]`)), 'score').length;
    assert.equal(await scored('a, a'), 1);
    assert.equal(await scored('a, same'), 1);
    assert.equal(await scored('frame, a'), 2);
    assert.equal(await scored('a, near'), 2);
    assert.equal(await scored('triangle, mirrored'), 2);
  });

  describe('cut on the line', () => {
    // Exact: a drawn 20 × 40 with an opening of 8 × 10 comes out 20−k × 40−k with an opening of 8+k × 10+k.
    const shapes = ['plate: {rectangle: [20, 40]}', 'window: {rectangle: [8, 10]}'];
    const head = ['stock: {kerf: 0.2 mm}', 'output: {compensate: false}'];

    it('runs on the drawn outline and leaves less', async () => {
      const { report, region, width, height } = await make(specOf(shapes, 'body: [plate], cut: [window]', head));
      assertNear(width, 19.8, 1e-3);
      assertNear(height, 39.8, 1e-3);
      const hole = boundsOf(region.filter((ring) => ringArea(ring) < 0))!;
      assertNear(hole.maxX - hole.minX, 8.2, 1e-3);
      const plan = planCuts(report.tag!)!;
      const outer = contourBounds(contoursOf(plan, 'cut-outer'))!;
      assertNear(outer.maxX - outer.minX, 20, 1e-3);
      assertSame(leftBy(plan, { outer: 0.2, inner: 0.2 }), region, 0.01);
    });

    it('is judged by what is left', async () => {
      const shape = ['plate: {rectangle: [40, 20]}', 'window: {rectangle: [36.9, 8], nudge: {right: 0}}'];
      const bars = (more: readonly string[]) =>
        make(specOf(shape, 'body: [plate], cut: [window]', ['stock: {kerf: 0.2 mm, min_web: 1.5}', ...more]));
      const codes = async (more: readonly string[]) => (await bars(more)).issues.map(({ code }) => code);
      assert.deepEqual(await codes([]), [], 'walls of 1.55 mm hold');
      assert.ok(
        (await codes(['output: {compensate: false}'])).includes('thin-stroke') ||
          (await codes(['output: {compensate: false}'])).includes('weak-bridge'),
        'walls of 1.35 mm do not',
      );
    });

    it('lets more through the hole', async () => {
      const spec = (more: readonly string[]) =>
        make(
          specOf(['plate: {rectangle: [40, 20]}'], 'body: [plate], hanger: {hole: {at: left, diameter: 3}}', [
            'stock: {kerf: 0.2 mm}',
            ...more,
          ]),
        );
      const { pieces } = await spec(head.slice(1));
      assertNear(pieces[0]!.hangers[0]!.openingSize, 3.2, 1e-9);
      assertNear(area(pieces[0]!.hangers[0]!.opening), Math.PI * 1.6 ** 2, 0.02);
      assert.equal((await spec([])).pieces[0]!.hangers[0]!.openingSize, 3);
    });

    it('says so when nothing is left', async () => {
      const { issues } = await make(
        specOf(['plate: {rectangle: [0.1, 20]}', 'big: {rectangle: [30, 30]}'], 'body: [big]', head) +
          '  sliver: {body: [plate]}\n',
      );
      assert.ok(issues.some(({ code, message }) => code === 'empty-shape' && message.includes('sliver')));
    });
  });

  describe('in its order', () => {
    const names = words.slice(0, 40);
    const sheet = specOf(
      names.map(
        (name, i) =>
          `n${i}: {text: ${JSON.stringify(name)}, font: Nunito, weight: 800, height: 9, nudge: {right: ${(i % 5) * 60}, down: ${Math.floor(i / 5) * 16}}}`,
      ),
      `body: [${names.map((_, i) => `n${i}`).join(', ')}], parts: many`,
      ['stock: {kerf: 0.16 mm}'],
    );

    it('travels at least 30 % less than in the order of the file, on a sheet of 40 names', async () => {
      const { report } = await makeUnchecked(sheet);
      const cuts = cutsOf(await planOf(sheet));
      // The order in which the outlines come, inner ones first, each begun at its first point.
      const { region } = report.tag!.pieces[0]!;
      const { minX, minY } = boundsOf(region)!;
      const filed = [-1, 1].flatMap((sign) => region.filter((ring) => Math.sign(ringArea(ring)) === sign));
      const firsts = filed.map((ring) => ({ x: ring[0]!.x - minX, y: ring[0]!.y - minY }));
      const inFileOrder = firsts.reduce((sum, at, i) => sum + apart(i === 0 ? { x: 0, y: 0 } : firsts[i - 1]!, at), 0);
      assert.ok(cuts.length > 300, String(cuts.length));
      const ours = travel(cuts);
      assert.ok(ours <= 0.7 * inFileOrder, `${ours.toFixed(0)} mm instead of ${inFileOrder.toFixed(0)}`);
    }).timeout(180_000);

    it('cuts what lies inside before what frees it, islands in holes included', async () => {
      const shapes = [
        'plate: {rectangle: [60, 40]}',
        'hole: {ellipse: 30}',
        'isle: {ellipse: 20}',
        'eye: {ellipse: 8}',
        'ring: {difference: [plate, hole]}',
        'whole: {union: [ring, {difference: [isle, eye]}]}',
      ];
      const nested = specOf(shapes, 'body: [whole], parts: many');
      const plans = await Promise.all([nested, ...samples.map(({ text }) => text)].map(planOf));
      for (const plan of [...plans, await planOf(sheet)]) {
        const cuts = cutsOf(plan).map(walked);
        cuts.forEach((ring, i) => {
          for (const later of cuts.slice(i + 1))
            assert.ok(!contains([ring], later[0]!), 'something inside is cut after what frees it');
        });
      }
      const sizes = cutsOf(await planOf(nested)).map((contour) => Math.round(contourLength(contour)));
      assert.deepEqual(
        sizes,
        [8 * Math.PI, 20 * Math.PI, 30 * Math.PI, 200].map((length) => Math.round(length)),
      );
    }).timeout(180_000);

    it('begins away from corners, where one can', async () => {
      for (const { text } of samples) {
        for (const contour of cutsOf(await planOf(text))) {
          const starts = startsOf(contour);
          const [first, last] = [contour.segments[0]!, contour.segments.at(-1)!];
          const [, into] = directionsOf(starts.at(-1)!, last);
          const [out] = directionsOf(contour.start, first);
          assert.ok(into.x * out.x + into.y * out.y > Math.cos((12 * Math.PI) / 180), 'begins in a corner');
        }
      }
    });

    it('begins in the thick part of a piece that has a thin one', async () => {
      // A disc with a long tail 2 mm wide.
      const shapes = ['disc: {ellipse: 24}', 'tail: {rectangle: [60, 2], nudge: {right: 40}}'];
      const [outline] = contoursOf(await planOf(specOf(shapes, 'body: [disc, tail]')), 'cut-outer');
      assert.ok(outline!.start.x < 24, `begins at ${outline!.start.x}`);
    });

    it('is the same every time', async () => {
      const { text } = samples.find(({ name }) => name.startsWith('4-'))!;
      assert.deepEqual(await planOf(text), await planOf(text));
    });
  });

  describe('with tabs', () => {
    const shapes = ['plate: {rectangle: [60, 30], radius: 5}', 'window: {ellipse: 8}'];
    const spec = (output: string) => specOf(shapes, 'body: [plate], cut: [window]', ['stock: {kerf: 0.2}', output]);

    it('leaves as much joined as is asked for, in as many places, of parts only', async () => {
      const plan = await planOf(spec('output: {tabs: {count: 3, width: 0.6 mm}}'));
      const outer = contoursOf(plan, 'cut-outer');
      assert.equal(outer.length, 3);
      const whole = contourLength(contoursOf(await planOf(spec('output: {tabs: 0}')), 'cut-outer')[0]!);
      const cut = outer.reduce((sum, contour) => sum + contourLength(contour), 0);
      // The beam takes half a kerf of each end of a gap.
      assertNear(whole - cut, 3 * (0.6 + 0.2), 0.01);
      outer.forEach((contour, i) => {
        assert.ok(!contour.closed);
        assertNear(apart(endOf(contour), outer[(i + 1) % 3]!.start), 0.8, 0.05);
      });
      const [inner] = contoursOf(plan, 'cut-inner');
      assert.ok(inner!.closed);
    });

    it('holds the part in the sheet, as jsts sees it, and without them it falls', async () => {
      const held = leftOfSheet(cutsOf(await planOf(spec('output: {tabs: 2}'))), 0.2);
      const free = leftOfSheet(cutsOf(await planOf(spec('output: {tabs: 0}'))), 0.2);
      // The disc from the window falls either way.
      assert.equal(held, 2);
      assert.equal(free, 3);
    });

    it('leaves outlines alone that are too short for any', async () => {
      const tiny = specOf(['dot: {ellipse: 0.5}'], 'body: [dot]', ['output: {tabs: {count: 2, width: 3 mm}}']);
      assert.ok(contoursOf(await planOf(tiny), 'cut-outer').every(({ closed }) => closed));
    });
  });

  it('keeps parts apart by name: every path says which piece it is of', async () => {
    const plan = await planOf(samples.find(({ name }) => name.startsWith('4-'))!.text);
    const outer = plan.steps.at(-1)!;
    assert.equal(outer.operation, 'cut-outer');
    assert.deepEqual(new Set(outer.paths.map(({ piece }) => piece)), new Set(['back', 'letters']));
  });
});

/** Into how many pieces the cuts part a sheet. */
function leftOfSheet(cuts: readonly Contour[], kerf: number): number {
  const swept = cuts
    .map((contour) => {
      const points = walked(contour);
      const path = contour.closed ? [...points, points[0]!] : points;
      const walkedLine = factory.createLineString(path.map(({ x, y }) => new Coordinate(x, y))) as Geometry;
      return BufferOp.bufferOp(walkedLine, kerf / 2, 16) as Geometry;
    })
    .reduce((sum, each) => OverlayOp.union(sum, each) as Geometry);
  const { minX, minY, maxX, maxY } = boundsOf(cuts.map(walked))!;
  const sheet = polygon([
    { x: minX - 9, y: minY - 9 },
    { x: maxX + 9, y: minY - 9 },
    { x: maxX + 9, y: maxY + 9 },
    { x: minX - 9, y: maxY + 9 },
  ]);
  return (OverlayOp.difference(sheet, swept) as Geometry).getNumGeometries();
}
