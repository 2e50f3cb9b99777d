/** Turns that the engine takes, so that others get theirs, and how long its steps take. */

/** How long the engine works before it yields, in ms: less than a frame at 60 Hz. */
const turnMs = 10;

export function nextTask(): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, 0));
}

/** Yields when a turn is over, and throws once the result is no longer wanted. */
export function turnTaker(signal: AbortSignal | undefined, giveWay: () => Promise<void>): () => Promise<void> {
  let started = performance.now();
  return async () => {
    signal?.throwIfAborted();
    if (performance.now() - started < turnMs) return;
    await giveWay();
    started = performance.now();
    signal?.throwIfAborted();
  };
}

export class Clock {
  readonly laps = { read: 0, load: 0, make: 0, check: 0, total: 0 };
  readonly #start = performance.now();
  #last = this.#start;

  lap(name: 'read' | 'load' | 'make' | 'check'): void {
    const now = performance.now();
    this.laps[name] = now - this.#last;
    this.laps.total = now - this.#start;
    this.#last = now;
  }
}
