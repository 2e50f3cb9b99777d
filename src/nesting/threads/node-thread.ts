/** Threads of Node that lay out: how they are started, and how many there may be. */

import { availableParallelism } from 'node:os';
import { Worker } from 'node:worker_threads';
import { threadsFor } from './thread-count.ts';
import type { NestThread } from './searcher.ts';
import type { FromThread, ToThread } from './messages.ts';
import type { ThreadSource } from './nest-threads.ts';

/** A search takes a core, and there are two for one layout (`best-of.ts`); of two stocks both are laid out at once. Each takes some memory. */
const mostThreads = 4;

/** Room for what is made and soon forgotten, in MB. A search works on numbers and makes little of it; the usual 48 would hardly be emptied. */
const youngMb = 12;

/** `program`: what `node-serve.ts` has been bundled to. */
export function nodeThreads(program: string): ThreadSource {
  return { start: () => started(program), count: threadsFor(availableParallelism(), mostThreads) };
}

function started(program: string): NestThread {
  const worker = new Worker(program, { resourceLimits: { maxYoungGenerationSizeMb: youngMb } });
  return {
    post: (message: ToThread) => {
      worker.postMessage(message);
    },
    listen: (hear, fail) => {
      worker.on('message', (message: FromThread) => {
        hear(message);
      });
      worker.on('error', fail);
      worker.on('exit', fail);
    },
    end: () => void worker.terminate(),
  };
}
