/** How much a search may cost, and when it lets others have a turn. Counted in edges looked at, which is the same everywhere; a clock is not. */

/** From one turn to the next: a few milliseconds. */
const edgesPerTurn = 25_000;

export class WorkBudget {
  /** Edges looked at so far. */
  spent = 0;
  readonly #limit: number;
  readonly #checkpoint: () => Promise<void>;
  #next = edgesPerTurn;

  constructor(limit: number, checkpoint: () => Promise<void>) {
    this.#limit = limit;
    this.#checkpoint = checkpoint;
  }

  /** Of what may be spent, how much is. */
  get share(): number {
    return this.spent / this.#limit;
  }

  get isDue(): boolean {
    return this.spent >= this.#next;
  }

  /** To be awaited where it is due. @throws whatever the checkpoint throws to stop it. */
  async pause(): Promise<void> {
    this.#next = this.spent + edgesPerTurn;
    await this.#checkpoint();
  }
}
