/**
 * Orders cuts so that the head travels little: nearest neighbour first, then 2-opt (G. A. Croes 1958), and in each
 * round the start points that suit the order best, by dynamic programming.
 */

import { distance } from '../geometry/measure.ts';
import type { Point } from '../geometry/types.ts';

/** A cut that may begin, and then ends, at any one of these points. */
export interface Stop {
  readonly points: readonly Point[];
}

export interface Visit {
  /** Index of the stop, and of the point chosen on it. */
  readonly stop: number;
  readonly point: number;
}

/** Rounds of ordering, then choosing start points; it settles in two or three. */
const rounds = 4;

/** Limit on sweeps of 2-opt; fewer are usually enough. */
const mostSweeps = 40;

/** Longest stretch, in stops, that 2-opt reverses; bounds the time on very full sheets. */
const longestStretch = 1000;

/** Visits every stop once, beginning near `from`; deterministic. */
export function shortTour(stops: readonly Stop[], from: Point): Visit[] {
  let tour = nearestNeighbours(stops, from);
  for (let round = 0; round < rounds; round++) {
    const before = tourLength(stops, tour, from);
    tour = bestPoints(stops, twoOpt(stops, tour, from), from);
    if (tourLength(stops, tour, from) > before - 1e-6) break;
  }
  return tour;
}

export function tourLength(stops: readonly Stop[], tour: readonly Visit[], from: Point): number {
  let at = from;
  return tour.reduce((sum, { stop, point }) => {
    const next = stops[stop]!.points[point]!;
    const length = distance(at, next);
    at = next;
    return sum + length;
  }, 0);
}

function nearestNeighbours(stops: readonly Stop[], from: Point): Visit[] {
  const left = new Set(stops.keys());
  const tour: Visit[] = [];
  let at = from;
  while (left.size > 0) {
    let best: (Visit & { readonly away: number }) | undefined;
    for (const stop of left) {
      stops[stop]!.points.forEach((candidate, point) => {
        const away = distance(at, candidate);
        if (!best || away < best.away) best = { stop, point, away };
      });
    }
    const { stop, point } = best!;
    tour.push({ stop, point });
    left.delete(stop);
    at = stops[stop]!.points[point]!;
  }
  return tour;
}

/**
 * 2-opt: reverses stretches of the tour while that shortens it. The end is free, so the last stretch may be reversed
 * too.
 */
function twoOpt(stops: readonly Stop[], tour: readonly Visit[], from: Point): Visit[] {
  const order = [...tour];
  const at = (i: number): Point => {
    if (i < 0) return from;
    const { stop, point } = order[i]!;
    return stops[stop]!.points[point]!;
  };
  for (let sweep = 0; sweep < mostSweeps; sweep++) {
    let improved = false;
    for (let i = 0; i < order.length; i++) {
      const end = Math.min(order.length, i + longestStretch);
      for (let k = i + 1; k < end; k++) {
        const [a, b, c] = [at(i - 1), at(i), at(k)];
        const d = k + 1 < order.length ? at(k + 1) : undefined;
        const now = distance(a, b) + (d ? distance(c, d) : 0);
        const turned = distance(a, c) + (d ? distance(b, d) : 0);
        if (turned > now - 1e-9) continue;
        order.splice(i, k - i + 1, ...order.slice(i, k + 1).reverse());
        improved = true;
      }
    }
    if (!improved) break;
  }
  return order;
}

/** The start point of each stop that makes the tour in this order shortest. */
function bestPoints(stops: readonly Stop[], tour: readonly Visit[], from: Point): Visit[] {
  interface Reached {
    readonly length: number;
    readonly from: number;
  }
  const layers: Reached[][] = [];
  let last: readonly Point[] = [from];
  let lengths = [0];
  for (const { stop } of tour) {
    const layer = stops[stop]!.points.map((point): Reached =>
      last.reduce<Reached>(
        (best, before, i) => {
          const length = lengths[i]! + distance(before, point);
          return length < best.length ? { length, from: i } : best;
        },
        { length: Infinity, from: 0 },
      ),
    );
    layers.push(layer);
    last = stops[stop]!.points;
    lengths = layer.map(({ length }) => length);
  }
  let point = lengths.indexOf(Math.min(...lengths));
  const chosen: Visit[] = [];
  for (let i = tour.length - 1; i >= 0; i--) {
    chosen.unshift({ stop: tour[i]!.stop, point });
    point = layers[i]![point]!.from;
  }
  return chosen;
}
