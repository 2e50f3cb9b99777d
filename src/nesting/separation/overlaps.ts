/** Which parts of a board overlap, how deeply, and how dear each overlap has become. */

import type { Board } from './board.ts';
import { Neighbourhood, overlapCost } from './neighbourhood.ts';

/**
 * Growth of the weight of an overlapping pair: a constant factor, plus more for deeper overlaps; and decay of the
 * others.
 */
const growth = 1.1;
const deeper = 0.4;
const decay = 0.98;

export class Overlaps {
  readonly board: Board;
  readonly near: Neighbourhood;
  /** By pair, in either order. */
  readonly weights: Float64Array;
  readonly #depths: Float64Array;
  /** Pairs, lower part first, that overlap or weigh more than 1; and by pair whether it is among them. */
  readonly #active: number[] = [];
  readonly #isActive: Uint8Array;
  /** For each part, the number of those that it overlaps. */
  readonly #collisions: Int32Array;

  constructor(board: Board) {
    const { count } = board;
    this.board = board;
    this.weights = new Float64Array(count * count).fill(1);
    this.#depths = new Float64Array(count * count);
    this.#isActive = new Uint8Array(count * count);
    this.#collisions = new Int32Array(count);
    this.near = new Neighbourhood(board, this.weights);
  }

  isColliding(part: number): boolean {
    return this.#collisions[part]! > 0;
  }

  /** Recomputes the depths of a part. */
  measure(part: number): void {
    const { count, movable, xs, ys, turns } = this.board;
    const near = this.near;
    this.#clear(part);
    const [x, y] = [xs[part]!, ys[part]!];
    near.gather(part, turns[part]!, x, y, 0);
    for (let k = 0; k < near.count; k += 1) {
      const other = near.others[k]!;
      if (part >= movable && other >= movable) continue;
      const depth = near.depthWith(k, x, y);
      if (depth === 0) continue;
      const pair = part < other ? part * count + other : other * count + part;
      this.#depths[pair] = depth;
      this.#collisions[part]! += 1;
      this.#collisions[other]! += 1;
      if (this.#isActive[pair] === 0) this.#active.push(pair);
      this.#isActive[pair] = 1;
    }
  }

  #clear(part: number): void {
    if (this.#collisions[part] === 0) return;
    const { count } = this.board;
    for (const pair of this.#active) {
      if (this.#depths[pair] === 0) continue;
      const high = pair % count;
      const low = (pair - high) / count;
      if (low !== part && high !== part) continue;
      this.#depths[pair] = 0;
      this.#collisions[low]! -= 1;
      this.#collisions[high]! -= 1;
    }
  }

  measureAll(): void {
    for (const pair of this.#active) this.#depths[pair] = 0;
    this.#collisions.fill(0);
    // Each pair is measured with its higher part, so that it is counted once.
    for (let part = 0; part < this.board.count; part += 1) this.measure(part);
  }

  /** Sum of all overlaps without weights; 0 for a valid layout. */
  loss(): number {
    const { count, sizes } = this.board;
    let sum = 0;
    for (const pair of this.#active) {
      const depth = this.#depths[pair]!;
      if (depth === 0) continue;
      const high = pair % count;
      sum += overlapCost(depth, Math.sqrt(sizes[high]! * sizes[(pair - high) / count]!));
    }
    return sum;
  }

  /** Makes what overlaps dearer and what does not cheaper. */
  reweigh(): void {
    const { count } = this.board;
    const active = this.#active;
    let deepest = 0;
    for (const pair of active) if (this.#depths[pair]! > deepest) deepest = this.#depths[pair]!;
    let kept = 0;
    for (const pair of active) {
      const depth = this.#depths[pair]!;
      const before = this.weights[pair]!;
      const weight = depth > 0 ? before * (growth + (deeper * depth) / deepest) : Math.max(1, before * decay);
      const high = pair % count;
      this.weights[pair] = weight;
      this.weights[high * count + (pair - high) / count] = weight;
      if (depth > 0 || weight > 1) active[kept++] = pair;
      else this.#isActive[pair] = 0;
    }
    active.length = kept;
  }

  /** Makes all overlaps equally dear again. */
  level(): void {
    const { count } = this.board;
    for (const pair of this.#active) {
      const high = pair % count;
      this.weights[pair] = 1;
      this.weights[high * count + (pair - high) / count] = 1;
    }
  }
}
