/** The sheet map of a job, all of its pages at once. */

import type { Page } from '../../../src/export/page/page.ts';
import type { LaidOutJob } from '../../../src/jobs/job.ts';
import { sheetMap } from '../../../src/jobs/papers/sheet-map.ts';
import { tools } from './tools.ts';

export async function mapPages(job: LaidOutJob, own: Parameters<typeof sheetMap>[1] = tools): Promise<Page[]> {
  return [...(await sheetMap(job, own))];
}
