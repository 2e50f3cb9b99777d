/** The other end of `NestThreads`: one search at a time, as they are asked for. */

import { searchHere } from '../best-of.ts';
import { unpacked } from './messages.ts';
import type { FromThread, ToThread } from './messages.ts';

export interface ThreadPort {
  readonly post: (message: FromThread) => void;
  readonly listen: (hear: (message: ToThread) => void) => void;
  /** Lets messages come in. */
  readonly giveWay: () => Promise<void>;
}

/** Whether it is to stop is looked at this often, in ms. */
const turnMs = 25;

/** A layout on the way is told this often at most, in ms: taking it in costs the other side something. */
const tellMs = 100;

class Stopped extends Error {}

export function serveSearches({ post, listen, giveWay }: ThreadPort): void {
  let isWanted = false;
  const search = async ({ task, seed, tells }: Extract<ToThread, { type: 'search' }>): Promise<void> => {
    isWanted = true;
    let turn = performance.now();
    let told = -Infinity;
    const checkpoint = async (): Promise<void> => {
      if (performance.now() - turn < turnMs) return;
      await giveWay();
      turn = performance.now();
      if (!isWanted) throw new Stopped();
    };
    const onBetter: Parameters<typeof searchHere>[2]['onBetter'] = (layout) => {
      if (performance.now() - told < tellMs) return;
      told = performance.now();
      post({ type: 'better', layout });
    };
    try {
      const layout = await searchHere(unpacked(task), seed, { checkpoint, ...(tells ? { onBetter } : {}) });
      post({ type: 'done', layout });
    } catch (error) {
      post(error instanceof Stopped ? { type: 'stopped' } : { type: 'fault', message: String(error) });
    }
  };
  listen((message) => {
    if (message.type === 'stop') isWanted = false;
    else void search(message);
  });
}
