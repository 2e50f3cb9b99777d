/** A thread that searches, as seen from where it is asked. */

import type { Layout } from '../layout.ts';
import type { FromThread, ToThread } from './messages.ts';

/** A thread that has been started, wherever it runs. */
export interface NestThread {
  readonly post: (message: ToThread) => void;
  /** Called once. `fail`: the thread has ended by itself, or never began. */
  readonly listen: (hear: (message: FromThread) => void, fail: () => void) => void;
  readonly end: () => void;
}

export class Searcher {
  /** Nothing comes from there any more. */
  isBroken = false;
  readonly #thread: NestThread;
  #onBetter: (layout: Layout) => void = () => undefined;
  #settle: (layout: Layout | undefined) => void = () => undefined;

  constructor(thread: NestThread) {
    this.#thread = thread;
    thread.listen(
      (message) => {
        if (message.type === 'better') this.#onBetter(message.layout);
        else this.#settle(message.type === 'done' ? message.layout : undefined);
      },
      () => {
        this.isBroken = true;
        this.#settle(undefined);
      },
    );
  }

  /** `undefined` where it was stopped, or came to nothing. One at a time. */
  search(
    wanted: Extract<ToThread, { type: 'search' }>,
    onBetter: (layout: Layout) => void,
  ): Promise<Layout | undefined> {
    this.#onBetter = onBetter;
    return new Promise((resolve) => {
      this.#settle = resolve;
      if (this.isBroken) resolve(undefined);
      else this.#thread.post(wanted);
    });
  }

  stop(): void {
    if (!this.isBroken) this.#thread.post({ type: 'stop' });
  }

  end(): void {
    this.#thread.end();
  }
}
