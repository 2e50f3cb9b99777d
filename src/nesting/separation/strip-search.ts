/**
 * Parts in as short a strip as can be found: laid at random where there is about enough room and separated, then again and again in a
 * strip that is a little shorter. First by large steps, with parts thrown about where that fails; then by small ones.
 */

import type { WorkBudget } from '../work-budget.ts';
import { Board } from './board.ts';
import type { PenetrationFields } from './penetration-fields.ts';
import { separate } from './separate.ts';
import type { SeparationRule } from './separate.ts';

/** Where each part lies: how it is turned, and the middle of its box. */
export interface Arrangement {
  readonly height: number;
  readonly turns: Uint8Array;
  readonly xs: Float64Array;
  readonly ys: Float64Array;
}

export interface StripTask {
  readonly fields: PenetrationFields;
  /** Of each part. */
  readonly kinds: readonly number[];
  readonly width: number;
  /** How many of them, the first, may be moved. The others lie as `known` has them, and the strip may end below them. */
  readonly movable: number;
  /** No strip can be shorter. */
  readonly leastHeight: number;
  /** A layout that there is: it is not to be worse. */
  readonly known: Arrangement;
  readonly random: () => number;
}

/** Shares of the effort, of the height of the strip and of the parts; rounds that bring nothing until it is given up. */
export const schedule = {
  /** Beginning at random, and then large steps, end at these shares. */
  beginShare: 0.4,
  explore: 0.75,
  /** The random start is in a strip that is shorter than the one known by this, and widened by that. */
  shorter: 0.08,
  widen: 0.02,
  beginIdle: 10,
  shrink: 0.012,
  exploreIdle: 40,
  /** Small steps, from and to. */
  compressFrom: 0.005,
  compressTo: 0.0001,
  compressIdle: 25,
  /** Parts among the largest, by this share, are exchanged where a large step has failed. */
  largeShare: 0.5,
};

export class StripSearch {
  readonly #task: StripTask;
  readonly #budget: WorkBudget;
  readonly #board: Board;
  #best: Arrangement | undefined;
  readonly #onBetter: (best: Arrangement) => void;

  constructor(task: StripTask, budget: WorkBudget, onBetter: (best: Arrangement) => void) {
    this.#task = task;
    this.#budget = budget;
    const { known, movable } = task;
    this.#board = new Board(task.fields, task.kinds, task.width, known.height, movable);
    for (let part = movable; part < task.kinds.length; part += 1)
      this.#board.settle(part, known.turns[part]!, known.xs[part]!, known.ys[part]!);
    this.#onBetter = onBetter;
  }

  /** The best that was found. `until`: the share of the budget to end at. */
  async run(until: number): Promise<Arrangement> {
    const from = this.#budget.share;
    const exploreUntil = from + schedule.explore * (until - from);
    await this.#begin(from + schedule.beginShare * (until - from));
    await this.#explore(exploreUntil);
    await this.#compress(until);
    return this.#best ?? this.#task.known;
  }

  #rule(idleRounds: number, until: number): SeparationRule {
    return { idleRounds, random: this.#task.random, anywhere: 50, until };
  }

  /** At random in a shorter strip than is known, with more room until it comes apart, or is as long as that. */
  async #begin(until: number): Promise<void> {
    const { random, known, leastHeight } = this.#task;
    const board = this.#board;
    board.height = Math.max(leastHeight, known.height * (1 - schedule.shorter));
    for (let part = 0; part < board.movable; part += 1) this.#throw(part);
    board.measureAll();
    while (this.#budget.share < until && board.height < known.height) {
      if (await separate(board, this.#rule(schedule.beginIdle, until), this.#budget)) {
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
      board.weights.fill(1);
      if (hasFailed) this.#scatter();
      this.#resize(target, random() * this.#best.height);
      let isApart = await separate(board, this.#rule(schedule.exploreIdle, until), this.#budget);
      if (!isApart && this.#budget.share < until) {
        this.#resize((target + this.#best.height) / 2, random() * board.height);
        isApart = await separate(board, this.#rule(schedule.exploreIdle / 2, until), this.#budget);
      }
      if (isApart) this.#take();
      hasFailed = !isApart;
    }
  }

  async #compress(until: number): Promise<void> {
    const board = this.#board;
    const { random, leastHeight } = this.#task;
    const from = this.#budget.share;
    while (this.#best && this.#budget.share < until && this.#best.height > leastHeight + 1e-6) {
      const done = (this.#budget.share - from) / (until - from);
      const shrink = schedule.compressFrom * (schedule.compressTo / schedule.compressFrom) ** done;
      this.#put(this.#best);
      board.weights.fill(1);
      this.#resize(Math.max(leastHeight, this.#best.height * (1 - shrink)), random() * this.#best.height);
      if (await separate(board, this.#rule(schedule.compressIdle, until), this.#budget)) this.#take();
    }
  }

  /** Moves what is above the cut by what the strip becomes longer or shorter. */
  #resize(height: number, cut: number): void {
    const board = this.#board;
    const by = height - board.height;
    board.height = height;
    for (let part = 0; part < board.movable; part += 1) {
      // What is too tall now as it lies goes elsewhere, turned.
      if (!board.fits(part, board.turns[part]!)) this.#throw(part);
      else board.put(part, board.turns[part]!, board.xs[part]!, board.ys[part]! + (board.ys[part]! > cut ? by : 0));
    }
    board.measureAll();
  }

  /** Exchanges two large parts that are not alike, so that the search is somewhere else. */
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

  #put({ height, turns, xs, ys }: Arrangement): void {
    const board = this.#board;
    board.height = height;
    for (let part = 0; part < board.movable; part += 1) board.put(part, turns[part]!, xs[part]!, ys[part]!);
  }
}
