/** How much a search may cost, and when it lets others have a turn. Counted in edges looked at, which is the same everywhere; a clock is not. */

import { Effort } from './bed.ts';

/** From one turn to the next: a few milliseconds. */
const edgesPerTurn = 50_000;

export class Pace extends Effort {
  readonly #limit: number;
  readonly #checkpoint: () => Promise<void>;
  #next = edgesPerTurn;

  constructor(limit: number, checkpoint: () => Promise<void>) {
    super();
    this.#limit = limit;
    this.#checkpoint = checkpoint;
  }

  get isSpent(): boolean {
    return this.spent > this.#limit;
  }

  /** @throws whatever the checkpoint throws to stop it. */
  async pause(): Promise<void> {
    if (this.spent < this.#next) return;
    this.#next = this.spent + edgesPerTurn;
    await this.#checkpoint();
  }
}
