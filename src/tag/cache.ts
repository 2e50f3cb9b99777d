/** Results of stages, kept by what went into them, so that an edit recomputes only what hangs on it. */

export interface Stage<T> {
  /** Names this result in the keys of the stages made from it. Never used for another result. */
  readonly id: number;
  readonly value: T;
}

export class StageCache {
  readonly #stages = new Map<string, Stage<unknown>>();
  readonly #most: number;
  #nextId = 1;

  /** Keeps the `most` results used last; a tag has some tens of stages. */
  constructor(most = 2000) {
    this.#most = most;
  }

  /** The stage of this kind made from these inputs, computed only when it is not at hand. `inputs` must be plain data. */
  get<T>(kind: string, inputs: unknown, compute: () => T): Stage<T> {
    const key = `${kind} ${JSON.stringify(inputs)}`;
    const known = this.#stages.get(key);
    if (known) {
      // Moved to the end: a Map hands out its oldest entry first.
      this.#stages.delete(key);
      this.#stages.set(key, known);
      return known as Stage<T>;
    }
    const stage: Stage<T> = { id: this.#nextId++, value: compute() };
    this.#stages.set(key, stage);
    if (this.#stages.size > this.#most) this.#stages.delete(this.#stages.keys().next().value!);
    return stage;
  }
}
