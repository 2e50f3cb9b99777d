/** What a job needs of its host: files, and tags made of them. */

import type { ComputeOptions, Engine } from '../../engine/engine.ts';
import type { Batch } from '../../spec/batch/batch.ts';
import type { MadeTag } from './left-out.ts';

/** Which tag of a spec: a row of its own batch, or of one that takes its place. */
export interface TagAsk {
  readonly row: number;
  readonly batch?: Batch;
}

export interface JobReading {
  readonly engine: Engine;
  /** Full path of a file named in the job; `undefined` if it may not be read. */
  readonly locate: (relative: string) => string | undefined;
  /** Options for computing a spec, by its full path. */
  readonly optionsFor: (spec: string) => ComputeOptions;
  readonly checkpoint: () => Promise<void>;
  /** Makes many tags of a spec (by its full path) at once, in the order asked for; without it, the engine makes one after another. */
  readonly eachTag?: (
    spec: string,
    text: string,
    asked: readonly TagAsk[],
  ) => AsyncIterable<Pick<MadeTag, 'row' | 'issues' | 'tag'>>;
  /** Number of tags made, and number known so far. */
  readonly progress?: (done: number, all: number) => void;
}
