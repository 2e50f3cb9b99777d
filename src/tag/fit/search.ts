/** Searches a room for the places where a shape may be largest, each place as closely as it is worth. */

import { boundsOf } from '../../geometry/measure.ts';
import type { Bounds, Point } from '../../geometry/types.ts';
import type { RoomPart } from './room.ts';

/** The shape, scaled about its origin, and the point that its origin is moved to. */
export interface FitPlacement extends Point {
  readonly scale: number;
}

/** A place must be better than the best known one by this factor. */
const worthwhile = 1.001;

/** Smallest squares that are divided, as a share of the shape's smaller side. */
const smallest = 0.03;

/** Initial squares along the longer side of the area in which the origin may be. */
const firstSquares = 10;

/** Most squares divided at a time: the most promising ones. */
const mostSquares = 160;

/** Largest error of the distance field, as a share of its step. */
const fieldError = 0.25;

/** Rounds of refining the scale at a place. */
const rounds = 24;

interface Square extends FitPlacement {
  /** Half its side. */
  readonly half: number;
}

export interface Samples {
  /** Points on its outline or inside: x, y and distance from the origin of each. */
  readonly values: Float64Array;
  readonly box: Bounds;
}

/** Columns and rows of a shape; the search examines its outermost points in each. */
const sampleColumns = 32;
const sampleRows = 14;

/** Of the points of a shape the outermost ones, with all of those `inner` ones, and its box. */
export function samplesOf(outline: readonly Point[], inner: readonly Point[], box: Bounds): Samples {
  const points = [...outermost(outline), ...inner];
  const values = new Float64Array(3 * points.length);
  points.forEach(({ x, y }, i) => {
    values.set([x, y, Math.hypot(x, y)], 3 * i);
  });
  return { values, box };
}

/** Rows and columns of points within a shape: a thing that it has all round would otherwise be in nobody's way. */
const innerRows = 9;

export function gridIn({ minX, minY, maxX, maxY }: Bounds): Point[] {
  const at = (low: number, high: number, index: number) => low + ((index + 0.5) / innerRows) * (high - low);
  return Array.from({ length: innerRows ** 2 }, (_, index) => ({
    x: at(minX, maxX, index % innerRows),
    y: at(minY, maxY, Math.floor(index / innerRows)),
  }));
}

/** The lowest and highest point in each column, and the leftmost and rightmost in each row. */
function outermost(points: readonly Point[]): Point[] {
  const box = boundsOf([points])!;
  const chosen = new Set<Point>();
  const sides = [
    { along: 'x', across: 'y', low: box.minX, high: box.maxX, count: sampleColumns },
    { along: 'y', across: 'x', low: box.minY, high: box.maxY, count: sampleRows },
  ] as const;
  for (const { along, across, low, high, count } of sides) {
    const ends: (readonly [Point, Point] | undefined)[] = Array<undefined>(count).fill(undefined);
    for (const point of points) {
      const at = Math.min(count - 1, Math.floor(((point[along] - low) / (high - low)) * count));
      const [least, most] = ends[at] ?? [point, point];
      ends[at] = [point[across] < least[across] ? point : least, point[across] > most[across] ? point : most];
    }
    for (const point of ends.flatMap((pair) => pair ?? [])) chosen.add(point);
  }
  return [...chosen];
}

/**
 * Places where the shape may be larger than `atLeast`, each with an upper bound for its size there, the largest first.
 * A square of places is dropped once no place in it can be good: a point of the shape would be further outside than the
 * square reaches (branch and bound).
 * @param raise Tries a place thoroughly, and returns the largest size known by then.
 * @param y Height required for the origin, if any.
 */
export function promisingPlaces(
  samples: Samples,
  part: RoomPart,
  atLeast: number,
  raise: (place: FitPlacement) => number,
  y?: number,
): FitPlacement[] {
  const { box } = samples;
  const most = mostIn(part, samples);
  if (!(most > atLeast)) return [];
  const reach = (low: number, high: number, from: number, to: number): [number, number] => [
    Math.min(low - atLeast * from, low - most * from),
    Math.max(high - atLeast * to, high - most * to),
  ];
  const [left, right] = reach(part.box.minX, part.box.maxX, box.minX, box.maxX);
  const [low, high] = y === undefined ? reach(part.box.minY, part.box.maxY, box.minY, box.maxY) : [y, y];
  const side = Math.max(right - left, high - low) / firstSquares;
  const error = fieldError * part.field.step;
  let wanted = atLeast * worthwhile;
  const bound = (x: number, at: number, half: number) => {
    const slack = error + (y === undefined ? half * Math.SQRT2 : half);
    return { x, y: at, half, scale: largestAt(samples, part, x, at, slack, most, wanted) };
  };
  let squares: Square[] = [];
  for (let i = 0; i < Math.max(1, Math.ceil((right - left) / side)); i++) {
    for (let j = 0; j < Math.max(1, Math.ceil((high - low) / side)); j++) {
      squares.push(bound(left + (i + 0.5) * side, y ?? low + (j + 0.5) * side, side / 2));
    }
  }
  const least = smallest * Math.min(box.maxX - box.minX, box.maxY - box.minY) * most;
  let half = side / 2;
  for (;;) {
    squares = squares
      .filter(({ scale }) => scale > wanted)
      .sort((a, b) => b.scale - a.scale)
      .slice(0, mostSquares);
    if (half <= least || squares.length === 0) return squares;
    // A size found early saves searching places that cannot beat it.
    wanted = Math.max(wanted, raise(squares[0]!) * worthwhile);
    half /= 2;
    squares = squares
      .filter(({ scale }) => scale > wanted)
      .flatMap(({ x, y: at }) =>
        (y === undefined ? quarters : halves).map(({ x: dx, y: dy }) => bound(x + dx * half, at + dy * half, half)),
      );
  }
}

/** Upper bound for the scale, from the box of that part of a room. */
export function mostIn({ box: { minX, minY, maxX, maxY } }: RoomPart, { box }: Samples): number {
  return Math.min((maxX - minX) / (box.maxX - box.minX), (maxY - minY) / (box.maxY - box.minY));
}

const quarters: readonly Point[] = [
  { x: -1, y: -1 },
  { x: 1, y: -1 },
  { x: -1, y: 1 },
  { x: 1, y: 1 },
];
const halves: readonly Point[] = [
  { x: -1, y: 0 },
  { x: 1, y: 0 },
];

/**
 * The largest scale, from `most` down, at which no point is further outside than `slack`; 0 if that is below `least`.
 * For each unit of scale, a point that is too far out comes in by at most its distance from the origin.
 */
export function largestAt(
  { values }: Samples,
  { field }: RoomPart,
  x: number,
  y: number,
  slack: number,
  most: number,
  least: number,
): number {
  let scale = most;
  for (let round = 0; round < rounds; round++) {
    let next = scale;
    for (let i = 0; i < values.length; i += 3) {
      const out = -slack - field.at(x + scale * values[i]!, y + scale * values[i + 1]!);
      if (out <= 0) continue;
      next = Math.min(next, scale - out / values[i + 2]!);
      if (next < least) return 0;
    }
    if (next > scale * 0.9995) return next;
    scale = next;
  }
  return scale;
}
