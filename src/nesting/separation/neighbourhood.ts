/**
 * What overlaps would cost a part at places near one another: the parts that come into question are gathered once.
 *
 * A pair costs its weight times s·√(d(d + 0.3·s)), with d the depth of the overlap and s the size of the two. That is
 * concave in the depth: starting a deep overlap costs more and deepening it less, so that few parts are left to move
 * (measured in the guide's page on sheets).
 */

import type { Board } from './board.ts';
import { last } from './penetration-field.ts';
import type { PenetrationField } from './penetration-field.ts';

/** Depth at which the cost turns from concave to linear, as a share of the size. */
const bend = 0.3;

/** Work for gathering what is near a place, in stretches of a boundary, and as much more for each part there. */
const workOfGathering = 12;

/** Extra distance in mm that resolves an overlap completely despite rounding. Outlines are thinned by more. */
const clearMm = 1e-6;

/** The ways out of the overlaps in the last exact cost: of all together, and of the most expensive one. */
export const way = { allX: 0, allY: 0, dearestX: 0, dearestY: 0 };

/** Cost of an overlap without its weight. `both`: geometric mean of the sizes of the two. */
export function overlapCost(depth: number, both: number): number {
  return both * Math.sqrt(depth * (depth + bend * both));
}

export class Neighbourhood {
  readonly #board: Board;
  /** By pair, in either order. */
  readonly #weights: Float64Array;
  #count = 0;
  /** For each neighbour: its centre, the direction in its field of a mm to the right, its size with the part, and its weight. */
  readonly #numbers: Float64Array;
  readonly #fields: PenetrationField[] = [];
  readonly others: Int32Array;

  constructor(board: Board, weights: Float64Array) {
    this.#board = board;
    this.#weights = weights;
    this.#numbers = new Float64Array(6 * board.count);
    this.others = new Int32Array(board.count);
  }

  get count(): number {
    return this.#count;
  }

  /** Gathers what a part can overlap within `margin` mm of a place, to either side. */
  gather(part: number, turn: number, x: number, y: number, margin: number): void {
    const { count, xs, ys, kinds, turns, halfWidths, halfHeights, reach, sizes, fields, boxes } = this.#board;
    const { made, stride } = fields;
    const weights = this.#weights;
    const numbers = this.#numbers;
    const { others } = this;
    const kind = kinds[part]!;
    const halfWidth = reach[(kind * 4 + turn) * 2]! + margin;
    const halfHeight = reach[(kind * 4 + turn) * 2 + 1]! + margin;
    const size = sizes[part]!;
    let found = 0;
    const candidates = boxes.near(x, y, halfWidth, halfHeight, others);
    for (let k = 0; k < candidates; k += 1) {
      const other = others[k]!;
      if (Math.abs(x - xs[other]!) >= halfWidth + halfWidths[other]!) continue;
      if (Math.abs(y - ys[other]!) >= halfHeight + halfHeights[other]! || other === part) continue;
      const kindOther = kinds[other]!;
      const isResting = kind < kindOther;
      const turnOther = turns[other]!;
      const base = isResting ? turn : turnOther;
      const further = (isResting ? turnOther - turn : turn - turnOther) & 3;
      const rest = isResting ? kind : kindOther;
      const move = isResting ? kindOther : kind;
      this.#fields[found] = made[(rest * stride + move) * 4 + further] ?? fields.make(rest, move, further);
      const sign = isResting ? -1 : 1;
      const at = 6 * found;
      numbers[at] = xs[other]!;
      numbers[at + 1] = ys[other]!;
      numbers[at + 2] = base === 0 ? sign : base === 2 ? -sign : 0;
      numbers[at + 3] = base === 1 ? sign : base === 3 ? -sign : 0;
      numbers[at + 4] = Math.sqrt(size * sizes[other]!);
      numbers[at + 5] = weights[part * count + other]!;
      others[found] = other;
      found += 1;
    }
    last.work += workOfGathering + candidates;
    this.#count = found;
  }

  /** Approximate cost of a place; `Infinity` if it exceeds the limit. */
  roughCost(x: number, y: number, limit: number): number {
    const numbers = this.#numbers;
    let sum = 0;
    for (let k = 0, at = 0; k < this.#count; k += 1, at += 6) {
      const dx = x - numbers[at]!;
      const dy = y - numbers[at + 1]!;
      const a = numbers[at + 2]!;
      const b = numbers[at + 3]!;
      const depth = this.#fields[k]!.roughDepth(a * dx + b * dy, a * dy - b * dx);
      if (depth === 0) continue;
      sum += numbers[at + 5]! * overlapCost(depth, numbers[at + 4]!);
      if (sum > limit) return Infinity;
    }
    return sum;
  }

  /** Exact cost of a place; the ways out are in `way`. `Infinity` if it exceeds the limit. */
  cost(x: number, y: number, limit: number): number {
    const numbers = this.#numbers;
    let sum = 0;
    let allX = 0;
    let allY = 0;
    let dearest = 0;
    let dearestX = 0;
    let dearestY = 0;
    for (let k = 0, at = 0; k < this.#count; k += 1, at += 6) {
      const dx = x - numbers[at]!;
      const dy = y - numbers[at + 1]!;
      const a = numbers[at + 2]!;
      const b = numbers[at + 3]!;
      const depth = this.#fields[k]!.depth(a * dx + b * dy, a * dy - b * dx);
      if (depth === 0) continue;
      const cost = numbers[at + 5]! * overlapCost(depth, numbers[at + 4]!);
      sum += cost;
      if (sum > limit) return Infinity;
      const beyond = 1 + clearMm / depth;
      const exitX = beyond * (a * last.exitX - b * last.exitY);
      const exitY = beyond * (b * last.exitX + a * last.exitY);
      allX += exitX;
      allY += exitY;
      if (cost > dearest) {
        dearest = cost;
        dearestX = exitX;
        dearestY = exitY;
      }
    }
    way.allX = allX;
    way.allY = allY;
    way.dearestX = dearestX;
    way.dearestY = dearestY;
    return sum;
  }

  /** Depth in mm of the overlap with one of those gathered, if the part is at that place. */
  depthWith(k: number, x: number, y: number): number {
    const at = 6 * k;
    const numbers = this.#numbers;
    const dx = x - numbers[at]!;
    const dy = y - numbers[at + 1]!;
    const a = numbers[at + 2]!;
    const b = numbers[at + 3]!;
    return this.#fields[k]!.depth(a * dx + b * dy, a * dy - b * dx);
  }
}
