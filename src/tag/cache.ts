/** Results of stages, cached by their inputs, so that an edit recomputes only what depends on it. */

export interface Stage<T> {
  /** Identifies this result in the keys of the stages made from it. Never used for another result. */
  readonly id: number;
  readonly value: T;
}

/** Lets other tasks run, and throws when the result is no longer wanted. */
export type Checkpoint = () => Promise<void>;

/** Number of results that are kept for letters: an alphabet in a few sizes, and its pairs. */
const mostLetters = 4000;

export class StageCache {
  readonly #stages = new Map<string, Stage<unknown>>();
  readonly #most: number;
  #letters: StageCache | undefined;
  #nextId = 1;

  /** Keeps the `most` recently used results; a tag has some tens of stages. */
  constructor(most = 2000) {
    this.#most = most;
  }

  /**
   * Results for letters and their neighbours, which recur in other texts: kept apart, so that what only one text needs does not
   * push them out.
   */
  get letters(): StageCache {
    return (this.#letters ??= new StageCache(mostLetters));
  }

  /** The stage of this kind made from these inputs, computed only if it is not cached. `inputs` must be plain data. */
  get<T>(kind: string, inputs: unknown, compute: () => T): Stage<T> {
    const key = stageKey(kind, inputs);
    return this.#known<T>(key) ?? this.#keep(key, compute());
  }

  /** The same for asynchronous computations, which may be stopped: then nothing is cached. */
  async getLater<T>(kind: string, inputs: unknown, compute: () => Promise<T>): Promise<Stage<T>> {
    const key = stageKey(kind, inputs);
    return this.#known<T>(key) ?? this.#keep(key, await compute());
  }

  #known<T>(key: string): Stage<T> | undefined {
    const known = this.#stages.get(key);
    if (!known) return undefined;
    // Moved to the end: a Map iterates from its oldest entry.
    this.#stages.delete(key);
    this.#stages.set(key, known);
    return known as Stage<T>;
  }

  #keep<T>(key: string, value: T): Stage<T> {
    const stage: Stage<T> = { id: this.#nextId++, value };
    this.#stages.set(key, stage);
    if (this.#stages.size > this.#most) this.#stages.delete(this.#stages.keys().next().value!);
    return stage;
  }
}

function stageKey(kind: string, inputs: unknown): string {
  return `${kind} ${JSON.stringify(inputs)}`;
}
