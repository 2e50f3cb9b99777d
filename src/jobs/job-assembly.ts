/** Assembly sheets of a job: how the layers of each spec go together, as on the first of its tags. */

import { assemblyPages, isLayered } from '../export/assembly-sheet.ts';
import type { Tools } from '../export/job.ts';
import type { Page } from '../export/page.ts';
import { counted } from '../core/units.ts';
import { planCuts } from '../toolpath/cut-plan.ts';
import { madeName } from './by-order.ts';
import type { LaidOutJob } from './job.ts';

/** Empty if nothing is glued. */
export async function jobAssembly({ pieces: { tags } }: LaidOutJob, tools: Tools): Promise<Page[]> {
  const pages: Page[] = [];
  for (const spec of new Set(tags.map((tag) => tag.spec))) {
    const own = tags.filter((tag) => tag.spec === spec);
    const first = own.find(({ tag }) => isLayered(tag));
    const plan = first && planCuts(first.tag);
    if (!first || !plan) continue;
    const count = own.reduce((sum, { copies }) => sum + copies, 0);
    const shown = count > 1 && first.label !== '' ? `, here “${first.label}”` : '';
    const tag = { ...first.tag, title: `${madeName(first)}: ${counted(count, 'tag')}${shown}` };
    pages.push(...(await assemblyPages({ tag, plan, issues: [], fonts: [] }, tools)));
  }
  return pages;
}
