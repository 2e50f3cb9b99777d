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
    for (const words of new Set(warnings.map(({ message, onPaper = message }) => onPaper))) add().fact('·', words, 5);
  });
}

/** How the machine is set for each stock, and what to beware of. */
export function ofStocks(begin: () => Flow, { layout: { sheets } }: LaidOutJob): Flow[] {
  const used = [...new Set(sheets.map(({ stock }) => stock))].map((name) => {
    const own = sheets.filter(({ stock }) => stock === name);
    return { name, tag: { ...sheetTag(own[0]!, name), pieces: own.flatMap((sheet) => sheetTag(sheet, name).pieces) } };
  });
  return [
    ...used.flatMap(({ name, tag }) => facts(begin, `Material: ${clip(name)}`, stockFacts(tag))),
    ...safety(
      begin,
      used.map(({ tag }) => tag.stock),
    ),
  ];
}
