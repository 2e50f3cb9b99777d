import assert from 'node:assert/strict';
import Coordinate from 'jsts/org/locationtech/jts/geom/Coordinate.js';
import type Geometry from 'jsts/org/locationtech/jts/geom/Geometry.js';
import GeometryFactory from 'jsts/org/locationtech/jts/geom/GeometryFactory.js';
import DistanceOp from 'jsts/org/locationtech/jts/operation/distance/DistanceOp.js';
import { distance } from '../../../src/geometry/measure.ts';
import { buildMesh } from '../../../src/geometry/necks/build-mesh.ts';
import { fromGrid, gridPerMm, toGrid } from '../../../src/geometry/necks/clean.ts';
import { nextEdge } from '../../../src/geometry/necks/triangulation.ts';
import { exactWidth } from '../../../src/geometry/necks/widths.ts';
import type { Point, Region, Ring } from '../../../src/geometry/types.ts';
import { assertNear } from '../support/engine.ts';
import { box, disc, polygon, subtract } from '../support/shapes.ts';

const factory = new GeometryFactory();
const lineOf = (points: readonly Point[]): Geometry =>
  factory.createLineString(points.map(({ x, y }) => new Coordinate(x, y))) as Geometry;

/** Distance between boundary points, in mm. */
const spacing = 0.3;

interface Chord {
  /** Ends, in mm. */
  readonly from: Point;
  readonly to: Point;
  readonly width: number;
  readonly followed: number;
  /** Ends of the width followed to. */
  readonly ends: readonly [Point, Point];
}

/** The chords of a region's triangulation, each from one side only, with the widths found from them (mm). */
function chordsOf(region: Region): Chord[] {
  const mesh = buildMesh(toGrid(region), spacing * gridPerMm)!;
  const at = (vertex: number): Point => fromGrid([mesh.xs[vertex]!, mesh.ys[vertex]!]);
  return [...mesh.isChord.keys()].flatMap((e): Chord[] => {
    if (!mesh.isChord[e] || mesh.twins[e]! < e) return [];
    const [near, far] = [false, true].map((follow) => exactWidth(mesh, e, spacing * gridPerMm, follow));
    const ends = [fromGrid(far!.ends[0]), fromGrid(far!.ends[1])] as const;
    const [from, to] = [at(mesh.starts[e]!), at(mesh.starts[nextEdge(e)]!)];
    return [{ from, to, width: near!.width / gridPerMm, followed: far!.width / gridPerMm, ends }];
  });
}

/** The stretch of a polygon as far as `reach` mm either way from a point on it. */
function around(ring: Ring, { x, y }: Point, reach: number): Point[] {
  const nearest = ring.map((a, i) => {
    const b = ring[(i + 1) % ring.length]!;
    const t = Math.max(0, Math.min(1, ((x - a.x) * (b.x - a.x) + (y - a.y) * (b.y - a.y)) / distance(a, b) ** 2));
    return { i, away: Math.hypot(x - a.x - t * (b.x - a.x), y - a.y - t * (b.y - a.y)) };
  });
  const { i } = nearest.reduce((best, each) => (each.away < best.away ? each : best));
  const way = (corners: readonly Point[]): Point[] => {
    const points: Point[] = [];
    let [at, left]: [Point, number] = [{ x, y }, reach];
    for (const corner of corners) {
      const length = distance(at, corner);
      const share = length > 0 ? Math.min(1, left / length) : 0;
      points.push({ x: at.x + share * (corner.x - at.x), y: at.y + share * (corner.y - at.y) });
      if (length >= left) break;
      [at, left] = [corner, left - length];
    }
    return points;
  };
  const ahead = [...ring.slice(i + 1), ...ring.slice(0, i + 1)];
  return [...way(ahead.toReversed()).toReversed(), { x, y }, ...way(ahead)];
}

/** A strip 20 × 4 with a notch from either side, whose tips are 1 mm apart at x = 8. */
const waist = polygon([0, 0], [6, 0], [8, 1.5], [10, 0], [20, 0], [20, 4], [10, 4], [8, 2.5], [6, 4], [0, 4]);
/** A hole 0.2 mm wide between the two tips. */
const hole = box(7.9, 1.9, 8.1, 2.1).toReversed();
/** Sides at an angle of 2·atan(0.1), from 0.4 to 4.4 mm apart. */
const wedge = polygon([0, -0.2], [20, -2.2], [20, 2.2], [0, 0.2]);

const crosses = ({ from, to }: Chord, side: number, low: number, high: number): boolean =>
  [from, to].every(({ x }) => x > low && x < high) && (from.y - side) * (to.y - side) < 0;

describe('The width of a neck', () => {
  it('is the least distance of what lies half a spacing about the ends of a chord (jsts)', () => {
    // Of the round one a stretch has several corners either way.
    const round = subtract([box(0, 0, 20, 4)], [disc(8, 0, 1.5, 0.0005)], [disc(8, 4, 1.5, 0.0005)])[0]!;
    for (const [ring, side] of [
      [waist, 2],
      [wedge, 0],
      [round, 2],
    ] as const) {
      // The round one has very many.
      const [low, high] = ring === round ? [7.6, 8.4] : [2, 18];
      const chords = chordsOf([ring]).filter((chord) => crosses(chord, side, low, high));
      assert.ok(chords.length > 15, String(chords.length));
      for (const { from, to, width } of chords) {
        const stretches = [from, to].map((end) => lineOf(around(ring, end, spacing / 2)));
        const apart = DistanceOp.distance(stretches[0]!, stretches[1]!) as number;
        assertNear(width, apart, 2e-4, `at ${from.x} and ${to.x}`);
      }
    }
  });

  it('between parallels is their distance, wherever the chord ends on them', () => {
    const chords = chordsOf([box(0, 0, 20, 1.2)]).filter((chord) => crosses(chord, 0.6, 2, 18));
    assert.ok(chords.length > 100);
    for (const { width, followed, ends } of chords) {
      assertNear(width, 1.2, 1e-4);
      assertNear(followed, 1.2, 1e-4);
      assertNear(distance(ends[0], ends[1]), followed, 1e-9);
    }
  });

  it('leads on to the narrowest place nearby, 1 mm between the two tips of notches', () => {
    const chords = chordsOf([waist]).filter((chord) => crosses(chord, 2, 6.2, 9.8));
    assert.ok(chords.length > 10);
    for (const { followed, ends } of chords) {
      assertNear(followed, 1, 1e-4);
      for (const { x } of ends) assertNear(x, 8, 1e-4);
    }
  });

  it('leads on along a taper, a few steps of one and a half spacings', () => {
    // The least distance from a point t from the apex to the other side is t·sin 2α, with tan α = 0.1.
    const angle = 2 * Math.atan(0.1);
    const apex = { x: -2, y: 0 };
    const chords = chordsOf([wedge]).filter((chord) => crosses(chord, 0, 10, 18));
    assert.ok(chords.length > 20);
    for (const { from, to, followed } of chords) {
      const nearer = Math.min(distance(from, apex), distance(to, apex));
      const steps = (nearer - followed / Math.sin(angle)) / (1.5 * spacing);
      // Five stretches are searched; each begins at most a spacing beyond the end of the one before.
      assert.ok(steps > 3 && steps < 8.5, `${steps}`);
    }
  });

  it('is no more than the chord, and more than nothing, also at the end of a bar and where outlines meet in a point', () => {
    for (const region of [[waist, hole], [box(0, 0, 2, 2), box(2, 2, 4, 4)], [box(0, 0, 20, 0.2)]])
      for (const { from, to, width, followed } of chordsOf(region)) {
        assert.ok(width > 0.001 && width <= distance(from, to) + 1e-6, `${width} from ${from.x} ${from.y}`);
        assert.ok(followed <= width + 1e-6, `${followed} from ${from.x} ${from.y}`);
      }
  });

  it('does not lead across an opening: the material ends there', () => {
    for (const { from, to, followed, ends } of chordsOf([waist, hole])) {
      const middle = { x: (ends[0].x + ends[1].x) / 2, y: (ends[0].y + ends[1].y) / 2 };
      const inHole = Math.abs(middle.x - 8) < 0.0999 && Math.abs(middle.y - 2) < 0.0999;
      assert.ok(!inHole, `from ${from.x} ${from.y} and ${to.x} ${to.y} to ${followed}`);
    }
  });
});
