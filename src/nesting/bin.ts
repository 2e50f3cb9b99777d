/**
 * Bin: a sheet being filled, with the parts on it, and the search for room for one more. Lengths in mm, margins
 * excluded.
 */

import type { BinSize, Position } from './layout.ts';
import { sectionsSeen } from './no-fit-polygons.ts';
import type { NoFitPolygons, LevelSection } from './no-fit-polygons.ts';
import type { WorkBudget } from './work-budget.ts';
import type { Orientation } from './orientation.ts';
import { slackMm } from './orientation.ts';
import { Rows } from './rows.ts';

export interface LowestPosition extends Position {
  /** No room for the orientation anywhere below this height. */
  readonly floor: number;
}

/** Tolerance for fitting, in mm. */
export const fitMm = 1e-6;

/** Spacing of trial levels as a share of the part's height, limited in mm; the best level is then refined. */
const levelShare = 1 / 12;
const levelMm = [0.3, 4] as const;
const closeMm = 0.002;

export function fitsInto(room: BinSize, orientation: Orientation): boolean {
  return orientation.width <= room.width + fitMm && orientation.height <= room.height + fitMm;
}

export interface Preference {
  /** Cost of a mm to the right, in mm of height: above 0, parts are drawn towards the corner. */
  readonly tilt: number;
  /** Number of equal columns that the sheet is divided into and parts keep within; 0 for none. */
  readonly columns: number;
}

/** Fixed work for a level, expressed in edges. */
const edgesOfLevel = 10;

/** Sections of everything on the level; a buffer reused between calls. */
let sections = new Float64Array(4096);

export class Bin {
  readonly #room: BinSize;
  readonly orientations: Orientation[] = [];
  readonly xs: number[] = [];
  readonly ys: number[] = [];
  readonly #noFits: NoFitPolygons;
  readonly #budget: WorkBudget;
  readonly #rows: Rows;

  constructor(room: BinSize, noFits: NoFitPolygons, budget: WorkBudget) {
    this.#room = room;
    this.#noFits = noFits;
    this.#budget = budget;
    this.#rows = new Rows(room);
  }

  lay(orientation: Orientation, { x, y }: Position): void {
    this.#rows.lay(orientation, x, y);
    this.#budget.spent += edgesOfLevel * orientation.height;
    this.orientations.push(orientation);
    this.xs.push(x);
    this.ys.push(y);
  }

  /**
   * The cheapest place for an orientation, where cost is height plus `tilt` times the distance from the left. Tries the
   * levels at which it would touch something along a horizontal edge, and others at regular intervals, and refines the
   * best downwards. Levels below `above` are known to have no room. The orientation must fit into the sheet.
   */
  async lowest(
    orientation: Orientation,
    above: number,
    { tilt, columns }: Preference,
  ): Promise<LowestPosition | undefined> {
    const seen = this.orientations.map((resting) => this.#noFits.of(resting, orientation));
    const top = Math.max(0, this.#room.height - orientation.height);
    const pitch = Math.min(levelMm[1], Math.max(levelMm[0], orientation.height * levelShare));
    let below = -1;
    let best: LowestPosition | undefined;
    for (const level of this.#levels(seen, top, above, pitch)) {
      // Nothing higher up can cost less, however far to the left.
      if (best && level >= best.y + tilt * best.x) break;
      await this.#prepare(orientation, seen, level);
      const x = this.#leftmost(orientation, seen, level, columns);
      if (x !== undefined && (!best || level + tilt * x < best.y + tilt * best.x)) {
        const place = this.#closeIn(orientation, seen, { x, y: level }, below, { tilt, columns });
        best = { ...place, floor: best?.floor ?? place.y };
      }
      below = level;
      if (this.#budget.isDue) await this.#budget.pause();
    }
    return best;
  }

  /** Builds the no-fit polygons that a level needs, with pauses: on a sheet full of different parts there are many. */
  async #prepare(orientation: Orientation, seen: readonly LevelSection[], y: number): Promise<void> {
    if (!this.#rows.mayHold(orientation, y)) return;
    for (let i = 0; i < seen.length; i += 1) {
      const each = seen[i]!;
      const level = y - this.ys[i]!;
      if (each.noFit || level <= each.minY || level >= each.maxY) continue;
      this.#noFits.make(each, this.#budget);
      if (this.#budget.isDue) await this.#budget.pause();
    }
  }

  /** Ascending, without duplicates. */
  #levels(seen: readonly LevelSection[], top: number, above: number, pitch: number): number[] {
    const levels = above <= 0 ? [0] : [above];
    if (top > above) levels.push(top);
    for (let i = 0; i < seen.length; i += 1) {
      if (this.ys[i]! + seen[i]!.maxY < above) continue;
      for (const level of seen[i]!.levels) {
        const y = this.ys[i]! + level;
        // A part that touches the edge of the sheet up to rounding counts as touching it.
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

  /** Bisects between a place and a lower level that is no better; returns the best place found. */
  #closeIn(
    orientation: Orientation,
    seen: readonly LevelSection[],
    place: Position,
    below: number,
    { tilt, columns }: Preference,
  ): Position {
    if (below < 0) return place;
    let best = place;
    let low = below;
    while (best.y - low > closeMm) {
      const y = (low + best.y) / 2;
      const x = this.#leftmost(orientation, seen, y, columns);
      if (x === undefined || y + tilt * x > best.y + tilt * best.x) low = y;
      else best = { x, y };
    }
    return best;
  }

  /** Leftmost x with room on a level; `undefined` if there is none. */
  #leftmost(orientation: Orientation, seen: readonly LevelSection[], y: number, columns: number): number | undefined {
    this.#budget.spent += edgesOfLevel;
    if (!this.#rows.mayHold(orientation, y)) return undefined;
    const right = Math.max(0, this.#room.width - orientation.width);
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
      const noFit = each.noFit ?? this.#noFits.make(each, this.#budget);
      const written = sectionsSeen(noFit, each.flip, level, this.xs[i]!, sections, count);
      this.#budget.spent += noFit.edgesPerLevel;
      for (let pair = count; pair < count + written; pair += 2) sortIn(pair);
      count += written;
    }
    let free = 0;
    let isWall = true;
    for (let i = 0; ; i += 2) {
      const to = i < count ? Math.min(sections[i]!, right) : right;
      // Sections that meet at a point are merged; a gap that just fits is as wide as the outlines are thinned.
      if (to - free > slackMm || (isWall && to === right)) {
        // Outlines are thinned; moves from where they would touch to where the true ones do, as far as there is room.
        const room = to < right ? (to - free) / 2 : to - free;
        const x = this.#columnFrom(orientation, isWall ? free : free + Math.min(2 * slackMm, room), columns);
        if (x <= to + fitMm / 10) return Math.min(x, to);
      }
      if (i >= count) return undefined;
      if (sections[i + 1]! <= free) continue;
      free = sections[i + 1]!;
      isWall = false;
      if (free > right) return undefined;
    }
  }

  /**
   * The first place from `x` at which an orientation stays within a column, or within as few adjacent ones as it needs.
   */
  #columnFrom(orientation: Orientation, x: number, columns: number): number {
    if (columns === 0) return x;
    const pitch = (this.#room.width + this.#room.gap) / columns;
    const wide = Math.ceil((orientation.width + this.#room.gap) / pitch - fitMm);
    const column = Math.floor(x / pitch + fitMm);
    const isWithin = x - column * pitch <= wide * pitch - this.#room.gap - orientation.width + fitMm;
    return isWithin ? x : (column + 1) * pitch;
  }
}

/** Insertion sort step: moves the pair at `at` to its place among the pairs before it, by start. */
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
