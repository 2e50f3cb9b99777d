import assert from 'node:assert/strict';
import type { Contour } from '../../../src/geometry/contour.ts';
import type { Point, Region } from '../../../src/geometry/types.ts';
import { beginningAt, startPoints } from '../../../src/toolpath/start-points.ts';
import { assertNear } from '../support/engine.ts';
import { transformed } from '../support/shapes.ts';

const ring = (...corners: (readonly [number, number])[]): Point[] => corners.map(([x, y]) => ({ x, y }));

/** The contour of straight cuts along a ring, beginning at its first corner. */
const along = (corners: readonly Point[]): Contour => ({
  start: corners[0]!,
  segments: [...corners.slice(1), corners[0]!].map((to) => ({ type: 'line', to })),
  closed: true,
});

const placesOf = (corners: readonly Point[], part: Region = [corners]): Point[] =>
  startPoints(along(corners), part).map(({ at }) => at);

const apart = (a: Point, b: Point): number => Math.hypot(a.x - b.x, a.y - b.y);

describe('Where a cut may begin', () => {
  // Our own judgement: 3 mm from corners and from the other edge is far enough, and so is 0.8 of the best place.
  it('is along the sides, far enough from every corner', () => {
    const corners = ring([0, 0], [40, 0], [40, 20], [0, 20]);
    const places = placesOf(corners);
    // Every 4 mm, 2 mm from the ends: 10 and 5 a side, less the two at the ends of each. No more than 16 are kept: every other.
    assert.equal(places.length, 11);
    for (const { x, y } of places) {
      assert.ok(x === 0 || x === 40 || y === 0 || y === 20, 'on the outline');
      for (const corner of corners) assert.ok(apart({ x, y }, corner) >= 2.4);
    }
    assert.deepEqual(places[0], { x: 6, y: 0 });
    assert.deepEqual(places[1], { x: 14, y: 0 });
  });

  it('is in the middle of each side where all are short', () => {
    assert.deepEqual(placesOf(ring([0, 0], [3, 0], [3, 3], [0, 3])), ring([1.5, 0], [3, 1.5], [1.5, 3], [0, 1.5]));
  });

  it('is on the longest way between corners, where others are near one', () => {
    // 1 mm high: at its ends the next corner is half a millimetre off, along it the other edge a whole one.
    for (const { x, y } of placesOf(ring([0, 0], [12, 0], [12, 1], [0, 1])))
      assert.ok(x > 1 && x < 11 && (y === 0 || y === 1), `${x}, ${y}`);
  });

  it('counts no bend of 20° or less as a corner, and a sharper one as one', () => {
    // A bend of so many degrees on both ends of a short side, whichever way the outline is turned.
    const near = (degrees: number, turn: number) => {
      const drop = Math.tan((degrees * Math.PI) / 180);
      const plate = ring([0, 0], [9, 0], [10, -drop], [19, -drop], [19, 9], [0, 9]);
      const corners = transformed([plate], turn)[0]!;
      return startPoints(along(corners), [corners]).some(({ segment }) => segment === 1);
    };
    for (const turn of [0, 0.7, 2]) {
      assert.equal(near(19, turn), true);
      assert.equal(near(21, turn), false);
    }
  });

  it('is where the piece is thick: with material to the left, round holes as round outlines', () => {
    // A wide head on a tail 1 mm wide.
    const corners = ring([0, 0], [30, 0], [30, -10], [50, -10], [50, 11], [30, 11], [30, 1], [0, 1]);
    for (const { x } of placesOf(corners)) assert.ok(x >= 30, String(x));
    // Holes, clockwise, of which one edge lies half a millimetre below the edge of the plate, or beside it.
    const plate = ring([0, 0], [40, 0], [40, 20], [0, 20]);
    const high = ring([10, 5], [10, 19.5], [30, 19.5], [30, 5]);
    for (const { y } of placesOf(high, [plate, high])) assert.ok(y < 19.5, String(y));
    const aside = ring([25, 5], [25, 15], [39.5, 15], [39.5, 5]);
    for (const { x } of placesOf(aside, [plate, aside])) assert.ok(x < 39.5, String(x));
  });

  it('goes round: what is near the end of an outline is near its beginning', () => {
    // It begins in the middle of a side, 1 mm before a corner.
    const corners = ring([39, 0], [40, 0], [40, 20], [0, 20], [0, 0]);
    for (const { x, y } of placesOf(corners)) assert.ok(apart({ x, y }, { x: 40, y: 0 }) >= 2.4);
  });

  it('is anywhere on a circle, evenly, and never more than 16 places', () => {
    const circle = (radius: number): Contour => ({
      start: { x: radius, y: 0 },
      segments: [-1, 1].map((side) => ({
        type: 'arc',
        to: { x: side * radius, y: 0 },
        centre: { x: 0, y: 0 },
        sweep: Math.PI,
      })),
      closed: true,
    });
    const disc = (radius: number): Region => [
      Array.from({ length: 720 }, (_, i) => ({
        x: radius * Math.cos((i * Math.PI) / 360),
        y: radius * Math.sin((i * Math.PI) / 360),
      })),
    ];
    // Half a circle of radius 10 is 31.4 mm: seven places.
    const places = startPoints(circle(10), disc(10));
    assert.equal(places.length, 14);
    places.forEach(({ at, t, segment }, i) => {
      const angle = ((i + 0.5) * Math.PI) / 7;
      assertNear(at.x, 10 * Math.cos(angle), 1e-9);
      assertNear(at.y, 10 * Math.sin(angle), 1e-9);
      assertNear((segment + t) * Math.PI, angle, 1e-9);
    });
    // Half of radius 20: 15 places, 30 in all, so every other one.
    assert.equal(startPoints(circle(20), disc(20)).length, 15);
    const moved = beginningAt(circle(10), places[3]!);
    assertNear(apart(moved.start, places[3]!.at), 0, 1e-9);
    assert.equal(moved.closed, true);
  });
});
