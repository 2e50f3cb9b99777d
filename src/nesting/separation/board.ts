/** Parts on one rectangle, which may overlap. Movable parts never leave the rectangle. */

import { BoxBands } from './box-bands.ts';
import { last } from './penetration-field.ts';
import type { Turn } from '../orientation.ts';
import type { PenetrationFields } from './penetration-fields.ts';

/** Work for testing whether two boxes meet, in stretches of a boundary. */
const workOfBox = 0.06;

export class Board {
  readonly count: number;
  /** Parts before this index can be moved; the others are fixed, even outside the rectangle or overlapping. */
  readonly movable: number;
  width: number;
  height: number;
  readonly fields: PenetrationFields;
  /** For each part: its shape among the movers, its turn, its centre, half the size of its outline's box, and √area. */
  readonly kinds: Int32Array;
  readonly turns: Uint8Array;
  readonly xs: Float64Array;
  readonly ys: Float64Array;
  readonly halfWidths: Float64Array;
  readonly halfHeights: Float64Array;
  readonly sizes: Float64Array;
  /** For each kind and turn: half the box of the outline, and of the part itself. */
  readonly reach: Float64Array;
  readonly #half: Float64Array;
  /** The boxes of the outlines. */
  readonly boxes: BoxBands;

  constructor(
    fields: PenetrationFields,
    kinds: readonly number[],
    width: number,
    height: number,
    movable = kinds.length,
  ) {
    const { movers } = fields;
    const count = kinds.length;
    this.fields = fields;
    this.count = count;
    this.movable = movable;
    this.width = width;
    this.height = height;
    this.kinds = Int32Array.from(kinds);
    this.turns = new Uint8Array(count);
    [this.xs, this.ys] = [new Float64Array(count), new Float64Array(count)];
    [this.halfWidths, this.halfHeights] = [new Float64Array(count), new Float64Array(count)];
    this.sizes = Float64Array.from(kinds, (kind) => Math.sqrt(movers[kind]!.outline(0).area));
    this.reach = new Float64Array(movers.length * 8);
    this.#half = new Float64Array(movers.length * 8);
    this.boxes = new BoxBands(count, width, height);
    movers.forEach(({ turns, outline }, kind) => {
      for (const turn of turns) {
        const { bounds, width: w, height: h } = outline(turn);
        const at = (kind * 4 + turn) * 2;
        this.reach[at] = Math.max(bounds.maxX - w / 2, w / 2 - bounds.minX);
        this.reach[at + 1] = Math.max(bounds.maxY - h / 2, h / 2 - bounds.minY);
        this.#half[at] = w / 2;
        this.#half[at + 1] = h / 2;
      }
    });
  }

  /** Least and greatest coordinates of the centre of a part within the present rectangle. */
  leastX(part: number, turn: number): number {
    return this.#half[(this.kinds[part]! * 4 + turn) * 2]!;
  }
  leastY(part: number, turn: number): number {
    return this.#half[(this.kinds[part]! * 4 + turn) * 2 + 1]!;
  }
  mostX(part: number, turn: number): number {
    return this.width - this.leastX(part, turn);
  }
  mostY(part: number, turn: number): number {
    return this.height - this.leastY(part, turn);
  }

  turnsOf(part: number): readonly Turn[] {
    return this.fields.movers[this.kinds[part]!]!.turns;
  }

  size(part: number): number {
    return this.sizes[part]!;
  }

  fits(part: number, turn: number): boolean {
    return 2 * this.leastX(part, turn) <= this.width + 1e-9 && 2 * this.leastY(part, turn) <= this.height + 1e-9;
  }

  /** Places a part as near as the rectangle allows. */
  put(part: number, turn: number, x: number, y: number): void {
    const halfWidth = this.leastX(part, turn);
    const halfHeight = this.leastY(part, turn);
    const within = Math.max(halfWidth, Math.min(this.width - halfWidth, x));
    this.settle(part, turn, within, Math.max(halfHeight, Math.min(this.height - halfHeight, y)));
  }

  /** Places a part without limits. */
  settle(part: number, turn: number, x: number, y: number): void {
    const at = (this.kinds[part]! * 4 + turn) * 2;
    this.turns[part] = turn;
    this.halfWidths[part] = this.reach[at]!;
    this.halfHeights[part] = this.reach[at + 1]!;
    this.xs[part] = x;
    this.ys[part] = y;
    this.boxes.put(part, x, y, this.reach[at]!, this.reach[at + 1]!);
  }

  /** Area in mm² in which the box of a part at that place overlaps those of others. */
  boxOverlap(part: number, turn: number, x: number, y: number): number {
    const at = (this.kinds[part]! * 4 + turn) * 2;
    last.work += workOfBox * this.count;
    let sum = 0;
    for (let other = 0; other < this.count; other += 1) {
      const over = this.reach[at]! + this.halfWidths[other]! - Math.abs(x - this.xs[other]!);
      const up = this.reach[at + 1]! + this.halfHeights[other]! - Math.abs(y - this.ys[other]!);
      if (over > 0 && up > 0 && other !== part) sum += over * up;
    }
    return sum;
  }
}
