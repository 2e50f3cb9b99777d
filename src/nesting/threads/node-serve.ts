/** The program of a thread of Node that lays out. */

import { setImmediate } from 'node:timers/promises';
import { parentPort } from 'node:worker_threads';
import { serveSearches } from './serve.ts';
import type { ToThread } from './messages.ts';

const port = parentPort!;
serveSearches({
  post: (message) => {
    port.postMessage(message);
  },
  listen: (hear) => {
    port.on('message', (message: ToThread) => {
      hear(message);
    });
  },
  giveWay: () => setImmediate(),
});
