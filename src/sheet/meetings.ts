/** Every meeting of two poses that is asked for, computed once. */

import { Meeting } from './meeting.ts';
import type { Pace } from './pace.ts';
import type { Pose } from './pose.ts';

/** Kept at a time, in edges; beyond, all are forgotten and made anew as they are asked for. An edge takes 5 bytes. */
const maxKept = 20_000_000;

/** How much longer it takes to make an edge than to look at it. */
const costOfMaking = 1.5;

/** Where a pose that moves would overlap one that rests, relative to its place. */
export interface Seen {
  readonly meeting: Meeting;
  /** The meeting is turned by half a turn and moved by this: that of the same two with their parts exchanged, or both turned. */
  readonly flip: { readonly x: number; readonly y: number } | undefined;
  readonly minY: number;
  readonly maxY: number;
  readonly levels: readonly number[];
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

  of(resting: Pose, moving: Pose, pace: Pace): Seen {
    const key = resting.id * this.#poseLimit + moving.id;
    const known = this.#seen.get(key);
    if (known) return known;
    if (this.#kept > maxKept) {
      this.#seen.clear();
      this.#made.clear();
      this.#kept = 0;
    }
    const seen = this.#see(resting, moving, pace);
    this.#seen.set(key, seen);
    return seen;
  }

  /**
   * A position at which B meets A is, the other way round, one at which A meets B. And where both are turned by half a turn,
   * their meeting is; as a pose begins at its lower left corner, it moves by the difference of their sizes.
   */
  #see(resting: Pose, moving: Pose, pace: Pace): Seen {
    const [r, m] = [this.#poses.get(resting.id ^ 2), this.#poses.get(moving.id ^ 2)];
    const turned = r && m ? { x: resting.width - moving.width, y: resting.height - moving.height } : undefined;
    const ways: [number, number, Seen['flip']][] = [
      [resting.id, moving.id, undefined],
      [moving.id, resting.id, { x: 0, y: 0 }],
    ];
    if (turned) ways.push([resting.id ^ 2, moving.id ^ 2, turned]);
    let best = ways[0]!;
    for (const way of ways) {
      if (way[0] < best[0] || (way[0] === best[0] && way[1] < best[1])) best = way;
    }
    const [still, goes, flip] = best;
    const meeting = this.#make(this.#poses.get(still)!, this.#poses.get(goes)!, pace);
    if (!flip) {
      const { minY, maxY, levels } = meeting;
      return { meeting, flip, minY, maxY, levels };
    }
    const levels = meeting.levels.map((level) => flip.y - level);
    return { meeting, flip, minY: flip.y - meeting.maxY, maxY: flip.y - meeting.minY, levels };
  }

  #make(resting: Pose, moving: Pose, pace: Pace): Meeting {
    const key = resting.id * this.#poseLimit + moving.id;
    const known = this.#made.get(key);
    if (known) return known;
    const meeting = new Meeting(resting, moving);
    this.#made.set(key, meeting);
    this.#kept += meeting.size;
    pace.spent += costOfMaking * meeting.size;
    return meeting;
  }
}

/** As `Meeting.sectionsAt`, for what is seen. */
export function sectionsSeen({ meeting, flip }: Seen, y: number, dx: number, into: Float64Array, at: number): number {
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
