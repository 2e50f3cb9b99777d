/** A sheet that is being filled: what lies on it, and where there is room for one more. Lengths in mm, margins left out. */

import { sectionsSeen } from './no-fit-polygons.ts';
import type { Meetings, Seen } from './no-fit-polygons.ts';
import type { Pace } from './work-budget.ts';
import type { Pose } from './orientation.ts';
import { slackMm } from './orientation.ts';
import { Rows } from './rows.ts';

export interface Place {
  readonly x: number;
  readonly y: number;
}

export interface Lowest extends Place {
  /** Below this there is no room for the pose anywhere. */
  readonly floor: number;
}

/** What fits but for this many mm fits. */
export const fitMm = 1e-6;

/** Levels are tried this share of a part's height apart, within limits in mm, and the best is then closed in on. */
const levelShare = 1 / 12;
const levelMm = [0.3, 4] as const;
const closeMm = 0.002;

export function fitsInto(room: Room, pose: Pose): boolean {
  return pose.width <= room.width + fitMm && pose.height <= room.height + fitMm;
}

/** The sheet less its margins, and what is kept between parts. */
export interface Room {
  readonly width: number;
  readonly height: number;
  readonly gap: number;
}

/** What a place is to be like. */
export interface Aim {
  /** What a mm to the right costs, in mm of height: above 0, parts are drawn towards the corner. */
  readonly tilt: number;
  /** Into how many columns of equal width the sheet is divided, within which parts keep; 0 for none. */
  readonly columns: number;
}

/** What else there is to do for a level takes as long as so many edges. */
const edgesOfLevel = 10;

/** Sections of all that lies on the level, kept between calls. */
let sections = new Float64Array(4096);

export class Bed {
  readonly #room: Room;
  readonly poses: Pose[] = [];
  readonly xs: number[] = [];
  readonly ys: number[] = [];
  readonly #meetings: Meetings;
  readonly #pace: Pace;
  readonly #rows: Rows;

  constructor(room: Room, meetings: Meetings, pace: Pace) {
    this.#room = room;
    this.#meetings = meetings;
    this.#pace = pace;
    this.#rows = new Rows(room);
  }

  lay(pose: Pose, { x, y }: Place): void {
    this.#rows.lay(pose, x, y);
    this.#pace.spent += edgesOfLevel * pose.height;
    this.poses.push(pose);
    this.xs.push(x);
    this.ys.push(y);
  }

  /**
   * The place for a pose that costs least, where height costs its mm and the way to the right as it is aimed: that of
   * the levels at which it would touch something along a level edge, and of others at even distances, closed in on downwards.
   * Levels below `above` are known to have no room. The pose fits into the sheet.
   */
  async lowest(pose: Pose, above: number, { tilt, columns }: Aim): Promise<Lowest | undefined> {
    const seen = this.poses.map((resting) => this.#meetings.of(resting, pose));
    const top = Math.max(0, this.#room.height - pose.height);
    const pitch = Math.min(levelMm[1], Math.max(levelMm[0], pose.height * levelShare));
    let below = -1;
    let best: Lowest | undefined;
    for (const level of this.#levels(seen, top, above, pitch)) {
      // Nothing higher up can cost less, however far to the left.
      if (best && level >= best.y + tilt * best.x) break;
      await this.#prepare(pose, seen, level);
      const x = this.#leftmost(pose, seen, level, columns);
      if (x !== undefined && (!best || level + tilt * x < best.y + tilt * best.x)) {
        const place = this.#closeIn(pose, seen, { x, y: level }, below, { tilt, columns });
        best = { ...place, floor: best?.floor ?? place.y };
      }
      below = level;
      if (this.#pace.isDue) await this.#pace.pause();
    }
    return best;
  }

  /** Makes the meetings that a level needs, with pauses: a level of a sheet full of different parts takes many. */
  async #prepare(pose: Pose, seen: readonly Seen[], y: number): Promise<void> {
    if (!this.#rows.mayHold(pose, y)) return;
    for (let i = 0; i < seen.length; i += 1) {
      const each = seen[i]!;
      const level = y - this.ys[i]!;
      if (each.meeting || level <= each.minY || level >= each.maxY) continue;
      this.#meetings.make(each, this.#pace);
      if (this.#pace.isDue) await this.#pace.pause();
    }
  }

  /** Ascending, none twice. */
  #levels(seen: readonly Seen[], top: number, above: number, pitch: number): number[] {
    const levels = above <= 0 ? [0] : [above];
    if (top > above) levels.push(top);
    for (let i = 0; i < seen.length; i += 1) {
      if (this.ys[i]! + seen[i]!.maxY < above) continue;
      for (const level of seen[i]!.levels) {
        const y = this.ys[i]! + level;
        // What touches the edge of the sheet but for rounding touches it.
        if (y > above && y <= top + fitMm) levels.push(Math.min(y, top));
      }
    }
    for (let step = Math.floor(above / pitch) + 1; step * pitch < top; step += 1) levels.push(step * pitch);
    const sorted = Float64Array.from(levels).sort();
    levels.length = 0;
    let last = -Infinity;
    for (const level of sorted) {
      if (level - last <= fitMm / 10) continue;
      levels.push(level);
      last = level;
    }
    return levels;
  }

  /** Between a place and a level below that is no better, the best that halving finds. */
  #closeIn(pose: Pose, seen: readonly Seen[], place: Place, below: number, { tilt, columns }: Aim): Place {
    if (below < 0) return place;
    let best = place;
    let low = below;
    while (best.y - low > closeMm) {
      const y = (low + best.y) / 2;
      const x = this.#leftmost(pose, seen, y, columns);
      if (x === undefined || y + tilt * x > best.y + tilt * best.x) low = y;
      else best = { x, y };
    }
    return best;
  }

  /** How far from the left there is room on a level. */
  #leftmost(pose: Pose, seen: readonly Seen[], y: number, columns: number): number | undefined {
    this.#pace.spent += edgesOfLevel;
    if (!this.#rows.mayHold(pose, y)) return undefined;
    const right = Math.max(0, this.#room.width - pose.width);
    let count = 0;
    for (let i = 0; i < seen.length; i += 1) {
      const each = seen[i]!;
      const level = y - this.ys[i]!;
      if (level <= each.minY || level >= each.maxY) continue;
      if (count + 512 > sections.length) {
        const larger = new Float64Array(2 * sections.length);
        larger.set(sections);
        sections = larger;
      }
      const meeting = each.meeting ?? this.#meetings.make(each, this.#pace);
      const written = sectionsSeen(meeting, each.flip, level, this.xs[i]!, sections, count);
      this.#pace.spent += meeting.edgesPerLevel;
      for (let pair = count; pair < count + written; pair += 2) sortIn(pair);
      count += written;
    }
    let free = 0;
    let isWall = true;
    for (let i = 0; ; i += 2) {
      const to = i < count ? Math.min(sections[i]!, right) : right;
      // Sections that end and begin at the same place are one; room that just fits is as wide as the thinning of the outlines.
      if (to - free > slackMm || (isWall && to === right)) {
        // Outlines are thinned; back from where they would touch to where the true ones do, as far as there is room.
        const room = to < right ? (to - free) / 2 : to - free;
        const x = this.#columnFrom(pose, isWall ? free : free + Math.min(2 * slackMm, room), columns);
        if (x <= to + fitMm / 10) return Math.min(x, to);
      }
      if (i >= count) return undefined;
      if (sections[i + 1]! <= free) continue;
      free = sections[i + 1]!;
      isWall = false;
      if (free > right) return undefined;
    }
  }

  /** The first place from `x` at which a pose keeps within a column, or within as few beside each other as it takes. */
  #columnFrom(pose: Pose, x: number, columns: number): number {
    if (columns === 0) return x;
    const pitch = (this.#room.width + this.#room.gap) / columns;
    const wide = Math.ceil((pose.width + this.#room.gap) / pitch - fitMm);
    const column = Math.floor(x / pitch + fitMm);
    const isWithin = x - column * pitch <= wide * pitch - this.#room.gap - pose.width + fitMm;
    return isWithin ? x : (column + 1) * pitch;
  }
}

/** Moves the pair at `at` to where it belongs among those before it, by where they begin. */
function sortIn(at: number): void {
  const [from, to] = [sections[at]!, sections[at + 1]!];
  let slot = at;
  for (; slot > 0 && sections[slot - 2]! > from; slot -= 2) {
    sections[slot] = sections[slot - 2]!;
    sections[slot + 1] = sections[slot - 1]!;
  }
  sections[slot] = from;
  sections[slot + 1] = to;
}
