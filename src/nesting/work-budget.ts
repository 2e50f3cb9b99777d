/**
 * Work budget of a search, and its yields to other tasks. Counted in edges visited, which is the same on every machine,
 * unlike time.
 */

/** Edges between two yields: a few milliseconds. */
const edgesPerTurn = 25_000;

export class WorkBudget {
  /** Edges visited so far. */
  spent = 0;
  readonly #limit: number;
  readonly #checkpoint: () => Promise<void>;
  #next = edgesPerTurn;

  constructor(limit: number, checkpoint: () => Promise<void>) {
    this.#limit = limit;
    this.#checkpoint = checkpoint;
  }

  /** Share of the budget that has been spent. */
  get share(): number {
    return this.spent / this.#limit;
  }

  /** Edges that may still be visited. */
  get left(): number {
    return Math.max(0, this.#limit - this.spent);
  }

  get isDue(): boolean {
    return this.spent >= this.#next;
  }

  /** Await when due. @throws whatever the checkpoint throws to stop the search. */
  async pause(): Promise<void> {
    this.#next = this.spent + edgesPerTurn;
    await this.#checkpoint();
  }
}
