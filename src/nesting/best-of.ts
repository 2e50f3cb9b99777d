/**
 * The best of a few searches that know nothing of each other: each begins from a seed of its own and has the whole effort to itself. How many
 * there are and which of them is taken does not depend on how many run at once, so the layout is the same on one core and on many.
 */

import type { Layout, PartToNest, SheetRoom } from './layout.ts';
import { nest, usualEffort } from './nest.ts';
import type { NestOptions } from './nest.ts';

/** Where the searches begin. */
export const seeds: readonly number[] = [1, 2];

/** What is to be laid out, and how hard is looked for it. */
export interface NestTask extends Pick<NestOptions, 'fixed'> {
  readonly parts: readonly PartToNest[];
  readonly room: SheetRoom;
  readonly effort: number;
}

export interface Watch {
  /** As of `nest`. */
  readonly checkpoint: () => Promise<void>;
  readonly onBetter?: (layout: Layout) => void;
}

/** One search, in this thread or in another. */
export type RunSearch = (task: NestTask, seed: number, watch: Watch) => Promise<Layout>;

/** Lays out as `nest` does, by several searches. */
export interface Nester {
  (
    parts: readonly PartToNest[],
    room: SheetRoom,
    checkpoint: () => Promise<void>,
    effort?: number,
    options?: Pick<NestOptions, 'fixed' | 'onBetter'>,
  ): Promise<Layout>;
  /** Whether several layouts may be asked for at once; two searches in one thread would disturb one another. */
  readonly takesSeveral?: boolean;
}

/** Uses that differ by less are equal. */
const leastGain = 1e-9;

/** Of equal layouts that of the first seed is taken. `atOnce`: whether searches run beside each other. */
export function bestOf(run: RunSearch, atOnce: boolean): Nester {
  const nester: Nester = async (parts, room, checkpoint, effort = usualEffort, { fixed, onBetter } = {}) => {
    const task = { parts, room, effort, ...(fixed ? { fixed } : {}) };
    let least = Infinity;
    const tell = (layout: Layout): void => {
      if (layout.used > least - leastGain) return;
      least = layout.used;
      onBetter?.(layout);
    };
    const watch = { checkpoint, ...(onBetter ? { onBetter: tell } : {}) };
    const found: Layout[] = [];
    if (atOnce) found.push(...(await Promise.all(seeds.map((seed) => run(task, seed, watch)))));
    else for (const seed of seeds) found.push(await run(task, seed, watch));
    return found.reduce((best, layout) => (layout.used < best.used - leastGain ? layout : best));
  };
  return Object.assign(nester, { takesSeveral: atOnce });
}

export const searchHere: RunSearch = ({ parts, room, effort, fixed }, seed, { checkpoint, onBetter }) =>
  nest(parts, room, checkpoint, effort, { seed, ...(fixed ? { fixed } : {}), ...(onBetter ? { onBetter } : {}) });

/** In this thread, one search after the other. */
export const nestHere: Nester = bestOf(searchHere, false);
