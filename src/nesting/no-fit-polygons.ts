/** Every no-fit polygon of two orientations that is asked for, computed once. */

import type { Position } from './layout.ts';
import { NoFitPolygon } from './no-fit-polygon.ts';
import type { WorkBudget } from './work-budget.ts';
import type { Orientation } from './orientation.ts';

/** Kept at a time, in edges; beyond, all are forgotten and made anew as they are asked for. An edge takes 5 bytes. */
const maxKept = 20_000_000;

/** How much longer it takes to make an edge than to look at it. */
const costOfMaking = 1.5;

/** Where an orientation that moves would overlap one that rests, relative to its place. */
export interface LevelSection {
  readonly minY: number;
  readonly maxY: number;
  /** Heights at which they touch along something level, or at the highest and lowest points: exact ones, not to be missed. */
  readonly levels: readonly number[];
  /** Made when it is first needed: most of what lies on a sheet is too far away. */
  noFit: NoFitPolygon | undefined;
  /** Whose no-fit polygon that is. */
  readonly resting: number;
  readonly moving: number;
  /** It is turned by half a turn and moved by this: that of the same two with their parts exchanged, or both turned. */
  readonly flip: Position | undefined;
}

export class NoFitPolygons {
  readonly #orientations: ReadonlyMap<number, Orientation>;
  readonly #seen = new Map<number, LevelSection>();
  readonly #made = new Map<number, NoFitPolygon>();
  readonly #poseLimit: number;
  #kept = 0;

  /** `orientations` by their ids. */
  constructor(orientations: ReadonlyMap<number, Orientation>) {
    this.#orientations = orientations;
    this.#poseLimit = Math.max(0, ...orientations.keys()) + 1;
  }

  of(resting: Orientation, moving: Orientation): LevelSection {
    const key = resting.id * this.#poseLimit + moving.id;
    let seen = this.#seen.get(key);
    if (!seen) this.#seen.set(key, (seen = this.#see(resting, moving)));
    return seen;
  }

  /** Makes what is not made yet. What it takes is added to the budget. */
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
   * A position at which B meets A is, the other way round, one at which A meets B. And where both are turned by half a turn,
   * their no-fit polygon is; as an orientation begins at its lower left corner, it moves by the difference of their sizes.
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

/** As `NoFitPolygon.sectionsAt`, for a no-fit polygon as it is seen. */
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
