/**
 * Parts on one rectangle, which may overlap, with the cost of the overlaps and of possible places. Movable parts never
 * leave the rectangle.
 *
 * A pair costs its weight times s·√(d(d + 0.3·s)), with d the depth of the overlap and s the size of the two. That is
 * concave in the depth: starting a deep overlap costs more and deepening it less, so that few parts are left to move
 * (measured in the guide's page on sheets).
 */

import { last } from './penetration-field.ts';
import type { Turn } from '../orientation.ts';
import type { PenetrationFields } from './penetration-fields.ts';

/** Depth at which the cost turns from concave to linear, as a share of the size. */
const bend = 0.3;

/** Extra distance in mm that resolves an overlap completely despite rounding. Outlines are thinned by more. */
const clearMm = 1e-6;

/** Work for testing whether two boxes meet, in stretches of a boundary. */
const workOfBox = 0.06;

/** The ways out of the overlaps in the last exact cost: of all together, and of the most expensive one. */
export const way = { allX: 0, allY: 0, dearestX: 0, dearestY: 0 };

export class Board {
  readonly count: number;
  /** Parts before this index can be moved; the others are fixed, even outside the rectangle or overlapping. */
  readonly movable: number;
  width: number;
  height: number;
  /** For each part: its shape among the movers, its turn, its centre, and half the size of its box. */
  readonly kinds: Int32Array;
  readonly turns: Uint8Array;
  readonly xs: Float64Array;
  readonly ys: Float64Array;
  readonly #halfWidths: Float64Array;
  readonly #halfHeights: Float64Array;
  readonly #sizes: Float64Array;
  /** By pair, in either order. */
  readonly weights: Float64Array;
  readonly depths: Float64Array;
  readonly #fields: PenetrationFields;
  /** For each kind and turn: half the box of the outline, and of the part itself. */
  readonly #reach: Float64Array;
  readonly #half: Float64Array;

  constructor(
    fields: PenetrationFields,
    kinds: readonly number[],
    width: number,
    height: number,
    movable = kinds.length,
  ) {
    const { movers } = fields;
    const count = kinds.length;
    this.#fields = fields;
    this.count = count;
    this.movable = movable;
    this.width = width;
    this.height = height;
    this.kinds = Int32Array.from(kinds);
    this.turns = new Uint8Array(count);
    [this.xs, this.ys] = [new Float64Array(count), new Float64Array(count)];
    [this.#halfWidths, this.#halfHeights] = [new Float64Array(count), new Float64Array(count)];
    this.#sizes = Float64Array.from(kinds, (kind) => Math.sqrt(movers[kind]!.outline(0).area));
    this.weights = new Float64Array(count * count).fill(1);
    this.depths = new Float64Array(count * count);
    this.#reach = new Float64Array(movers.length * 8);
    this.#half = new Float64Array(movers.length * 8);
    movers.forEach(({ turns, outline }, kind) => {
      for (const turn of turns) {
        const { bounds, width: w, height: h } = outline(turn);
        const at = (kind * 4 + turn) * 2;
        this.#reach[at] = Math.max(bounds.maxX - w / 2, w / 2 - bounds.minX);
        this.#reach[at + 1] = Math.max(bounds.maxY - h / 2, h / 2 - bounds.minY);
        this.#half[at] = w / 2;
        this.#half[at + 1] = h / 2;
      }
    });
  }

  /** Least and greatest coordinates of the centre of a part within the present rectangle. */
  leastX = (part: number, turn: number): number => this.#half[(this.kinds[part]! * 4 + turn) * 2]!;
  leastY = (part: number, turn: number): number => this.#half[(this.kinds[part]! * 4 + turn) * 2 + 1]!;
  mostX = (part: number, turn: number): number => this.width - this.leastX(part, turn);
  mostY = (part: number, turn: number): number => this.height - this.leastY(part, turn);
  turnsOf = (part: number): readonly Turn[] => this.#fields.movers[this.kinds[part]!]!.turns;
  size = (part: number): number => this.#sizes[part]!;

  fits(part: number, turn: number): boolean {
    return 2 * this.leastX(part, turn) <= this.width + 1e-9 && 2 * this.leastY(part, turn) <= this.height + 1e-9;
  }

  /** Places a part as near as the rectangle allows. */
  put(part: number, turn: number, x: number, y: number): void {
    const at = (this.kinds[part]! * 4 + turn) * 2;
    this.settle(part, turn, x, y);
    this.xs[part] = Math.max(this.#half[at]!, Math.min(this.width - this.#half[at]!, x));
    this.ys[part] = Math.max(this.#half[at + 1]!, Math.min(this.height - this.#half[at + 1]!, y));
  }

  /** Places a part without limits. */
  settle(part: number, turn: number, x: number, y: number): void {
    const at = (this.kinds[part]! * 4 + turn) * 2;
    this.turns[part] = turn;
    this.#halfWidths[part] = this.#reach[at]!;
    this.#halfHeights[part] = this.#reach[at + 1]!;
    this.xs[part] = x;
    this.ys[part] = y;
  }

  /** Approximate cost of a place for a part; `Infinity` if it exceeds the limit. */
  roughCost(part: number, turn: number, x: number, y: number, limit: number): number {
    return this.#cost(part, turn, x, y, limit, true);
  }

  /** Exact cost of a place; the ways out are in `way`. */
  cost(part: number, turn: number, x: number, y: number, limit: number): number {
    return this.#cost(part, turn, x, y, limit, false);
  }

  #cost(part: number, turn: number, x: number, y: number, limit: number, isRough: boolean): number {
    const { count, xs, ys, kinds, turns, weights } = this;
    const { made, stride } = this.#fields;
    const halfWidths = this.#halfWidths;
    const halfHeights = this.#halfHeights;
    const kind = kinds[part]!;
    const halfWidth = this.#reach[(kind * 4 + turn) * 2]!;
    const halfHeight = this.#reach[(kind * 4 + turn) * 2 + 1]!;
    const size = this.#sizes[part]!;
    let sum = 0;
    let allX = 0;
    let allY = 0;
    let dearest = 0;
    let dearestX = 0;
    let dearestY = 0;
    last.work += workOfBox * count;
    for (let other = 0; other < count; other += 1) {
      const dx = x - xs[other]!;
      const reachX = halfWidth + halfWidths[other]!;
      if (dx >= reachX || dx <= -reachX) continue;
      const dy = y - ys[other]!;
      const reachY = halfHeight + halfHeights[other]!;
      if (dy >= reachY || dy <= -reachY || other === part) continue;
      const kindOther = kinds[other]!;
      const isResting = kind < kindOther;
      const base = isResting ? turn : turns[other]!;
      const further = ((isResting ? turns[other]! - turn : turn - turns[other]!) + 4) & 3;
      const rest = isResting ? kind : kindOther;
      const move = isResting ? kindOther : kind;
      const field = made[(rest * stride + move) * 4 + further] ?? this.#fields.make(rest, move, further);
      const px = isResting ? -dx : dx;
      const py = isResting ? -dy : dy;
      const qx = base === 0 ? px : base === 1 ? py : base === 2 ? -px : -py;
      const qy = base === 0 ? py : base === 1 ? -px : base === 2 ? -py : px;
      const depth = isRough ? field.roughDepth(qx, qy) : field.depth(qx, qy);
      if (depth === 0) continue;
      const both = Math.sqrt(size * this.#sizes[other]!);
      const cost = weights[part * count + other]! * both * Math.sqrt(depth * (depth + bend * both));
      sum += cost;
      if (sum > limit) return Infinity;
      if (isRough) continue;
      const ex = base === 0 ? last.exitX : base === 1 ? -last.exitY : base === 2 ? -last.exitX : last.exitY;
      const ey = base === 0 ? last.exitY : base === 1 ? last.exitX : base === 2 ? -last.exitY : -last.exitX;
      const beyond = (isResting ? -1 : 1) * (1 + clearMm / depth);
      const ox = beyond * ex;
      const oy = beyond * ey;
      allX += ox;
      allY += oy;
      if (cost > dearest) {
        dearest = cost;
        dearestX = ox;
        dearestY = oy;
      }
    }
    way.allX = allX;
    way.allY = allY;
    way.dearestX = dearestX;
    way.dearestY = dearestY;
    return sum;
  }

  /** Area in mm² in which the box of a part at that place overlaps those of others. */
  boxOverlap(part: number, turn: number, x: number, y: number): number {
    const at = (this.kinds[part]! * 4 + turn) * 2;
    last.work += workOfBox * this.count;
    let sum = 0;
    for (let other = 0; other < this.count; other += 1) {
      const over = this.#reach[at]! + this.#halfWidths[other]! - Math.abs(x - this.xs[other]!);
      const up = this.#reach[at + 1]! + this.#halfHeights[other]! - Math.abs(y - this.ys[other]!);
      if (over > 0 && up > 0 && other !== part) sum += over * up;
    }
    return sum;
  }

  /** Present depth of the overlap of two parts. */
  depth(part: number, other: number): number {
    const { xs, ys, kinds, turns } = this;
    const [dx, dy] = [xs[part]! - xs[other]!, ys[part]! - ys[other]!];
    if (Math.abs(dx) >= this.#halfWidths[part]! + this.#halfWidths[other]!) return 0;
    if (Math.abs(dy) >= this.#halfHeights[part]! + this.#halfHeights[other]!) return 0;
    const isResting = kinds[part]! < kinds[other]!;
    const [rest, move] = isResting ? [part, other] : [other, part];
    const base = turns[rest]!;
    const further = (turns[move]! - base + 4) & 3;
    const at = (kinds[rest]! * this.#fields.stride + kinds[move]!) * 4 + further;
    const field = this.#fields.made[at] ?? this.#fields.make(kinds[rest]!, kinds[move]!, further);
    const [px, py] = isResting ? [-dx, -dy] : [dx, dy];
    const qx = base === 0 ? px : base === 1 ? py : base === 2 ? -px : -py;
    const qy = base === 0 ? py : base === 1 ? -px : base === 2 ? -py : px;
    return field.depth(qx, qy);
  }

  /** Recomputes the depths of a part. */
  measure(part: number): void {
    const { count, movable, depths } = this;
    last.work += workOfBox * count;
    const until = part < movable ? count : movable;
    for (let other = 0; other < until; other += 1) {
      if (other === part) continue;
      const depth = this.depth(part, other);
      depths[part * count + other] = depth;
      depths[other * count + part] = depth;
    }
  }

  measureAll(): void {
    for (let part = 0; part < this.count; part += 1) this.measure(part);
  }

  /** Sum of all overlaps without weights; 0 for a valid layout. */
  loss(): number {
    const { count, depths } = this;
    let sum = 0;
    for (let part = 0; part < count; part += 1) {
      for (let other = 0; other < part; other += 1) {
        const depth = depths[part * count + other]!;
        if (depth === 0) continue;
        const both = Math.sqrt(this.#sizes[part]! * this.#sizes[other]!);
        sum += both * Math.sqrt(depth * (depth + bend * both));
      }
    }
    return sum;
  }

  isColliding(part: number): boolean {
    const { count, depths } = this;
    for (let other = 0; other < count; other += 1) if (depths[part * count + other]! > 0) return true;
    return false;
  }
}
