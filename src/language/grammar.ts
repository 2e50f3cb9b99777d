/** A language other than specs, for completion. */

import { readJob } from '../jobs/read/read-job.ts';
import { readOffcuts } from '../jobs/read/offcuts.ts';
import type { Issue } from '../core/issue.ts';
import type { Uses } from '../spec/files/used-files.ts';
import { jobSchema, offcutsSchema } from './schema.ts';
import type { SchemaNode } from './schema.ts';
import { nowherePlaces } from './nowhere.ts';

export interface Grammar {
  readonly root: SchemaNode;
  /** Issues of a value for the whole file. */
  readonly issues: (value: unknown, uses: Uses) => readonly Issue[];
}

/** A key whose value is meant to be typed over is offered even if its stock does not exist yet. */
export const jobGrammar: Grammar = {
  root: jobSchema,
  issues: (value, uses) =>
    readJob({ value, ...nowherePlaces }, uses).issues.filter(({ code }) => code !== 'unknown-name'),
};

export const offcutsGrammar: Grammar = {
  root: offcutsSchema,
  issues: (value) => readOffcuts({ value, ...nowherePlaces }).issues,
};
