/** How far a part can drop until it touches another, by their true outlines. */

import { oncePer } from '../core/once-per.ts';
import type { Orientation } from './orientation.ts';
import { slackMm } from './orientation.ts';

/** Width of the columns that edges are sorted into, in mm. */
const columnMm = 1;

/** Depth in mm to which a corner counts as on an edge rather than beyond it: what rounding, and parts that just touch, may be. */
const touchMm = 1e-5;

/** Edges of an orientation by column: those with material below them, and those with material above. */
interface FacingEdges {
  readonly tops: readonly (readonly number[])[];
  readonly bottoms: readonly (readonly number[])[];
}

const facingEdges = oncePer((orientation: Orientation): FacingEdges => {
  const { corners, next, bounds } = orientation;
  const count = columnOf(orientation, bounds.maxX) + 1;
  const made = {
    tops: Array.from({ length: count }, (): number[] => []),
    bottoms: Array.from({ length: count }, (): number[] => []),
  };
  corners.x.forEach((from, edge) => {
    const to = corners.x[next[edge]!]!;
    if (from === to) return;
    // Material is to the left of every edge.
    const side = to < from ? made.tops : made.bottoms;
    const last = columnOf(orientation, Math.max(from, to));
    for (let column = columnOf(orientation, Math.min(from, to)); column <= last; column += 1) side[column]!.push(edge);
  });
  return made;
});

const columnOf = ({ bounds }: Orientation, x: number): number => Math.floor((x - bounds.minX) / columnMm);

/**
 * Distance in mm that the upper orientation can drop until it touches the lower one; `Infinity` if it would miss it.
 * The upper one is at (dx, dy) from the lower one, and they do not overlap.
 */
export function dropOnto(lower: Orientation, upper: Orientation, dx: number, dy: number): number {
  const { bounds: low } = lower;
  const { bounds: up } = upper;
  if (up.minX + dx >= low.maxX || up.maxX + dx <= low.minX || up.maxY + dy <= low.minY) return Infinity;
  const least = Math.min(
    dropHeight(upper, dx, dy, lower, facingEdges(lower).tops, 1),
    dropHeight(lower, -dx, -dy, upper, facingEdges(upper).bottoms, -1),
  );
  // Both outlines are thinned, so they touch too late by the sum of that.
  return Math.max(0, least - 2 * slackMm);
}

/** Least height of the corners of one orientation above (1) or below (−1) the edges of another. */
function dropHeight(
  { corners }: Orientation,
  dx: number,
  dy: number,
  onto: Orientation,
  edges: readonly (readonly number[])[],
  way: 1 | -1,
): number {
  let least = Infinity;
  const { corners: ends, next } = onto;
  for (let i = 0; i < corners.x.length; i += 1) {
    const x = corners.x[i]! + dx;
    const y = corners.y[i]! + dy;
    for (const edge of edges[columnOf(onto, x)] ?? []) {
      const [fromX, toX] = [ends.x[edge]!, ends.x[next[edge]!]!];
      if (x < Math.min(fromX, toX) || x > Math.max(fromX, toX)) continue;
      const [fromY, toY] = [ends.y[edge]!, ends.y[next[edge]!]!];
      const slope = (toY - fromY) / (toX - fromX);
      const height = way * (y - (fromY + (x - fromX) * slope));
      if (height < least && height >= -touchMm * Math.hypot(1, slope)) least = height;
    }
  }
  return least;
}
