/** Cache of the no-fit polygons of pairs of orientations, each computed once. */

import type { Position } from './layout.ts';
import { NoFitPolygon } from './no-fit-polygon.ts';
import type { WorkBudget } from './work-budget.ts';
import type { Orientation } from './orientation.ts';

/**
 * Limit on cached edges; beyond it, the cache is cleared and polygons are recomputed on demand. An edge takes 5 bytes.
 */
const maxKept = 10_000_000;

/** The same for the pairs themselves: a thousand different orientations have a million, each of some hundred bytes. */
const maxPairs = 200_000;

/** Cost of creating an edge, relative to visiting it. */
const costOfMaking = 1.5;

/** Positions at which a moving orientation would overlap a resting one, relative to the resting one's place. */
export interface LevelSection {
  readonly minY: number;
  readonly maxY: number;
  /**
   * Heights at which they touch along a horizontal edge, or at their highest and lowest points; exact, and not to be
   * missed.
   */
  readonly levels: readonly number[];
  /** Built when first needed: most of what lies on a sheet is too far away. */
  noFit: NoFitPolygon | undefined;
  /** The pair that the cached polygon is of. */
  readonly resting: number;
  readonly moving: number;
  /**
   * If set, the polygon is rotated by half a turn and moved by this: it is that of the same pair with their roles
   * exchanged, or with both turned.
   */
  readonly flip: Position | undefined;
}

export class NoFitPolygons {
  readonly #orientations: ReadonlyMap<number, Orientation>;
  readonly #seen = new Map<number, LevelSection>();
  readonly #made = new Map<number, NoFitPolygon>();
  readonly #poseLimit: number;
  #kept = 0;

  /** `orientations`: by their ids. */
  constructor(orientations: ReadonlyMap<number, Orientation>) {
    this.#orientations = orientations;
    this.#poseLimit = Math.max(0, ...orientations.keys()) + 1;
  }

  of(resting: Orientation, moving: Orientation): LevelSection {
    const key = resting.id * this.#poseLimit + moving.id;
    let seen = this.#seen.get(key);
    if (!seen) {
      if (this.#seen.size >= maxPairs) this.#seen.clear();
      this.#seen.set(key, (seen = this.#see(resting, moving)));
    }
    return seen;
  }

  /** Builds the polygon if needed, and adds the work to the budget. */
  make(seen: LevelSection, budget: WorkBudget): NoFitPolygon {
    const key = seen.resting * this.#poseLimit + seen.moving;
    let noFit = this.#made.get(key);
    if (!noFit) {
      if (this.#kept > maxKept) this.#forget();
      noFit = new NoFitPolygon(this.#orientations.get(seen.resting)!, this.#orientations.get(seen.moving)!);
      this.#made.set(key, noFit);
      this.#kept += noFit.size;
      budget.spent += costOfMaking * noFit.size;
    }
    return (seen.noFit = noFit);
  }

  #forget(): void {
    this.#made.clear();
    this.#kept = 0;
    for (const seen of this.#seen.values()) seen.noFit = undefined;
  }

  /**
   * Symmetries: a position of B touching A is, negated, one of A touching B. If both are rotated by half a turn, so is
   * their no-fit polygon; as an orientation's origin is its lower left corner, it also moves by the difference of their
   * sizes.
   */
  #see(resting: Orientation, moving: Orientation): LevelSection {
    const levels = new Set<number>();
    for (const top of resting.tops) for (const bottom of moving.bottoms) levels.add(top - bottom);
    for (const bottom of resting.bottoms) for (const top of moving.tops) levels.add(bottom - top);
    const [r, m] = [this.#orientations.get(resting.id ^ 2), this.#orientations.get(moving.id ^ 2)];
    const ways: [number, number, Position | undefined][] = [
      [resting.id, moving.id, undefined],
      [moving.id, resting.id, { x: 0, y: 0 }],
    ];
    if (r && m) ways.push([r.id, m.id, { x: resting.width - moving.width, y: resting.height - moving.height }]);
    let best = ways[0]!;
    for (const way of ways) if (way[0] < best[0] || (way[0] === best[0] && way[1] < best[1])) best = way;
    return {
      minY: resting.bounds.minY - moving.bounds.maxY,
      maxY: resting.bounds.maxY - moving.bounds.minY,
      levels: [...levels],
      noFit: undefined,
      resting: best[0],
      moving: best[1],
      flip: best[2],
    };
  }
}

/** Like `NoFitPolygon.sectionsAt`, for a polygon that may be flipped. */
export function sectionsSeen(
  noFit: NoFitPolygon,
  flip: Position | undefined,
  y: number,
  dx: number,
  into: Float64Array,
  at: number,
): number {
  if (!flip) return noFit.sectionsAt(y, dx, into, at);
  const written = noFit.sectionsAt(flip.y - y, 0, into, at);
  const across = flip.x + dx;
  for (let i = at, j = at + written - 1; i <= j; i += 1, j -= 1) {
    const from = across - into[j]!;
    into[j] = across - into[i]!;
    into[i] = from;
  }
  return written;
}
