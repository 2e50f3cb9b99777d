/** What a job needs of its host: files, and tags made of them. */

import type { ComputeOptions, Engine } from '../../engine/engine.ts';
import type { KeptTags } from './kept-tags.ts';
import type { MadeTag } from './left-out.ts';
import type { TagAsk } from './tag-ask.ts';

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
  /** Tags made before, of which those that come out the same are not made again; without it, nothing is kept. */
  readonly kept?: KeptTags;
  /** Number of tags made, and number known so far. */
  readonly progress?: (done: number, all: number) => void;
}
