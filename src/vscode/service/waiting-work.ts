/** Work that is not urgent: done one at a time, in the order in which it was added, and never while urgent work runs. */

/** Pause in ms before each, in which urgent work may begin. */
const pauseMs = 40;

export class WaitingWork<What> {
  readonly #waiting = new Map<string, What>();
  readonly #urgent = new Set<Promise<void>>();
  readonly #work: (key: string, what: What) => Promise<void>;
  #isGoing = false;

  constructor(work: (key: string, what: What) => Promise<void>) {
    this.#work = work;
  }

  /** Resolves once nothing waits any more; at once if other work is being done already, which this then follows. */
  async add(key: string, what: What): Promise<void> {
    this.#waiting.set(key, what);
    if (this.#isGoing) return;
    this.#isGoing = true;
    try {
      // Iterating a map includes entries added meanwhile.
      for (const [next] of this.#waiting) {
        await new Promise((resolve) => setTimeout(resolve, pauseMs));
        await this.nothingUrgent();
        const now = this.#waiting.get(next);
        this.#waiting.delete(next);
        if (now !== undefined) await this.#work(next, now);
      }
    } finally {
      this.#isGoing = false;
    }
  }

  drop(key: string): void {
    this.#waiting.delete(key);
  }

  clear(): void {
    this.#waiting.clear();
  }

  urgent(working: Promise<void>): void {
    this.#urgent.add(working);
    void working.finally(() => this.#urgent.delete(working));
  }

  async nothingUrgent(): Promise<void> {
    await Promise.all(this.#urgent);
  }
}
