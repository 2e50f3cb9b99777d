/** Every meeting of two poses that is asked for, computed once. */

import type { Place } from './bin.ts';
import { Meeting } from './no-fit-polygon.ts';
import type { Pace } from './work-budget.ts';
import type { Pose } from './orientation.ts';

/** Kept at a time, in edges; beyond, all are forgotten and made anew as they are asked for. An edge takes 5 bytes. */
const maxKept = 20_000_000;

/** How much longer it takes to make an edge than to look at it. */
const costOfMaking = 1.5;

/** Where a pose that moves would overlap one that rests, relative to its place. */
export interface Seen {
  readonly minY: number;
  readonly maxY: number;
  /** Heights at which they touch along something level, or at the highest and lowest points: exact ones, not to be missed. */
  readonly levels: readonly number[];
  /** Made when it is first needed: most of what lies on a sheet is too far away. */
  meeting: Meeting | undefined;
  /** Whose meeting that is. */
  readonly resting: number;
  readonly moving: number;
  /** It is turned by half a turn and moved by this: that of the same two with their parts exchanged, or both turned. */
  readonly flip: Place | undefined;
}

export class Meetings {
  readonly #poses: ReadonlyMap<number, Pose>;
  readonly #seen = new Map<number, Seen>();
  readonly #made = new Map<number, Meeting>();
  readonly #poseLimit: number;
  #kept = 0;

  /** `poses` by their ids. */
  constructor(poses: ReadonlyMap<number, Pose>) {
    this.#poses = poses;
    this.#poseLimit = Math.max(0, ...poses.keys()) + 1;
  }

  of(resting: Pose, moving: Pose): Seen {
    const key = resting.id * this.#poseLimit + moving.id;
    let seen = this.#seen.get(key);
    if (!seen) this.#seen.set(key, (seen = this.#see(resting, moving)));
    return seen;
  }

  /** Makes what is not made yet. What it takes is added to the pace. */
  make(seen: Seen, pace: Pace): Meeting {
    const key = seen.resting * this.#poseLimit + seen.moving;
    let meeting = this.#made.get(key);
    if (!meeting) {
      if (this.#kept > maxKept) this.#forget();
      meeting = new Meeting(this.#poses.get(seen.resting)!, this.#poses.get(seen.moving)!);
      this.#made.set(key, meeting);
      this.#kept += meeting.size;
      pace.spent += costOfMaking * meeting.size;
    }
    return (seen.meeting = meeting);
  }

  #forget(): void {
    this.#made.clear();
    this.#kept = 0;
    for (const seen of this.#seen.values()) seen.meeting = undefined;
  }

  /**
   * A position at which B meets A is, the other way round, one at which A meets B. And where both are turned by half a turn,
   * their meeting is; as a pose begins at its lower left corner, it moves by the difference of their sizes.
   */
  #see(resting: Pose, moving: Pose): Seen {
    const levels = new Set<number>();
    for (const top of resting.tops) for (const bottom of moving.bottoms) levels.add(top - bottom);
    for (const bottom of resting.bottoms) for (const top of moving.tops) levels.add(bottom - top);
    const [r, m] = [this.#poses.get(resting.id ^ 2), this.#poses.get(moving.id ^ 2)];
    const ways: [number, number, Place | undefined][] = [
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
      meeting: undefined,
      resting: best[0],
      moving: best[1],
      flip: best[2],
    };
  }
}

/** As `Meeting.sectionsAt`, for a meeting as it is seen. */
export function sectionsSeen(
  meeting: Meeting,
  flip: Place | undefined,
  y: number,
  dx: number,
  into: Float64Array,
  at: number,
): number {
  if (!flip) return meeting.sectionsAt(y, dx, into, at);
  const written = meeting.sectionsAt(flip.y - y, 0, into, at);
  const across = flip.x + dx;
  for (let i = at, j = at + written - 1; i <= j; i += 1, j -= 1) {
    const from = across - into[j]!;
    into[j] = across - into[i]!;
    into[i] = from;
  }
  return written;
}
