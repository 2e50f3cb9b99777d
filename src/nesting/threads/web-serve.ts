/** The program of a browser's worker that lays out. */

import { serveSearches } from './serve.ts';
import type { FromThread, ToThread } from './messages.ts';

/** Of a worker's global object, what is needed here. */
interface WorkerScope {
  postMessage: (message: FromThread) => void;
  onmessage: ((event: { readonly data: ToThread }) => void) | null;
}

const scope = globalThis as unknown as WorkerScope;
serveSearches({
  post: (message) => {
    scope.postMessage(message);
  },
  listen: (hear) => {
    scope.onmessage = ({ data }) => {
      hear(data);
    };
  },
  giveWay: () => new Promise((resolve) => setTimeout(resolve, 0)),
});
