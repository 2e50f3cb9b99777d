/** Filling sheets with parts in a given order: each goes where it comes to lie lowest, on the first sheet that has room for it. */

import { Bed, fitsInto } from './bin.ts';
import type { Aim, Place, Room } from './bin.ts';
import type { Meetings } from './no-fit-polygons.ts';
import type { Pace } from './work-budget.ts';
import type { Pose } from './orientation.ts';

/** A part that waits to be laid, and the poses it may take. */
export interface Waiting {
  readonly part: number;
  readonly poses: readonly Pose[];
}

export interface Laid extends Place {
  readonly part: number;
  readonly pose: Pose;
  readonly sheet: number;
}

/** How places are chosen. */
export interface Manner extends Aim {
  /** What tells how low a part lies, where one pose is held against another. */
  readonly by: 'top' | 'middle' | 'bottom';
}

/** More than there are poses. */
const keysPerSheet = 2 ** 20;

interface Step extends Laid {
  /** What has been learnt on the way: below which height which pose finds no room on which sheet. */
  readonly learnt: readonly (readonly [key: number, height: number])[];
}

export class Filling {
  readonly #room: Room;
  readonly #meetings: Meetings;
  readonly #pace: Pace;
  readonly beds: Bed[] = [];
  readonly laid: Step[] = [];
  readonly #known = new Map<number, number>();

  constructor(room: Room, meetings: Meetings, pace: Pace) {
    this.#room = room;
    this.#meetings = meetings;
    this.#pace = pace;
  }

  /** Another that has laid the first `count` parts in the same way. */
  upTo(count: number): Filling {
    const filling = new Filling(this.#room, this.#meetings, this.#pace);
    for (const step of this.laid.slice(0, count)) filling.#take(step);
    return filling;
  }

  /** Lays one part. At least one of its poses fits into the room. */
  async lay({ part, poses }: Waiting, manner: Manner): Promise<void> {
    const learnt: [number, number][] = [];
    for (let sheet = 0; ; sheet += 1) {
      const bed = (this.beds[sheet] ??= new Bed(this.#room, this.#meetings, this.#pace));
      let best: (Place & { readonly pose: Pose; readonly cost: number }) | undefined;
      for (const pose of poses) {
        if (!fitsInto(this.#room, pose)) continue;
        const key = sheet * keysPerSheet + pose.id;
        const above = this.#known.get(key) ?? 0;
        if (above === Infinity) continue;
        const place = await bed.lowest(pose, above, manner);
        learnt.push([key, place?.floor ?? Infinity]);
        this.#known.set(key, place?.floor ?? Infinity);
        if (!place) continue;
        const lift = manner.by === 'top' ? pose.height : manner.by === 'middle' ? pose.middle : 0;
        const cost = place.y + lift + manner.tilt * place.x;
        if (!best || cost < best.cost - 1e-6 || (cost < best.cost + 1e-6 && place.x < best.x)) {
          best = { ...place, pose, cost };
        }
      }
      if (!best) continue;
      this.#take({ part, pose: best.pose, sheet, x: best.x, y: best.y, learnt });
      return;
    }
  }

  #take(step: Step): void {
    const bed = (this.beds[step.sheet] ??= new Bed(this.#room, this.#meetings, this.#pace));
    bed.lay(step.pose, step);
    for (const [key, height] of step.learnt) this.#known.set(key, height);
    this.laid.push(step);
  }
}
