/** Upright posts: what holds one shape above another. */

import type { Runs } from './runs.ts';
import { lineAt } from './runs.ts';

export interface Post {
  /** Its middle. */
  readonly x: number;
  /** Where it enters the two shapes. */
  readonly bottom: number;
  readonly top: number;
  /** The gap it bridges at its narrowest, in mm. */
  readonly gap: number;
  /** How good a place it is, in mm; the lower the better. */
  readonly cost: number;
}

/** Posts and bars are so many times as wide as the web, so that they still are where they meet what is round. */
export const ease = 1.06;

/** A post off the middle of what it holds costs this share of the way. */
const asideCost = 0.2;

/** A post that stands out beside what it holds, or what it stands on, costs so many times what stands out. */
const outsideCost = 1.5;

/**
 * The best place for a post `width` mm wide between columns of `upper` and of `lower`: short, near `prefer`, and with its whole
 * width on both. `undefined` where the one stands nowhere above the other.
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
    // A stem that is narrower than the post is taken hold of from the side too.
    const sink = Math.sqrt(Math.max(0, width ** 2 - (width - outside) ** 2));
    const cost = top - bottom + asideCost * Math.abs(x - prefer) + outsideCost * outside;
    if (!best || cost < best.cost) best = { x, bottom: bottom - sink, top: top + sink, gap, cost };
  }
  return best;
}

/** The nearest pair of runs of which one is above the other. */
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

/** The least distance by which `upper` is above `lower` on any column; Infinity where it is above it on none. */
export function clearance(upper: Runs, lower: Runs): number {
  let least = Infinity;
  upper.lines.forEach((runs, index) => {
    const pair = facing(runs, lineAt(lower, upper.first + index));
    if (pair) least = Math.min(least, pair.from - pair.to);
  });
  return least;
}
