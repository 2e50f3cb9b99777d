/** Makes the tags of a batch in order; for large batches with several threads, depending on the processors. */

import { availableParallelism } from 'node:os';
import { fileURLToPath } from 'node:url';
import { setFlagsFromString } from 'node:v8';
import { isMainThread, parentPort, Worker, workerData } from 'node:worker_threads';
import type { Engine, Report } from '../engine/engine.ts';
import { RowWorker } from './row-work.ts';
import type { TagAsk } from '../jobs/orders/tag-ask.ts';
import type { RowRequest, RowResult, RowTask } from './row-work.ts';
import type { SpecFile } from './files.ts';

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

/** All tags of a spec in order, each with the report of the first. `progress` is told how many of how many are made. */
export async function* eachTag(
  engine: Engine,
  { file, text, options }: SpecFile,
  wish: RowRequest,
  progress?: (done: number, all: number) => void,
): AsyncGenerator<{ readonly first: Report; readonly made: RowResult }> {
  const task: RowTask = { file, text, severities: options.severities ?? {}, wish };
  const here = new RowWorker(task, engine);
  const others = new RowQueue(task);
  // Threads load and warm up while the first tag is made here.
  let all = 1;
  const onCount = (tags: number): void => {
    all = tags;
    others.start(Array.from({ length: tags }, (_, row) => ({ row })).slice(1));
  };
  try {
    const first = await engine.compute(text, { ...options, row: 0, onCount });
    const own = await here.of(first);
    let done = 1;
    progress?.(done, all);
    yield { first, made: own };
    for await (const made of others.made(here)) {
      progress?.(++done, all);
      yield { first, made };
    }
  } finally {
    await others.end();
  }
}

/** In the order in which they are asked for. */
export async function* eachAsked(engine: Engine, task: RowTask, asked: readonly TagAsk[]): AsyncGenerator<RowResult> {
  const rows = new RowQueue(task);
  rows.start(asked);
  try {
    yield* rows.made(new RowWorker(task, engine));
  } finally {
    await rows.end();
  }
}

/** Whatever makes rows, some at once or one after the other. */
interface RowMaker {
  make(ask: TagAsk): Promise<RowResult>;
}

/** Tags of a spec, made in this thread and, if they are many, in others. */
class RowQueue {
  readonly #task: RowTask;
  #asked: readonly TagAsk[] = [];
  #threads: RowThreads | undefined;
  readonly #coming = new Map<number, Promise<RowResult>>();
  #next = 0;

  constructor(task: RowTask) {
    this.#task = task;
  }

  /** Other threads begin at once, this one once the tags are awaited. */
  start(asked: readonly TagAsk[]): void {
    this.#asked = asked;
    const count = asked.length < fewRows ? 0 : Math.min(availableParallelism(), mostThreads) - 1;
    if (count < 1 || program === undefined) return;
    if (asked.length >= sparing.from) setFlagsFromString(`--heap-growing-percent=${sparing.percent}`);
    this.#threads = new RowThreads(program, this.#task, count);
    this.#request(this.#threads, 0);
  }

  async *made(here: RowMaker): AsyncGenerator<RowResult> {
    const threads = this.#threads;
    threads?.take(here);
    for (const [index, ask] of this.#asked.entries()) {
      if (threads) this.#request(threads, index);
      yield await (this.#coming.get(index)?.catch(() => here.make(ask)) ?? here.make(ask));
      // Results that have been delivered are released.
      this.#coming.delete(index);
    }
  }

  async end(): Promise<void> {
    await this.#threads?.end();
  }

  #request(threads: RowThreads, from: number): void {
    const until = Math.min(this.#asked.length, from + (threads.count + 1) * ahead);
    for (; this.#next < until; this.#next++) this.#coming.set(this.#next, threads.make(this.#asked[this.#next]!));
  }
}

class RowThreads {
  readonly count: number;
  readonly #all: readonly RowThread[];
  /** Each as often as it takes rows at once; those that are free last are taken first. */
  readonly #free: RowMaker[];
  readonly #waiting: ((maker: RowMaker) => void)[] = [];

  constructor(program: string, task: RowTask, count: number) {
    this.count = count;
    this.#all = Array.from({ length: count }, () => new RowThread(program, task));
    this.#free = Array.from({ length: atOnce }, () => this.#all).flat();
  }

  /** Gives rows to this maker, too, one at a time. */
  take(maker: RowMaker): void {
    const next = this.#waiting.shift();
    if (next) next(maker);
    else this.#free.push(maker);
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
      this.take(maker);
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
