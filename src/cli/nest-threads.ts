/** Threads that lay out, where the program is bundled and the computer has the processors. */

import { availableParallelism } from 'node:os';
import { fileURLToPath } from 'node:url';
import { setFlagsFromString } from 'node:v8';
import { NestThreads } from '../nesting/threads/nest-threads.ts';
import { nodeThreads } from '../nesting/threads/node-thread.ts';
import { collectGarbage } from './collect-garbage.ts';
import { isOwnProcess } from './own-process.ts';

/** By how much memory may grow before garbage is collected, in percent: without, it would be twice what hundreds of names need. */
const growthPercent = 20;

/** To be ended, or the program waits for them. `keepMs`: by default they end with each layout, since what comes after it needs their memory. */
export function newNestThreads(keepMs = 0): NestThreads {
  const isBundled = import.meta.url.endsWith('.mjs');
  if (!isBundled) return new NestThreads();
  // Holds for the whole process.
  if (isOwnProcess(import.meta.url)) setFlagsFromString(`--heap-growing-percent=${growthPercent}`);
  if (availableParallelism() < 2) return new NestThreads();
  const threads = nodeThreads(fileURLToPath(new URL('nest-thread.mjs', import.meta.url)));
  const start: typeof threads.start = () => {
    // They need the memory, and this thread waits for them.
    collectGarbage();
    return threads.start();
  };
  return new NestThreads({ ...threads, start }, keepMs);
}
