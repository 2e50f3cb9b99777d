/**
 * Penetration fields of pairs of shapes, created on demand. If both shapes are turned alike, their field turns with
 * them.
 */

import type { Orientation, Turn } from '../orientation.ts';
import type { NestShape } from '../shapes.ts';
import { envelopeBoundary } from '../envelopes/envelope-boundary.ts';
import type { Envelope } from '../envelopes/envelope.ts';
import { noFitBoundary } from './no-fit-boundary.ts';
import { PenetrationField } from './penetration-field.ts';

/** A shape as used by the separation. Positions are box centres. */
export interface Mover {
  readonly shape: NestShape;
  /** Allowed turns of its parts. */
  readonly turns: readonly Turn[];
  readonly outline: (turn: Turn) => Orientation;
  /** By which it is compared with others that are turned alike or by half a turn, if all have one. */
  readonly envelope?: (turn: Turn) => Envelope;
}

export class PenetrationFields {
  readonly movers: Mover[] = [];
  /** By resting shape, moving shape, and quarter turns of the latter relative to the former. */
  made: (PenetrationField | undefined)[] = [];
  /** Number of shapes that there is room for. */
  stride = 0;
  readonly #numbers = new Map<NestShape, number>();

  /** Returns its index among the movers. */
  add(mover: Mover): number {
    const known = this.#numbers.get(mover.shape);
    if (known !== undefined) return known;
    const number = this.movers.push(mover) - 1;
    this.#numbers.set(mover.shape, number);
    if (number >= this.stride) this.#widen();
    return number;
  }

  make(resting: number, moving: number, further: number): PenetrationField {
    const [a, b] = [this.movers[resting]!, this.movers[moving]!];
    const turn = further as Turn;
    const field = new PenetrationField(
      further % 2 === 0 && a.envelope && b.envelope
        ? envelopeBoundary(a.envelope(0), b.envelope(turn))
        : noFitBoundary(a.outline(0), b.outline(turn)),
    );
    this.made[(resting * this.stride + moving) * 4 + further] = field;
    return field;
  }

  #widen(): void {
    const before = this.stride;
    const old = this.made;
    this.stride = Math.max(8, 2 * before);
    this.made = Array.from({ length: this.stride ** 2 * 4 });
    for (let a = 0; a < before; a += 1) {
      for (let k = 0; k < 4 * before; k += 1) this.made[a * this.stride * 4 + k] = old[a * before * 4 + k];
    }
  }
}
