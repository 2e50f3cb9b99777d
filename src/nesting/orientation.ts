/** An outline in one orientation, stored in flat arrays for the many queries of the search. */

import { boundsOf, distance, ringArea } from '../geometry/measure.ts';
import { partsOf } from '../geometry/parts.ts';
import type { Affine, Bounds, Point, Region, Ring } from '../geometry/types.ts';
import type { PartOutline } from './part-outline.ts';

/** Quarter turns, counter-clockwise. */
export type Turn = 0 | 1 | 2 | 3;

/**
 * Outlines are thinned by this much, in mm, so that parts that touch do not overlap because of rounding. It is far
 * below the grid of regions; the gap between parts is kept to within twice this.
 */
export const slackMm = 2e-6;

/** Limit on the offset of a sharp corner, in multiples of the thinning: sharper ones are not thinned in full. */
const sharpest = 20;

/** An island of material with its holes, as ranges in the corner arrays. */
export interface Island {
  readonly bounds: Bounds;
  /** The outer ring comes first. */
  readonly rings: readonly RingRange[];
}

export interface RingRange {
  /** Index of its first corner, and one past its last. */
  readonly from: number;
  readonly to: number;
  readonly bounds: Bounds;
}

/** Corners of an orientation; each index also stands for the edge that starts there. */
export interface CornerArrays {
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** Direction of the edge in radians, above −π and up to π. */
  readonly angle: Float64Array;
  /** Slope of the edge: mm to the right per mm upwards. */
  readonly slope: Float64Array;
  /** Edges of each ring, sorted by angle. */
  readonly byAngle: Int32Array;
}

/** What the search and the proofs visit, once two outlines come near each other. */
interface Edges {
  readonly islands: readonly Island[];
  readonly next: Int32Array;
  readonly previous: Int32Array;
  readonly corners: CornerArrays;
  /**
   * The corners rotated by half a turn about the origin: the Minkowski sum for no-fit polygons takes the moving part
   * negated.
   */
  readonly opposite: CornerArrays;
}

export interface Orientation extends Edges {
  readonly turn: Turn;
  /** Unique id: four to a shape; the last two bits are the turn. */
  readonly id: number;
  /** Size of the part itself, in mm. Its lower left corner is the origin. */
  readonly width: number;
  readonly height: number;
  /** Area of the part in mm², and the height of its centroid above the origin. */
  readonly area: number;
  readonly middle: number;
  /** Bounds of the outline, which extends beyond the part. */
  readonly bounds: Bounds;
  /** How many corners the outline has. */
  readonly count: number;
  /**
   * Heights of its horizontal edges and its highest and lowest points: with material below, and with material above.
   */
  readonly tops: readonly number[];
  readonly bottoms: readonly number[];
  /** Transform of the part, whose lower left corner as drawn is at the origin, to its orientation. */
  readonly toOrigin: Affine;
}

/** An outline in one orientation, without what the search asks of one. Lower left corner and size as in `Orientation`. */
export interface TurnedOutline extends Pick<Orientation, 'width' | 'height' | 'bounds'> {
  /** Thinned, as the corners of an orientation are. */
  readonly thin: Region;
}

/** Rotates exactly, without rounding. */
export function turned({ x, y }: Point, turn: Turn): Point {
  return turn === 0 ? { x, y } : turn === 1 ? { x: -y, y: x } : turn === 2 ? { x: -x, y: -y } : { x: y, y: -x };
}

const matrices = [
  [1, 0, 0, 1],
  [0, 1, -1, 0],
  [-1, 0, 0, -1],
  [0, -1, 1, 0],
] as const;

/** Where the box of a part comes to lie, and the way of its outline there. */
function turnedTo({ bounds: { minX, minY, maxX, maxY } }: PartOutline, turn: Turn) {
  const one = turned({ x: minX, y: minY }, turn);
  const other = turned({ x: maxX, y: maxY }, turn);
  const origin = { x: Math.min(one.x, other.x), y: Math.min(one.y, other.y) };
  const atOrigin = (region: Region): Region =>
    region.map((ring) =>
      ring.map((point) => {
        const { x, y } = turned(point, turn);
        return { x: x - origin.x, y: y - origin.y };
      }),
    );
  return { origin, width: Math.abs(other.x - one.x), height: Math.abs(other.y - one.y), atOrigin };
}

export function turnedOutline(outline: PartOutline, turn: Turn): TurnedOutline {
  const { width, height, atOrigin } = turnedTo(outline, turn);
  const region = atOrigin(outline.region);
  return { width, height, bounds: boundsOf(region)!, thin: region.map(shrunkCorners) };
}

/** Its edges are made when they are first needed: of hundreds of shapes, in up to four turns, most are never near another. */
export function orient(outline: PartOutline, turn: Turn, shape: number): Orientation {
  const { origin, width, height, atOrigin } = turnedTo(outline, turn);
  const region = atOrigin(outline.region);
  const rings = partsOf(region).flat();
  const bounds = boundsOf(region)!;
  let made: Edges | undefined;
  const edges = (): Edges => (made ??= edgesOf(partsOf(atOrigin(outline.region))));
  const [a, b, c, d] = matrices[turn];
  return {
    turn,
    id: 4 * shape + turn,
    width,
    height,
    area: rings.reduce((sum, ring) => sum + ringArea(ring), 0),
    middle: centroidHeight(rings),
    bounds,
    count: rings.reduce((sum, { length }) => sum + length, 0),
    ...flatsOf(rings, bounds),
    toOrigin: { a, b, c, d, e: -origin.x, f: -origin.y },
    get islands() {
      return edges().islands;
    },
    get next() {
      return edges().next;
    },
    get previous() {
      return edges().previous;
    },
    get corners() {
      return edges().corners;
    },
    get opposite() {
      return edges().opposite;
    },
  };
}

function edgesOf(regions: readonly Region[]): Edges {
  let count = 0;
  const islands = regions.map((island): Island => {
    const rings = island.map((ring): RingRange => {
      count += ring.length;
      return { from: count - ring.length, to: count, bounds: boundsOf([ring])! };
    });
    return { bounds: rings[0]!.bounds, rings };
  });
  const next = new Int32Array(count);
  const previous = new Int32Array(count);
  for (const { from, to } of islands.flatMap(({ rings }) => rings)) {
    for (let i = from; i < to; i += 1) {
      next[i] = i + 1 < to ? i + 1 : from;
      previous[next[i]!] = i;
    }
  }
  const thin = regions.flat().flatMap(shrunkCorners);
  const opposite = thin.map(({ x, y }) => ({ x: -x, y: -y }));
  return {
    islands,
    next,
    previous,
    corners: cornersOf(thin, next, islands),
    opposite: cornersOf(opposite, next, islands),
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

/** Shorter horizontal edges, in mm, are leftovers of a curve. */
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

/** Moves each corner into the material, so that the edges are `slackMm` further in. */
function shrunkCorners(ring: Ring): Point[] {
  return ring.map((point, i) => {
    const before = ring[(i + ring.length - 1) % ring.length]!;
    const after = ring[(i + 1) % ring.length]!;
    const [ax, ay] = unit(before, point);
    const [bx, by] = unit(point, after);
    // Half the sum of the two normals has the length cos(turn / 2), and the corner's offset must be 1 / cos(turn / 2)
    // to be as far from both lines.
    const by2 = Math.max(1 + ax * bx + ay * by, 1 / sharpest ** 2);
    return { x: point.x - (slackMm * (ay + by)) / by2, y: point.y + (slackMm * (ax + bx)) / by2 };
  });
}

function unit(from: Point, to: Point): [number, number] {
  const length = distance(to, from);
  return [(to.x - from.x) / length, (to.y - from.y) / length];
}

/** Height of the centroid, by Green's theorem. */
function centroidHeight(region: Region): number {
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
