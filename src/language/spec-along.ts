/** The text of a spec that goes along with what is made of it, with everything in it that it drew on. */

import type { Report } from '../engine/engine.ts';
import type { Job } from '../export/job.ts';
import { selfContained } from './self-contained.ts';

/** The job as it is where its text would not stand alone. */
export function withSpec(job: Job, { source, uses }: Pick<Report, 'source' | 'uses'>): Job {
  const result = selfContained(source, uses);
  return 'text' in result ? { ...job, spec: result.text } : job;
}
