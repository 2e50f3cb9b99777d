/** Workers of a browser that lay out. A host that has none of its own, or forbids them, lays out by itself. */

import * as vscode from 'vscode';
import type { FromThread, ToThread } from '../nesting/threads/messages.ts';
import type { ThreadSource } from '../nesting/threads/nest-threads.ts';
import { threadsFor } from '../nesting/threads/thread-count.ts';
import type { NestThread } from '../nesting/threads/searcher.ts';

/** What of a browser's worker is needed here; the extension is compiled without the DOM. */
interface WebWorker {
  postMessage: (message: ToThread) => void;
  onmessage: ((event: { readonly data: FromThread }) => void) | null;
  onerror: ((event: unknown) => void) | null;
  terminate: () => void;
}

interface Scope {
  readonly Worker?: new (url: string) => WebWorker;
  readonly Blob?: new (parts: readonly Uint8Array[], options: { readonly type: string }) => object;
  readonly URL?: {
    readonly createObjectURL?: (blob: object) => string;
    readonly revokeObjectURL?: (url: string) => void;
  };
  readonly navigator?: { readonly hardwareConcurrency?: number };
}

/** As on the desktop: a search takes a core, and there are two for one layout. */
const mostThreads = 4;
/** Where the browser does not say. */
const usualCores = 2;

/** A worker may be of the editor's own origin only, which the extension's files are not: the script is read first. */
export function webThreads(extensionUri: vscode.Uri): ThreadSource | undefined {
  const { Worker, Blob, URL, navigator } = globalThis as unknown as Scope;
  if (!Worker || !Blob || !URL?.createObjectURL) return undefined;
  const script = vscode.Uri.joinPath(extensionUri, 'dist', 'web', 'nest-thread.js');
  const { createObjectURL } = URL;
  const start = async (): Promise<WebWorker> => {
    const url = createObjectURL.call(
      URL,
      new Blob([await vscode.workspace.fs.readFile(script)], { type: 'text/javascript' }),
    );
    return new Worker(url);
  };
  return {
    start: () => threadOf(start()),
    count: threadsFor(navigator?.hardwareConcurrency ?? usualCores, mostThreads),
  };
}

/** What is posted before the worker is there waits for it. */
function threadOf(starting: Promise<WebWorker>): NestThread {
  const whenThere = (act: (worker: WebWorker) => void): void => {
    starting.then(act, () => undefined);
  };
  return {
    post: (message) => {
      whenThere((worker) => {
        worker.postMessage(message);
      });
    },
    listen: (hear, fail) => {
      starting.then((worker) => {
        worker.onmessage = ({ data }) => {
          hear(data);
        };
        worker.onerror = fail;
      }, fail);
    },
    end: () => {
      whenThere((worker) => {
        worker.terminate();
      });
    },
  };
}
