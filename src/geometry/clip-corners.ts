/** Corners of outlines cut off straight, as on a luggage label: pointed ones, and those that are rounded. */

import type { Point, Region, Ring } from './types.ts';
import { roundCorners } from './round-corners.ts';

/** Bends of less than this, in degrees, belong to a curve: flattened curves turn by a few degrees at each point. */
const leastTurnDegrees = 20;

/** A corner of a ring. */
interface Corner {
  /** The indices of its first and last points; the same for a pointed one. */
  readonly first: number;
  readonly last: number;
  /** What its round takes of either side, in mm. */
  readonly taken: number;
}

/**
 * The region with its convex corners cut off. Each cut takes `by` mm of either side, at most half of the side, and of a
 * rounded corner no less than the round takes: nearer to the edge there is nothing to cut.
 */
export function clippedCorners(region: Region, by: number): Region {
  return by > 0 ? region.map((ring) => clipped(ring, by)) : region;
}

/** Whether an outline has a corner that can be cut off. */
export function hasCorners(region: Region): boolean {
  return region.some((ring) => cornersOf(ring).length > 0);
}

function clipped(ring: Ring, by: number): Ring {
  const count = ring.length;
  const corners = cornersOf(ring);
  if (corners.length === 0) return ring;
  const points: Point[] = [];
  corners.forEach((corner, k) => {
    const next = corners[(k + 1) % corners.length]!;
    // The side from this corner to the next, both ends included; the whole ring if there is only one corner.
    const steps = (next.first - corner.last + count - 1) % count;
    const side = Array.from({ length: steps + 2 }, (_, step) => ring[(corner.last + step) % count]!);
    const length = polylineLength(side);
    const cut = Math.min(by, (corner.taken + length + next.taken) / 2);
    const [from, to] = [Math.max(0, cut - corner.taken), length - Math.max(0, cut - next.taken)];
    points.push(...(from < to ? stretchBetween(side, from, to) : [stretchBetween(side, 0, from).at(-1) ?? side[0]!]));
  });
  return points;
}

function cornersOf(ring: Ring): Corner[] {
  const pointed = ring.flatMap((_, index) => (isCorner(ring, index) ? [{ first: index, last: index, taken: 0 }] : []));
  const isWithin = ({ first, last }: Corner, index: number): boolean =>
    (index - first + ring.length) % ring.length <= (last - first + ring.length) % ring.length;
  // A round so small that its chords bend as corners do is one corner all the same.
  const rounds = roundCorners(ring);
  const others = pointed.filter(({ first }) => !rounds.some((round) => isWithin(round, first)));
  return [...others, ...rounds].toSorted((a, b) => a.first - b.first);
}

function isCorner(ring: Ring, index: number): boolean {
  const [before, at, after] = [-1, 0, 1].map((step) => ring[(index + step + ring.length) % ring.length]!) as [
    Point,
    Point,
    Point,
  ];
  const [ax, ay, bx, by] = [at.x - before.x, at.y - before.y, after.x - at.x, after.y - at.y];
  // Outer rings run counter-clockwise and holes clockwise, so material is on the left and convex corners turn left.
  return Math.atan2(ax * by - ay * bx, ax * bx + ay * by) > (leastTurnDegrees * Math.PI) / 180;
}

function polylineLength(line: readonly Point[]): number {
  return line.slice(1).reduce((sum, { x, y }, i) => sum + Math.hypot(x - line[i]!.x, y - line[i]!.y), 0);
}

/** The stretch of a line between two distances along it: its points and the two ends. */
function stretchBetween(line: readonly Point[], from: number, to: number): Point[] {
  const points: Point[] = [];
  let along = 0;
  line.slice(1).forEach((end, i) => {
    const start = line[i]!;
    const length = Math.hypot(end.x - start.x, end.y - start.y);
    const at = (distance: number): Point => {
      const share = (distance - along) / length;
      return { x: start.x + share * (end.x - start.x), y: start.y + share * (end.y - start.y) };
    };
    if (from >= along && from < along + length) points.push(at(from));
    if (to > along && to <= along + length) points.push(at(to));
    else if (along + length > from && along + length < to) points.push(end);
    along += length;
  });
  return points;
}
