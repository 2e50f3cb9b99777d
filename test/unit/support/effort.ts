/** Processor time, which is that of the work alone: on a busy machine the clock says how long others took. */

import assert from 'node:assert/strict';

/** What this process has worked so far, in s. */
export function worked(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1e6;
}

/** Fails if more than `most` s of work were done since `worked` said `since`. */
export function assertWorked(since: number, most: number, what = 'it'): void {
  const seconds = worked() - since;
  assert.ok(seconds < most, `${what} took ${seconds.toFixed(2)} s of work, more than ${most} s`);
}
