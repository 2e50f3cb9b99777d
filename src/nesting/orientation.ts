/** An outline turned as it goes on the sheet, laid out in plain arrays for what asks about it a million times. */

import { boundsOf, distance, ringArea } from '../geometry/measure.ts';
import { partsOf } from '../geometry/parts.ts';
import type { Affine, Bounds, Point, Region, Ring } from '../geometry/types.ts';
import type { PartOutline } from './outline.ts';

/** Quarters of a turn, counter-clockwise. */
export type Turn = 0 | 1 | 2 | 3;

/**
 * Outlines are thinned by this many mm, so that parts that touch do not overlap by what rounding adds. It is far below the grid
 * that regions are on, and the gap between parts is kept less twice this.
 */
export const slackMm = 2e-6;

/** A corner this sharp is not thinned to the full. */
const sharpest = 20;

/** An island of material and its holes, as ranges of the arrays of the corners. */
export interface Island {
  readonly bounds: Bounds;
  /** The outer ring first. */
  readonly rings: readonly RingRange[];
}

export interface RingRange {
  /** Its first corner, and the one after its last. */
  readonly from: number;
  readonly to: number;
  readonly bounds: Bounds;
}

/** Corners of an orientation, and at the same index the edges that start there. */
export interface CornerArrays {
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** Of the edge: radians, above −π and up to π. */
  readonly angle: Float64Array;
  /** Of the edge: mm to the right per mm upwards. */
  readonly slope: Float64Array;
  /** The edges of each ring, in the order of their angles. */
  readonly byAngle: Int32Array;
}

export interface Orientation {
  readonly turn: Turn;
  /** Which of all the orientations there are: four to a shape, the turn being the last two bits. */
  readonly id: number;
  /** Size of the part itself, in mm. Its lower left corner is the origin. */
  readonly width: number;
  readonly height: number;
  /** mm² of the part, and how high above the origin its middle is, by its mass. */
  readonly area: number;
  readonly middle: number;
  /** Of the outline, which reaches beyond the part. */
  readonly bounds: Bounds;
  readonly islands: readonly Island[];
  /** Heights of its level edges, and of its highest and lowest points: with material below, and above. */
  readonly tops: readonly number[];
  readonly bottoms: readonly number[];
  readonly next: Int32Array;
  readonly previous: Int32Array;
  readonly corners: CornerArrays;
  /** The same turned by half a turn about the origin: a part that moves meets one that rests as if its mirror image grew it. */
  readonly opposite: CornerArrays;
  /** Takes the part, its lower left corner as drawn at the origin, to its orientation. */
  readonly toOrigin: Affine;
}

/** Turned exactly, without rounding. */
function turned({ x, y }: Point, turn: Turn): Point {
  return turn === 0 ? { x, y } : turn === 1 ? { x: -y, y: x } : turn === 2 ? { x: -x, y: -y } : { x: y, y: -x };
}

const matrices = [
  [1, 0, 0, 1],
  [0, 1, -1, 0],
  [-1, 0, 0, -1],
  [0, -1, 1, 0],
] as const;

export function orient(outline: PartOutline, turn: Turn, shape: number): Orientation {
  const { minX, minY, maxX, maxY } = outline.bounds;
  const one = turned({ x: minX, y: minY }, turn);
  const other = turned({ x: maxX, y: maxY }, turn);
  const origin = { x: Math.min(one.x, other.x), y: Math.min(one.y, other.y) };
  const region = outline.region.map((ring) =>
    ring.map((point) => {
      const { x, y } = turned(point, turn);
      return { x: x - origin.x, y: y - origin.y };
    }),
  );
  const bounds = boundsOf(region)!;
  const rings: Ring[] = [];
  let count = 0;
  const islands = partsOf(region).map((island): Island => {
    const ranges = island.map((ring) => {
      rings.push(ring);
      count += ring.length;
      return { from: count - ring.length, to: count, bounds: boundsOf([ring])! };
    });
    return { bounds: ranges[0]!.bounds, rings: ranges };
  });
  const next = new Int32Array(count);
  const previous = new Int32Array(count);
  for (const { from, to } of islands.flatMap((island) => island.rings)) {
    for (let i = from; i < to; i += 1) {
      next[i] = i + 1 < to ? i + 1 : from;
      previous[next[i]!] = i;
    }
  }
  const thin = rings.flatMap(thinned);
  const [a, b, c, d] = matrices[turn];
  return {
    turn,
    id: 4 * shape + turn,
    width: Math.abs(other.x - one.x),
    height: Math.abs(other.y - one.y),
    area: rings.reduce((sum, ring) => sum + ringArea(ring), 0),
    middle: middleOf(rings),
    bounds,
    islands,
    ...flatsOf(rings, bounds),
    next,
    previous,
    corners: cornersOf(thin, next, islands),
    opposite: cornersOf(
      thin.map(({ x, y }) => ({ x: -x, y: -y })),
      next,
      islands,
    ),
    toOrigin: { a, b, c, d, e: -origin.x, f: -origin.y },
  };
}

function cornersOf(points: readonly Point[], next: Int32Array, islands: readonly Island[]): CornerArrays {
  const ends = points.map((_, i) => points[next[i]!]!);
  const angle = Float64Array.from(points, ({ x, y }, i) => {
    const found = Math.atan2(ends[i]!.y - y, ends[i]!.x - x);
    return found === -Math.PI ? Math.PI : found;
  });
  const byAngle = Int32Array.from(points.keys());
  for (const { from, to } of islands.flatMap(({ rings }) => rings)) {
    byAngle.subarray(from, to).sort((p, q) => angle[p]! - angle[q]! || p - q);
  }
  return {
    x: Float64Array.from(points, ({ x }) => x),
    y: Float64Array.from(points, ({ y }) => y),
    angle,
    slope: Float64Array.from(points, ({ x, y }, i) => (ends[i]!.x - x) / (ends[i]!.y - y)),
    byAngle,
  };
}

/** Level edges shorter than this, in mm, are no more than what is left of a curve. */
const flatMm = 0.5;

function flatsOf(rings: readonly Ring[], { minY, maxY }: Bounds): Pick<Orientation, 'tops' | 'bottoms'> {
  const [tops, bottoms] = [new Set([maxY]), new Set([minY])];
  for (const ring of rings) {
    let from = ring[ring.length - 1]!;
    for (const to of ring) {
      // Material is to the left.
      if (to.y === from.y && to.x < from.x - flatMm) tops.add(to.y);
      else if (to.y === from.y && to.x > from.x + flatMm) bottoms.add(to.y);
      from = to;
    }
  }
  return { tops: [...tops], bottoms: [...bottoms] };
}

/** Each corner moved into the material, so that the edges are `slackMm` further in. */
function thinned(ring: Ring): Point[] {
  return ring.map((point, i) => {
    const before = ring[(i + ring.length - 1) % ring.length]!;
    const after = ring[(i + 1) % ring.length]!;
    const [ax, ay] = unit(before, point);
    const [bx, by] = unit(point, after);
    // Half the sum of the two normals has the length cos(turn / 2), and to be as far from both lines it takes 1 / cos(turn / 2).
    const by2 = Math.max(1 + ax * bx + ay * by, 1 / sharpest ** 2);
    return { x: point.x - (slackMm * (ay + by)) / by2, y: point.y + (slackMm * (ax + bx)) / by2 };
  });
}

function unit(from: Point, to: Point): [number, number] {
  const length = distance(to, from);
  return [(to.x - from.x) / length, (to.y - from.y) / length];
}

/** The height of the centre of mass: Green's theorem. */
function middleOf(region: Region): number {
  let [twice, sum] = [0, 0];
  for (const ring of region) {
    let from = ring[ring.length - 1]!;
    for (const to of ring) {
      const cross = from.x * to.y - to.x * from.y;
      twice += cross;
      sum += (from.y + to.y) * cross;
      from = to;
    }
  }
  return sum / (3 * twice);
}
