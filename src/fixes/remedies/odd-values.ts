/** The value that was likely meant by one that looks like a slip. */

import { slipInMaterial } from '../../checks/measures/material-slips.ts';
import { likelyKerf } from '../../checks/odd-value.ts';
import { fine, shortLength } from '../../core/units.ts';
import { kerfEdits } from '../../edits/kerf.ts';
import type { Case, Remedy } from '../candidate.ts';

export function likelyValue(at: Case): Remedy[] {
  return [...likelyMaterial(at), ...pointMoved(at)];
}

function likelyMaterial({ issue: { range }, report }: Case): Remedy[] {
  const slip = slipInMaterial(report.source.text.slice(range.start, range.end));
  if (!slip) return [];
  const edits = [{ range, text: slip.name }];
  return [{ words: 'Correct the material', candidates: [{ description: slip.name, edits }] }];
}

function pointMoved({ issue, report, tag }: Case): Remedy[] {
  const { stock, units } = tag;
  const kerf = issue.width === stock.kerf ? likelyKerf(stock) : undefined;
  const edits = kerf === undefined ? undefined : kerfEdits(report.source, kerf, units, stock.name);
  if (kerf === undefined || !edits) return [];
  const description = `kerf ${shortLength(kerf, units, fine)}`;
  return [{ words: 'Move the point of the kerf', candidates: [{ description, edits }], isChoice: true }];
}
