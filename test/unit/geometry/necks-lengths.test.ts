import assert from 'node:assert/strict';
import { buildMesh } from '../../../src/geometry/necks/build-mesh.ts';
import {
  acuteness,
  apexOf,
  arcOver,
  edgeLength,
  heightOn,
  midpoint,
  midpointDistance,
  triangleArea,
  vectorLength,
} from '../../../src/geometry/necks/lengths.ts';
import type { Mesh } from '../../../src/geometry/necks/mesh.ts';
import { nextEdge } from '../../../src/geometry/necks/triangulation.ts';
import { assertNear } from '../support/engine.ts';

type Corner = readonly [x: number, y: number];

/** Corners are given in hundredths of a mm, as triangles of a few units would be debris. */
const unit = 1000;

/** The inside of rings of corners, without any points between them. */
function meshOf(...rings: readonly (readonly Corner[])[]): Mesh {
  const written = rings.map((ring) => ({ xs: ring.map(([x]) => x * unit), ys: ring.map(([, y]) => y * unit) }));
  const mesh = buildMesh(written, 1e9);
  assert.ok(mesh);
  return mesh;
}

function edgeBetween(mesh: Mesh, [ax, ay]: Corner, [bx, by]: Corner): number {
  const isAt = (vertex: number, x: number, y: number) => mesh.xs[vertex] === x * unit && mesh.ys[vertex] === y * unit;
  const found = [...mesh.starts.keys()].find(
    (e) =>
      mesh.inside[Math.floor(e / 3)] === 1 && isAt(mesh.starts[e]!, ax, ay) && isAt(mesh.starts[nextEdge(e)]!, bx, by),
  );
  assert.ok(found !== undefined, 'there is such an edge');
  return found;
}

describe('Lengths in a mesh', () => {
  // 3, 4, 5, moved off the origin.
  const [a, b, c]: readonly Corner[] = [
    [100, 20],
    [130, 20],
    [100, 60],
  ];
  const mesh = meshOf([a!, b!, c!]);
  const [ab, bc, ca] = [edgeBetween(mesh, a!, b!), edgeBetween(mesh, b!, c!), edgeBetween(mesh, c!, a!)];

  it('of a triangle with sides 30, 40 and 50 are those of Pythagoras', () => {
    assert.equal(vectorLength(-3, 4), 5);
    assert.deepEqual(
      [ab, bc, ca].map((e) => edgeLength(mesh, e) / unit),
      [30, 50, 40],
    );
    assert.deepEqual(
      [ab, bc, ca].map((e) => [mesh.xs[apexOf(mesh, e)]! / unit, mesh.ys[apexOf(mesh, e)]! / unit]),
      [c, a, b],
    );
    assert.equal(triangleArea(mesh, Math.floor(ab / 3)), 600 * unit ** 2);
    // (30·40 − 10·10)/2, moved by 7 and 3.
    const oblique = meshOf([
      [7, 3],
      [37, 13],
      [17, 43],
    ]);
    assert.equal(triangleArea(oblique, 0), 550 * unit ** 2);
  });

  it('say how acute the angle opposite an edge is: the product of its sides and its cosine', () => {
    // At C 40·50·40/50, at A a right angle, at B 30·50·30/50.
    assert.deepEqual(
      [ab, bc, ca].map((e) => acuteness(mesh, e) / unit ** 2),
      [1600, 0, 900],
    );
  });

  it('go from the apex to the edge, and no further than its ends', () => {
    // Over the longest side twice the area over it: 1200/50.
    assert.deepEqual(
      [ab, bc, ca].map((e) => heightOn(mesh, e) / unit),
      [40, 24, 30],
    );
    // Beyond either end of the edge, as far as from that end.
    for (const x of [-20, 130]) {
      const slanting = meshOf([a!, [110, 20], [x, 60]]);
      const end = x < 100 ? 100 : 110;
      assertNear(heightOn(slanting, edgeBetween(slanting, a!, [110, 20])), unit * Math.hypot(x - end, 40), 1e-6);
    }
  });

  it('from middle to middle of two sides are half the third', () => {
    assert.deepEqual(midpoint(mesh, bc), [115 * unit, 40 * unit]);
    assert.equal(midpointDistance(mesh, ab, bc), 20 * unit);
    assert.equal(midpointDistance(mesh, ca, bc), 15 * unit);
  });

  it('along the outline are those of the shorter way round', () => {
    // Of a regular pentagon, whichever two of its diagonals are chords, each has two sides on one hand and three on the other.
    const radius = 1000;
    const pentagon = [0, 1, 2, 3, 4].map((i): Corner => {
      const angle = (2 * Math.PI * i) / 5;
      return [Math.round(radius * Math.cos(angle)), Math.round(radius * Math.sin(angle))];
    });
    const fan = meshOf(pentagon);
    const chords = [...fan.starts.keys()].filter((e) => fan.isChord[e]);
    assert.equal(chords.length, 4, 'two chords, from either side');
    for (const chord of chords) assertNear(arcOver(fan, chord), 4 * radius * Math.sin(Math.PI / 5) * unit, 4 * unit);
  });

  it('along the outline are those over its beginning where that is shorter', () => {
    const kite = meshOf([
      [0, 0],
      [10, -5],
      [40, 0],
      [10, 5],
    ]);
    const chord = edgeBetween(kite, [10, -5], [10, 5]);
    assertNear(arcOver(kite, chord), 2 * Math.hypot(10, 5) * unit, 1e-6);
  });

  it('along the outline are infinite between two outlines', () => {
    const frame = meshOf(
      [
        [0, 0],
        [90, 0],
        [90, 90],
        [0, 90],
      ],
      [
        [30, 30],
        [30, 60],
        [60, 60],
        [60, 30],
      ],
    );
    const chords = [...frame.starts.keys()].filter((e) => frame.isChord[e]);
    assert.ok(chords.length > 0);
    for (const chord of chords) assert.equal(arcOver(frame, chord), Infinity);
  });
});
