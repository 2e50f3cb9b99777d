/** What to know before a job is cut: warnings, how the machine is set for each stock, and cautions. */

import { clip } from '../../core/length.ts';
import type { Flow } from '../../export/page/flow.ts';
import { facts, safety, section } from '../../export/bench/job-sheet.ts';
import { stockFacts } from '../../export/words/stock-facts.ts';
import type { LaidOutJob } from '../job.ts';
import { warningOnPaper } from '../orders/tag-warnings.ts';
import { sheetTag } from '../totals.ts';

const quiet = '#666666';

/** Warnings about what is cut all the same. */
export function toLookAt(begin: () => Flow, { issues, warnings, layout }: LaidOutJob): Flow[] {
  const laid = layout.sheets.flatMap(({ pieces }) => pieces);
  const all = issues
    .filter(({ severity }) => severity === 'warning')
    .map((issue) => {
      const warning = warnings.get(issue);
      if (!warning) return issue.message;
      return warningOnPaper(warning, (spec, { label, piece }) =>
        laid
          .filter(({ of }) => of.of.spec === spec && of.of.label === label && (piece ?? of.piece.id) === of.piece.id)
          .map(({ number }) => number),
      );
    });
  return section(begin, 'To look at', (add) => {
    for (const [index, words] of [...new Set(all)].entries()) {
      const flow = add();
      if (index === 0 && warnings.size > 0)
        flow.write('Numbers are those of the pieces on the maps.', { size: 2.8, fill: quiet });
      flow.fact('·', words, 5);
    }
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
