/** The work on a tag or a sheet as a table on paper, with boxes to tick. */

import type { Flow } from '../page/flow.ts';
import type { Job } from '../job/job.ts';
import { workRows } from './work-rows.ts';

/** Left edge of each column of the work table, in mm. */
const columns = [12, 62, 92, 120, 150] as const;

export function writeWork(flow: Flow, job: Pick<Job, 'tag' | 'plan'>): void {
  for (const { cells, color, isTotal } of workRows(job)) {
    const top = flow.y;
    let lowest = top;
    cells.forEach((cell, i) => {
      flow.y = top;
      const [indent, end] = [columns[i]!, columns[i + 1] ?? flow.width + 2];
      if (cell !== '') flow.write(cell, { indent, width: end - indent - 2, bold: isTotal || i === 0 });
      lowest = Math.min(lowest, flow.y);
    });
    // A box to tick, and the colour to look for in the files.
    if (color !== undefined) {
      flow.page.box(flow.left, top - 4.3, 3, 3, { stroke: '#222222', lineWidth: 0.25 });
      flow.page.box(flow.left + 6, top - 4.3, 4, 3, { fill: color });
    }
    flow.y = lowest;
  }
}
