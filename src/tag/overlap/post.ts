/** Upright posts that hold one shape above another. */

import type { Runs } from './runs.ts';
import { lineAt } from './runs.ts';

export interface Post {
  /** x of its middle. */
  readonly x: number;
  /** y at which it enters the two shapes. */
  readonly bottom: number;
  readonly top: number;
  /** The gap it bridges at its narrowest, in mm. */
  readonly gap: number;
  /** How far it enters either shape to grip the side of what is narrower than it, in mm. */
  readonly sink: number;
  /** Cost of the place, in mm; lower is better. */
  readonly cost: number;
}

/** Factor by which posts and bars are wider than the web, so that they keep that width where they meet round shapes. */
export const ease = 1.06;

/** Cost of a post's distance from the middle of what it holds, as a share of it. */
const asideCost = 0.2;

/** Cost of a post's protrusion beside what it holds or stands on, as a multiple of it. */
const outsideCost = 1.5;

/**
 * The best place for a post `width` mm wide between columns of `upper` and of `lower`: short, near `prefer`, and with
 * its whole width on both. `undefined` if one is nowhere above the other.
 */
export function bestPost(upper: Runs, lower: Runs, width: number, prefer: number): Post | undefined {
  const { pitch } = upper;
  const count = Math.max(1, Math.round(width / pitch));
  const first = Math.min(upper.first, lower.first) - count;
  const last = Math.max(upper.first + upper.lines.length, lower.first + lower.lines.length);
  const columns = Array.from({ length: last - first + 1 }, (_, k) =>
    facing(lineAt(upper, first + k), lineAt(lower, first + k)),
  );
  let best: Post | undefined;
  for (let start = 0; start + count <= columns.length; start++) {
    let [covered, bottom, top, gap] = [0, Infinity, -Infinity, Infinity];
    for (let k = start; k < start + count; k++) {
      const column = columns[k];
      if (!column) continue;
      covered += 1;
      bottom = Math.min(bottom, column.to);
      top = Math.max(top, column.from);
      gap = Math.min(gap, column.from - column.to);
    }
    if (covered === 0) continue;
    const x = (first + start + count / 2) * pitch;
    const outside = (count - covered) * pitch;
    // A stem narrower than the post is also gripped from the side.
    const sink = Math.sqrt(Math.max(0, width ** 2 - (width - outside) ** 2));
    const cost = top - bottom + asideCost * Math.abs(x - prefer) + outsideCost * outside;
    if (!best || cost < best.cost) best = { x, bottom: bottom - sink, top: top + sink, gap, sink, cost };
  }
  return best;
}

/** The nearest pair of runs, one above the other. */
function facing(
  upper: readonly number[],
  lower: readonly number[],
): { readonly from: number; readonly to: number } | undefined {
  let best: { readonly from: number; readonly to: number } | undefined;
  for (let i = 0; i < upper.length; i += 2) {
    const [start, end] = [upper[i]!, upper[i + 1]!];
    for (let j = 0; j < lower.length; j += 2) {
      const to = lower[j + 1]!;
      if (start + end <= lower[j]! + to) continue;
      if (!best || start - to < best.from - best.to) best = { from: start, to };
    }
  }
  return best;
}

/** The least distance by which `upper` is above `lower` in any column; Infinity if it is in none. */
export function clearance(upper: Runs, lower: Runs): number {
  let least = Infinity;
  upper.lines.forEach((runs, index) => {
    const pair = facing(runs, lineAt(lower, upper.first + index));
    if (pair) least = Math.min(least, pair.from - pair.to);
  });
  return least;
}
