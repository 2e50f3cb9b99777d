/** Which tag of a spec is asked for. */

import type { Batch } from '../../spec/batch/batch.ts';

/** A row of its own batch, or of one that takes its place. */
export interface TagAsk {
  readonly row: number;
  readonly batch?: Batch;
}
