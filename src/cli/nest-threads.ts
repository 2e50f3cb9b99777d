/** Threads that lay out, where the program is bundled and the computer has the processors. */

import { availableParallelism } from 'node:os';
import { fileURLToPath } from 'node:url';
import { NestThreads } from '../nesting/threads/nest-threads.ts';
import { nodeThreads } from '../nesting/threads/node-thread.ts';

/** To be ended, or the program waits for them. */
export function newNestThreads(): NestThreads {
  const isBundled = import.meta.url.endsWith('.mjs');
  if (!isBundled || availableParallelism() < 2) return new NestThreads();
  return new NestThreads(nodeThreads(fileURLToPath(new URL('nest-thread.mjs', import.meta.url))));
}
