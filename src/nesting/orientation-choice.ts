/** How far a part can be let down onto another, by their outlines as they are. */

import type { Orientation } from './orientation.ts';
import { slackMm } from './orientation.ts';

/** mm across that edges are sorted into. */
const columnMm = 1;

/** The edges of an orientation by columns: those with material below, and those with material above. */
interface Faces {
  readonly tops: readonly (readonly number[])[];
  readonly bottoms: readonly (readonly number[])[];
}

const faces = new WeakMap<Orientation, Faces>();

function facesOf(orientation: Orientation): Faces {
  const known = faces.get(orientation);
  if (known) return known;
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
  faces.set(orientation, made);
  return made;
}

const columnOf = ({ bounds }: Orientation, x: number): number => Math.floor((x - bounds.minX) / columnMm);

/**
 * How far, in mm, the upper orientation can be moved straight down until it touches the lower one; `Infinity` where it would pass it.
 * It is at (dx, dy) from the lower one and does not overlap it.
 */
export function dropOnto(lower: Orientation, upper: Orientation, dx: number, dy: number): number {
  const { bounds: low } = lower;
  const { bounds: up } = upper;
  if (up.minX + dx >= low.maxX || up.maxX + dx <= low.minX || up.maxY + dy <= low.minY) return Infinity;
  const least = Math.min(
    fall(upper, dx, dy, lower, facesOf(lower).tops, 1),
    fall(lower, -dx, -dy, upper, facesOf(upper).bottoms, -1),
  );
  // Outlines are thinned, and touch too late by what both are.
  return Math.max(0, least - 2 * slackMm);
}

/** The least height of the corners of one orientation above (1) or below (−1) the edges of another. */
function fall(
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
      const height = way * (y - (fromY + ((x - fromX) / (toX - fromX)) * (toY - fromY)));
      if (height >= 0 && height < least) least = height;
    }
  }
  return least;
}
