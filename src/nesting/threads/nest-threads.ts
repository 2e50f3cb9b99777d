/**
 * Laying out in threads: whoever asks for it is free meanwhile, and as many searches run at once as there are threads. Where no thread can
 * be had, or one breaks, the search is made here, and finds the same.
 */

import { oncePer } from '../../core/once-per.ts';
import { bestOf, nestHere, searchHere } from '../best-of.ts';
import type { Nester, RunSearch } from '../best-of.ts';
import { packed } from './messages.ts';
import { Searcher } from './searcher.ts';
import type { NestThread } from './searcher.ts';

export interface ThreadSource {
  readonly start: () => NestThread;
  /** How many may run at once. */
  readonly count: number;
}

/** Whether the result is still wanted is asked this often, in ms. */
const askMs = 50;

/** Threads that nobody needs are usually kept so long, in ms: somebody who tries one gap after another asks again. */
const usualKeepMs = 20_000;

/** For all searches of a layout. */
const packedOnce = oncePer(packed);

export class NestThreads {
  readonly nest: Nester;
  readonly #source: ThreadSource | undefined;
  readonly #keepMs: number;
  readonly #idle: Searcher[] = [];
  readonly #waiting: (() => void)[] = [];
  /** Settles with the last search that is made here. */
  #here: Promise<unknown> = Promise.resolve();
  #running = 0;
  #isBroken = false;
  #ending: ReturnType<typeof setTimeout> | undefined;

  /** Without a source everything is made in this thread. `keepMs`: how long threads that nobody needs are kept. */
  constructor(source?: ThreadSource, keepMs = usualKeepMs) {
    this.#source = source;
    this.#keepMs = keepMs;
    this.nest = source ? bestOf(this.#search.bind(this), true) : nestHere;
  }

  /** Ends the threads that have nothing to do. */
  end(): void {
    clearTimeout(this.#ending);
    for (const searcher of this.#idle.splice(0)) searcher.end();
  }

  async #search(...[task, seed, watch]: Parameters<RunSearch>): ReturnType<RunSearch> {
    clearTimeout(this.#ending);
    while (this.#running >= (this.#isBroken ? 1 : this.#source!.count))
      await new Promise<void>((resolve) => this.#waiting.push(resolve));
    this.#running += 1;
    try {
      await watch.checkpoint();
      return (await this.#searchThere(task, seed, watch)) ?? (await this.#searchHere(task, seed, watch));
    } finally {
      this.#running -= 1;
      this.#waiting.shift()?.();
      if (this.#running === 0) this.#endLater();
    }
  }

  /** One after the other: two searches in one thread would disturb one another. */
  #searchHere(...how: Parameters<RunSearch>): ReturnType<RunSearch> {
    const search = this.#here.then(() => searchHere(...how));
    this.#here = search.catch(() => undefined);
    return search;
  }

  #endLater(): void {
    const end = (): void => {
      if (this.#running === 0) this.end();
    };
    // Whoever goes on without a pause would let no timer run.
    if (this.#keepMs === 0) queueMicrotask(end);
    else this.#ending = setTimeout(end, this.#keepMs);
  }

  /** `undefined` where it cannot be made there. Rejects with what the checkpoint throws. */
  async #searchThere(
    ...[task, seed, { checkpoint, onBetter }]: Parameters<RunSearch>
  ): Promise<Awaited<ReturnType<RunSearch>> | undefined> {
    if (this.#isBroken) return undefined;
    const wanted = { type: 'search', task: packedOnce(task), seed, tells: onBetter !== undefined } as const;
    const searcher = this.#searcher();
    if (!searcher) return undefined;
    let stopped: { readonly reason: unknown } | undefined;
    const asking = setInterval(() => {
      checkpoint().catch((reason: unknown) => {
        stopped ??= { reason };
        searcher.stop();
      });
    }, askMs);
    const outcome = await searcher.search(wanted, (layout) => {
      if (!stopped) onBetter?.(layout);
    });
    clearInterval(asking);
    if (searcher.isBroken) this.#isBroken = true;
    else this.#idle.push(searcher);
    if (stopped) throw stopped.reason;
    return outcome;
  }

  #searcher(): Searcher | undefined {
    try {
      return this.#idle.pop() ?? new Searcher(this.#source!.start());
    } catch {
      this.#isBroken = true;
      return undefined;
    }
  }
}
