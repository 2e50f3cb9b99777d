/** A language beside that of specs, as completion goes by it. */

import { readJob } from '../jobs/read-job.ts';
import { readOffcuts } from '../jobs/offcuts.ts';
import type { Issue } from '../core/issue.ts';
import type { Uses } from '../spec/used-files.ts';
import { jobSchema, offcutsSchema } from './schema.ts';
import type { SchemaNode } from './schema.ts';
import { nowherePlaces } from './nowhere.ts';

export interface Grammar {
  readonly root: SchemaNode;
  /** What is wrong with a value of the whole file. */
  readonly issues: (value: unknown, uses: Uses) => readonly Issue[];
}

/** A stock that is not there yet is no reason to withhold a key that is there to be typed over. */
export const jobGrammar: Grammar = {
  root: jobSchema,
  issues: (value, uses) =>
    readJob({ value, ...nowherePlaces }, uses).issues.filter(({ code }) => code !== 'unknown-name'),
};

export const offcutsGrammar: Grammar = {
  root: offcutsSchema,
  issues: (value) => readOffcuts({ value, ...nowherePlaces }).issues,
};
