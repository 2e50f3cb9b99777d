/** Makes the tags of a batch in order; for large batches with several threads, depending on the processors. */

import { availableParallelism } from 'node:os';
import { fileURLToPath } from 'node:url';
import { setFlagsFromString } from 'node:v8';
import { isMainThread, parentPort, Worker, workerData } from 'node:worker_threads';
import { rowCount } from '../engine/batch.ts';
import type { Engine, Report } from '../engine/engine.ts';
import { RowWorker } from './row-work.ts';
import type { TagAsk } from '../jobs/reading.ts';
import type { RowResult, RowTask } from './row-work.ts';

/** A thread needs about a second to load its fonts and warm up: fewer tags are faster without. */
const fewRows = 24;

/** Limit on threads, the main one included; each has its own fonts and cache, about 150 MB. */
const mostThreads = 4;

/**
 * Memory limit of a thread. It needs about 95 MB for labels with two fitted lines, and without a limit would let three
 * times as much accumulate before collecting garbage. Rows that need more are made by the main thread, which has no
 * such limit.
 */
const mostThreadMb = 190;

/** Room for what is made and soon forgotten, in MB: with the usual 16, much of it lives long enough to be moved (7 % of all the time). */
const youngMb = 96;

/** Rows requested ahead of the one awaited, for each thread, so that a slow one keeps nobody idle. */
const ahead = 8;

/** Rows that a thread has at once, as the main one, which makes some too, may be too busy to send the next. */
const atOnce = 2;

/**
 * From this many tags on, memory grows by at most so many percent before garbage is collected, which costs some
 * hundredths of the time; otherwise it would be twice what they need.
 */
const sparing = { from: 1000, percent: 50 } as const;

/** When bundled, this file is the whole program and can run as a thread; threads do not load TypeScript. */
const program = import.meta.url.endsWith('.mjs') ? fileURLToPath(import.meta.url) : undefined;

/** All rows in order, `first` among them. */
export function eachRow(engine: Engine, task: RowTask, first: Report): AsyncGenerator<RowResult> {
  const rows = Array.from({ length: rowCount(first) }, (_, row) => ({ row }));
  return eachAsked(engine, task, rows, first);
}

/** In the order in which they are asked for; `known`: what has been made of a row of the spec's own batch already. */
export async function* eachAsked(
  engine: Engine,
  task: RowTask,
  asked: readonly TagAsk[],
  known?: Report,
): AsyncGenerator<RowResult> {
  const count = asked.length;
  const threads = count < fewRows ? 1 : Math.min(availableParallelism(), mostThreads);
  const here = new RowWorker(task, engine);
  if (threads < 2 || program === undefined) {
    for (const ask of asked)
      yield known && !ask.batch && ask.row === known.row ? await here.of(known) : await here.make(ask);
    return;
  }
  if (count >= sparing.from) setFlagsFromString(`--heap-growing-percent=${sparing.percent}`);
  const pool = new RowThreads(here, program, task, threads);
  try {
    const coming = new Map<number, Promise<RowResult>>();
    let next = 0;
    for (const [index, ask] of asked.entries()) {
      for (; next < Math.min(count, index + threads * ahead); next++) coming.set(next, pool.make(asked[next]!));
      yield await coming.get(index)!.catch(() => here.make(ask));
      // Results that have been delivered are released.
      coming.delete(index);
    }
  } finally {
    await pool.end();
  }
}

/** Whatever makes rows, some at once or one after the other. */
interface RowMaker {
  make(ask: TagAsk): Promise<RowResult>;
}

class RowThreads {
  readonly #all: readonly RowThread[];
  /** Each as often as it takes rows at once; those that are free last are taken first. */
  readonly #free: RowMaker[];
  readonly #waiting: ((maker: RowMaker) => void)[] = [];

  /** `here`: makes rows in this thread, which is one of `count`. */
  constructor(here: RowMaker, program: string, task: RowTask, count: number) {
    this.#all = Array.from({ length: count - 1 }, () => new RowThread(program, task));
    this.#free = [here, ...Array.from({ length: atOnce }, () => this.#all).flat()];
  }

  /** Rejects if the thread has crashed or run out of memory. */
  make(ask: TagAsk): Promise<RowResult> {
    const made = this.#makeInTurn(ask);
    made.catch(() => undefined);
    return made;
  }

  async #makeInTurn(ask: TagAsk): Promise<RowResult> {
    const maker = this.#free.pop() ?? (await new Promise<RowMaker>((resolve) => this.#waiting.push(resolve)));
    try {
      return await maker.make(ask);
    } finally {
      const next = this.#waiting.shift();
      if (next) next(maker);
      else this.#free.push(maker);
    }
  }

  async end(): Promise<void> {
    await Promise.all(this.#all.map((thread) => thread.end()));
  }
}

/** Makes rows one after the other. */
class RowThread implements RowMaker {
  readonly #worker: Worker;
  #fault: Error | undefined;
  /** Those that it has been asked for, in order. */
  readonly #asked: { readonly resolve: (made: RowResult) => void; readonly reject: (fault: Error) => void }[] = [];

  constructor(program: string, task: RowTask) {
    const workerData: ThreadData = { rows: task };
    this.#worker = new Worker(program, {
      workerData,
      resourceLimits: { maxOldGenerationSizeMb: mostThreadMb, maxYoungGenerationSizeMb: youngMb },
    });
    this.#worker.on('message', (made: RowResult) => this.#asked.shift()?.resolve(made));
    this.#worker.on('error', (fault: Error) => {
      this.#fault = fault;
      for (const { reject } of this.#asked.splice(0)) reject(fault);
    });
  }

  make(ask: TagAsk): Promise<RowResult> {
    return new Promise((resolve, reject) => {
      if (this.#fault) {
        reject(this.#fault);
        return;
      }
      this.#asked.push({ resolve, reject });
      this.#worker.postMessage(ask);
    });
  }

  async end(): Promise<void> {
    await this.#worker.terminate();
  }
}

interface ThreadData {
  readonly rows: RowTask;
}

/** Starts serving rows and returns true if the program was started as one of these threads. */
export function servesRows(): boolean {
  const port = parentPort;
  if (isMainThread || !port || !isThreadData(workerData)) return false;
  const worker = new RowWorker(workerData.rows);
  let last = Promise.resolve();
  port.on('message', (ask: TagAsk) => {
    // An error ends the thread, and is reported by whoever awaits the row.
    last = last.then(async () => {
      port.postMessage(await worker.make(ask));
    });
  });
  return true;
}

function isThreadData(data: unknown): data is ThreadData {
  return typeof data === 'object' && data !== null && 'rows' in data;
}
