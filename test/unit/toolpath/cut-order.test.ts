import assert from 'node:assert/strict';
import fc from 'fast-check';
import type { Point } from '../../../src/geometry/types.ts';
import { shortTour, tourLength } from '../../../src/toolpath/cut-order.ts';
import type { Stop } from '../../../src/toolpath/cut-order.ts';
import { assertNear } from '../support/engine.ts';

const origin: Point = { x: 0, y: 0 };
const apart = (a: Point, b: Point): number => Math.hypot(a.x - b.x, a.y - b.y);
const single = (x: number, y: number): Stop => ({ points: [{ x, y }] });

const point = fc.record({ x: fc.integer({ min: 0, max: 600 }), y: fc.integer({ min: 0, max: 300 }) });
const stopsOf = (most: number, points: number) =>
  fc.array(fc.record({ points: fc.array(point, { minLength: 1, maxLength: points }) }), {
    minLength: 1,
    maxLength: most,
  });

/** Every way through the points, by trying all of them. */
function shortest(stops: readonly Stop[], at: Point): number {
  if (stops.length === 0) return 0;
  return Math.min(
    ...stops.flatMap(({ points }, i) => points.map((next) => apart(at, next) + shortest(stops.toSpliced(i, 1), next))),
  );
}

/** The same in the order given: all choices of a point at each stop. */
function shortestInOrder([first, ...others]: readonly Stop[], at: Point): number {
  return first ? Math.min(...first.points.map((next) => apart(at, next) + shortestInOrder(others, next))) : 0;
}

describe('The order of cuts', () => {
  it('has the length of the legs from where it begins', () => {
    // Exact: 5 and 12.
    const stops = [single(3, 16), { points: [origin, { x: 3, y: 4 }] }];
    const tour = [
      { stop: 1, point: 1 },
      { stop: 0, point: 0 },
    ];
    assert.equal(tourLength(stops, tour, origin), 17);
    assert.equal(tourLength(stops, [], origin), 0);
    assert.deepEqual(shortTour([], origin), []);
  });

  it('goes along a row from its near end to its far one, whichever comes first in the file', () => {
    const stops = [5, 2, 8, 1, 7, 3, 6, 4].map((x) => single(10 * x, 0));
    const tour = shortTour(stops, origin);
    assert.deepEqual(
      tour.map(({ stop }) => stop),
      [3, 1, 5, 7, 0, 6, 4, 2],
    );
    assert.equal(tourLength(stops, tour, origin), 80);
  });

  it('takes the shorter way round where the nearest stop leads the wrong way', () => {
    // The nearest first: 1, 3 back and 12, which is 16. The one on the left first: 2, 3 and 9.
    const stops = [single(1, 0), single(-2, 0), single(10, 0)];
    assert.equal(tourLength(stops, shortTour(stops, origin), origin), 14);
    // The last stretch may be turned as well: nothing comes after it.
    const hook = [single(10, 0), single(10, 9), single(20, 0)];
    assertNear(tourLength(hook, shortTour(hook, origin), origin), shortest(hook, origin), 1e-9);
  });

  it('visits each stop once, never shorter than the shortest of all ways, and mostly just that', () => {
    let [cases, best] = [0, 0];
    fc.assert(
      fc.property(stopsOf(5, 3), (stops) => {
        const tour = shortTour(stops, origin);
        assert.deepEqual(
          tour.map(({ stop }) => stop).sort((a, b) => a - b),
          [...stops.keys()],
        );
        const [ours, least] = [tourLength(stops, tour, origin), shortest(stops, origin)];
        assert.ok(ours >= least - 1e-9);
        cases++;
        if (ours < least + 1e-6) best++;
      }),
      { numRuns: 100, seed: 1958 },
    );
    // Our own judgement of what is good enough for so few: it reaches 89 %, from any other beginning than the nearest stop at most
    // 78, and with one round 83.
    assert.ok(best >= 0.85 * cases, `${best} of ${cases}`);
  });

  it('begins each round at the best of its places for the order taken', () => {
    fc.assert(
      fc.property(stopsOf(6, 4), (stops) => {
        const tour = shortTour(stops, origin);
        const inOrder = tour.map(({ stop }) => stops[stop]!);
        assertNear(tourLength(stops, tour, origin), shortestInOrder(inOrder, origin), 1e-9);
      }),
      { numRuns: 60, seed: 1958 },
    );
  });

  it('cannot be shortened by turning any stretch round (Croes 1958)', () => {
    fc.assert(
      fc.property(stopsOf(30, 3), (stops) => {
        const tour = shortTour(stops, origin);
        const length = tourLength(stops, tour, origin);
        for (let from = 0; from < tour.length; from++)
          for (let to = from + 2; to <= tour.length; to++) {
            const turned = [...tour.slice(0, from), ...tour.slice(from, to).reverse(), ...tour.slice(to)];
            assert.ok(tourLength(stops, turned, origin) >= length - 1e-6, `${from} to ${to}`);
          }
      }),
      { numRuns: 30, seed: 1958 },
    );
  });
});
