/** The value that was likely meant by one that looks like a slip. */

import { likelyKerf } from '../../checks/odd-value.ts';
import { fine, shortLength } from '../../core/units.ts';
import { kerfEdits } from '../../edits/kerf.ts';
import type { Case, Remedy } from '../candidate.ts';

export function likelyValue({ issue, report, tag }: Case): Remedy[] {
  const { stock, units } = tag;
  const kerf = issue.width === stock.kerf ? likelyKerf(stock) : undefined;
  const edits = kerf === undefined ? undefined : kerfEdits(report.source, kerf, units, stock.name);
  if (kerf === undefined || !edits) return [];
  const description = `kerf ${shortLength(kerf, units, fine)}`;
  return [{ words: 'Move the point of the kerf', candidates: [{ description, edits }], isChoice: true }];
}
