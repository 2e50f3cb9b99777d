/** What to know before a job is cut: warnings, how the machine is set for each stock, and cautions. */

import { clip } from '../core/length.ts';
import type { Flow } from '../export/flow.ts';
import { facts, safety, section } from '../export/job-sheet.ts';
import { stockFacts } from '../export/stock-facts.ts';
import type { LaidOutJob } from './job.ts';
import { sheetTag } from './totals.ts';

/** Warnings about what is cut all the same. */
export function toLookAt(begin: () => Flow, { issues }: LaidOutJob): Flow[] {
  const warnings = issues.filter(({ severity }) => severity === 'warning');
  return section(begin, 'To look at', (add) => {
    for (const message of new Set(warnings.map((issue) => issue.message))) add().fact('·', message, 5);
  });
}

/** How the machine is set for each stock, and what to beware of. */
export function ofStocks(begin: () => Flow, { layout: { sheets } }: LaidOutJob): Flow[] {
  const first = new Map(sheets.toReversed().map((sheet) => [sheet.stock, sheet]));
  const used = [...new Set(sheets.map(({ stock }) => stock))].map((name) => first.get(name)!);
  return [
    ...used.flatMap((sheet) => facts(begin, `Material: ${clip(sheet.stock)}`, stockFacts(sheetTag(sheet, sheet.name)))),
    ...safety(
      begin,
      used.map(({ from }) => from.stock),
    ),
  ];
}
