/**
 * Searches for the shortest strip that holds a set of parts: they are placed at random in a strip with roughly enough
 * room and separated, then again and again in a slightly shorter strip. First in large steps, with parts scattered
 * after failures; then in small ones.
 */

import type { WorkBudget } from '../work-budget.ts';
import { Board } from './board.ts';
import { Overlaps } from './overlaps.ts';
import type { PenetrationFields } from './penetration-fields.ts';
import { separate } from './separate.ts';
import type { SeparationRule } from './separate.ts';

/** Place of each part: its turn, and its box centre. */
export interface StripArrangement {
  readonly height: number;
  readonly turns: Uint8Array;
  readonly xs: Float64Array;
  readonly ys: Float64Array;
}

export interface StripTask {
  readonly fields: PenetrationFields;
  /** For each part. */
  readonly kinds: readonly number[];
  readonly width: number;
  /**
   * Number of parts, from the first, that can be moved. The others stay as in `known`, and the strip may end below
   * them.
   */
  readonly movable: number;
  /** Lower bound on the height of the strip. */
  readonly leastHeight: number;
  /** An existing layout, which the result must not be worse than. */
  readonly known: StripArrangement;
  readonly random: () => number;
  /**
   * Starts from the known layout and looks for places nearby only, so that few pairs of different shapes ever meet. For
   * shapes whose fields would take most of the effort.
   */
  readonly isLocal: boolean;
}

/**
 * Shares of the effort, of the strip's height and of the parts; and numbers of rounds without improvement before giving
 * up.
 */
export const schedule = {
  /** Shares at which the random start ends, and then the large steps. */
  beginShare: 0.4,
  explore: 0.75,
  /** The random start uses a strip shorter than the known one by the first share, widened by the second. */
  shorter: 0.08,
  widen: 0.02,
  beginIdle: 10,
  shrink: 0.012,
  exploreIdle: 40,
  /** Small steps: first and last. */
  compressFrom: 0.005,
  compressTo: 0.0001,
  compressIdle: 25,
  /** Among this share of the largest parts, two are exchanged after a large step has failed. */
  largeShare: 0.5,
};

/**
 * Number of places evaluated for a part. Few and many moves find more than many and few: of 50 places anywhere and 14 nearby for each
 * orientation, a fifth brought the mean of five sets a point further in the same time.
 */
const places = { anywhere: 12, nearby: 6 };
const placesNearby = { anywhere: 0, nearby: 12 };

export class StripSearch {
  readonly #task: StripTask;
  readonly #budget: WorkBudget;
  readonly #board: Board;
  readonly #overlaps: Overlaps;
  #best: StripArrangement | undefined;
  readonly #onBetter: (best: StripArrangement) => void;

  constructor(task: StripTask, budget: WorkBudget, onBetter: (best: StripArrangement) => void) {
    this.#task = task;
    this.#budget = budget;
    const { known, movable } = task;
    this.#board = new Board(task.fields, task.kinds, task.width, known.height, movable);
    this.#overlaps = new Overlaps(this.#board);
    for (let part = movable; part < task.kinds.length; part += 1)
      this.#board.settle(part, known.turns[part]!, known.xs[part]!, known.ys[part]!);
    this.#onBetter = onBetter;
  }

  /** Returns the best arrangement found. `until`: share of the budget at which to end. */
  async run(until: number): Promise<StripArrangement> {
    const from = this.#budget.share;
    const exploreUntil = from + schedule.explore * (until - from);
    if (this.#task.isLocal) this.#best = this.#task.known;
    else await this.#begin(from + schedule.beginShare * (until - from));
    await this.#explore(exploreUntil);
    await this.#compress(until);
    return this.#best ?? this.#task.known;
  }

  #rule(idleRounds: number, until: number): SeparationRule {
    const { random, isLocal } = this.#task;
    return { idleRounds, random, ...(isLocal ? placesNearby : places), until };
  }

  /**
   * Random placement in a strip shorter than the known one, which is widened until the parts separate or it is no
   * shorter than the known one.
   */
  async #begin(until: number): Promise<void> {
    const { random, known, leastHeight } = this.#task;
    const board = this.#board;
    board.height = Math.max(leastHeight, known.height * (1 - schedule.shorter));
    for (let part = 0; part < board.movable; part += 1) this.#throw(part);
    this.#overlaps.measureAll();
    while (this.#budget.share < until && board.height < known.height) {
      if (await separate(this.#overlaps, this.#rule(schedule.beginIdle, until), this.#budget)) {
        this.#take();
        return;
      }
      this.#resize(board.height * (1 + schedule.widen), random() * board.height);
    }
    this.#best = known;
  }

  #throw(part: number): void {
    const { random } = this.#task;
    const board = this.#board;
    const all = board.turnsOf(part).filter((turn) => board.fits(part, turn));
    const turn = all[Math.floor(random() * all.length)] ?? board.turns[part]!;
    board.put(part, turn, random() * board.width, random() * board.height);
  }

  async #explore(until: number): Promise<void> {
    const board = this.#board;
    const { random, leastHeight } = this.#task;
    let hasFailed = false;
    while (this.#best && this.#budget.share < until && this.#best.height > leastHeight + 1e-6) {
      const target = Math.max(leastHeight, this.#best.height * (1 - schedule.shrink));
      this.#put(this.#best);
      this.#overlaps.level();
      if (hasFailed) this.#scatter();
      this.#resize(target, random() * this.#best.height);
      let isApart = await separate(this.#overlaps, this.#rule(schedule.exploreIdle, until), this.#budget);
      if (!isApart && this.#budget.share < until) {
        this.#resize((target + this.#best.height) / 2, random() * board.height);
        isApart = await separate(this.#overlaps, this.#rule(schedule.exploreIdle / 2, until), this.#budget);
      }
      if (isApart) this.#take();
      hasFailed = !isApart;
    }
  }

  async #compress(until: number): Promise<void> {
    const { random, leastHeight } = this.#task;
    const from = this.#budget.share;
    while (this.#best && this.#budget.share < until && this.#best.height > leastHeight + 1e-6) {
      const done = (this.#budget.share - from) / (until - from);
      const shrink = schedule.compressFrom * (schedule.compressTo / schedule.compressFrom) ** done;
      this.#put(this.#best);
      this.#overlaps.level();
      this.#resize(Math.max(leastHeight, this.#best.height * (1 - shrink)), random() * this.#best.height);
      if (await separate(this.#overlaps, this.#rule(schedule.compressIdle, until), this.#budget)) this.#take();
    }
  }

  /** Changes the height, moving the parts above the cut by the difference. */
  #resize(height: number, cut: number): void {
    const board = this.#board;
    const by = height - board.height;
    board.height = height;
    for (let part = 0; part < board.movable; part += 1) {
      // A part that is now too tall in its orientation is placed at random, turned.
      if (!board.fits(part, board.turns[part]!)) this.#throw(part);
      else board.put(part, board.turns[part]!, board.xs[part]!, board.ys[part]! + (board.ys[part]! > cut ? by : 0));
    }
    this.#overlaps.measureAll();
  }

  /** Exchanges two large, different parts, to move the search elsewhere. */
  #scatter(): void {
    const { random, kinds } = this.#task;
    const board = this.#board;
    const bySize = [...kinds.slice(0, board.movable).keys()].sort((a, b) => board.size(b) - board.size(a));
    const large = bySize.slice(0, Math.max(2, Math.ceil(bySize.length * schedule.largeShare)));
    const a = large[Math.floor(random() * large.length)]!;
    const others = large.filter((part) => kinds[part] !== kinds[a]);
    const b = others[Math.floor(random() * others.length)];
    if (b === undefined) return;
    const [ax, ay] = [board.xs[a]!, board.ys[a]!];
    board.put(a, board.turns[a]!, board.xs[b]!, board.ys[b]!);
    board.put(b, board.turns[b]!, ax, ay);
  }

  #take(): void {
    const board = this.#board;
    let height = this.#task.leastHeight;
    for (let part = 0; part < board.movable; part += 1) {
      height = Math.max(height, board.ys[part]! + board.leastY(part, board.turns[part]!));
    }
    this.#best = { height, turns: board.turns.slice(), xs: board.xs.slice(), ys: board.ys.slice() };
    this.#onBetter(this.#best);
  }

  #put({ height, turns, xs, ys }: StripArrangement): void {
    const board = this.#board;
    board.height = height;
    for (let part = 0; part < board.movable; part += 1) board.put(part, turns[part]!, xs[part]!, ys[part]!);
  }
}
