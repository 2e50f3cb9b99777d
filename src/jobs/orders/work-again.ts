/** The work in a job whose text has changed, where the same is asked for: nothing is made again. */

import type { Issue } from '../../core/issue.ts';
import type { SpecSource } from '../../spec/yaml/source.ts';
import type { JobModel } from '../read/model.ts';
import type { JobReading } from './reading.ts';
import { jobWork } from './work.ts';
import type { JobWork } from './work.ts';

export interface MadeWork {
  /** What it was made of, besides the files that the job names. */
  readonly asked: string;
  readonly work: JobWork;
}

/** `told`: messages about the files that the job uses. `before`: of an earlier text, while no other file has changed. */
export async function workOf(
  model: JobModel,
  source: SpecSource,
  reading: JobReading,
  { told, before }: { readonly told: readonly string[]; readonly before?: MadeWork | undefined },
): Promise<MadeWork> {
  const asked = JSON.stringify([model.tags, told]);
  if (before?.asked === asked) return { asked, work: workIn(source, before.work) };
  return { asked, work: await jobWork(model, source, reading, new Set(told)) };
}

/** With its issues where they are in another text. */
function workIn(source: SpecSource, work: JobWork): JobWork {
  const placed = new Map(
    work.issues.map((issue): [Issue, Issue] => [issue, { ...issue, range: source.range(issue.path) }]),
  );
  const warnings = new Map([...work.warnings].map(([issue, warning]) => [placed.get(issue)!, warning]));
  return { ...work, issues: [...placed.values()], warnings };
}
