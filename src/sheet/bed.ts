/** A sheet that is being filled: what lies on it, and where there is room for one more. Lengths in mm, margins left out. */

import { sectionsSeen } from './meetings.ts';
import type { Meetings, Seen } from './meetings.ts';
import type { Pace } from './pace.ts';
import type { Pose } from './pose.ts';
import { slackMm } from './pose.ts';
import { Rows } from './rows.ts';

export interface Place {
  readonly x: number;
  readonly y: number;
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

/** The sheet less its margins, and how far the outline of a part may reach beyond it: half the gap between parts. */
export interface Room {
  readonly width: number;
  readonly height: number;
  readonly overhang: number;
}

/** Sections of all that lies on the level, kept between calls. */
let sections = new Float64Array(4096);

export class Bed {
  readonly width: number;
  readonly height: number;
  readonly poses: Pose[] = [];
  readonly xs: number[] = [];
  readonly ys: number[] = [];
  readonly #meetings: Meetings;
  readonly #pace: Pace;
  readonly #rows: Rows;

  constructor(room: Room, meetings: Meetings, pace: Pace) {
    this.width = room.width;
    this.height = room.height;
    this.#meetings = meetings;
    this.#pace = pace;
    this.#rows = new Rows(room);
  }

  lay(pose: Pose, { x, y }: Place): void {
    this.#rows.lay(pose, x, y);
    this.poses.push(pose);
    this.xs.push(x);
    this.ys.push(y);
  }

  /**
   * The lowest place for a pose, and there the leftmost: among the levels at which it would touch something along a level
   * edge, and others at even distances, the first with room, then as low as there is room without a break. Levels below
   * `above` are known to have none. The pose fits into the sheet.
   */
  async lowest(pose: Pose, above: number): Promise<Place | undefined> {
    const seen = this.poses.map((resting) => this.#meetings.of(resting, pose));
    const top = Math.max(0, this.height - pose.height);
    const pitch = Math.min(levelMm[1], Math.max(levelMm[0], pose.height * levelShare));
    const levels = this.#levels(seen, top, above, pitch);
    let below = -1;
    for (const level of levels) {
      const x = this.#leftmost(pose, seen, level);
      if (x !== undefined) return this.#closeIn(pose, seen, { x, y: level }, below);
      below = level;
      if (this.#pace.isDue) await this.#pace.pause();
    }
    return undefined;
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

  /** Between a level with no room and one with room above it, the lowest with room that halving finds. */
  #closeIn(pose: Pose, seen: readonly Seen[], place: Place, below: number): Place {
    if (below < 0) return place;
    let best = place;
    let low = below;
    while (best.y - low > closeMm) {
      const y = (low + best.y) / 2;
      const x = this.#leftmost(pose, seen, y);
      if (x === undefined) low = y;
      else best = { x, y };
    }
    return best;
  }

  /** How far from the left there is room on a level. */
  #leftmost(pose: Pose, seen: readonly Seen[], y: number): number | undefined {
    if (!this.#rows.mayHold(pose, y)) return undefined;
    const right = Math.max(0, this.width - pose.width);
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
    let x = 0;
    let isWall = true;
    for (let i = 0; i < count; i += 2) {
      const [from, to] = [sections[i]!, sections[i + 1]!];
      if (from >= x) return from < right ? settled(x, from, isWall, false) : settled(x, right, isWall, true);
      if (to <= x) continue;
      x = to;
      isWall = false;
      if (x > right) return undefined;
    }
    return settled(x, right, isWall, true);
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

/** Outlines are thinned; back from where they would touch to where the true ones do, as far as there is room. */
function settled(from: number, to: number, isWall: boolean, isToWall: boolean): number {
  if (isWall) return from;
  return isToWall ? Math.min(from + 2 * slackMm, to) : from + Math.min(2 * slackMm, (to - from) / 2);
}
