/** Takes names off the list that keep a shape small on all tags of a batch, which have one size. */

import { sizeSetters } from '../checks/uneven-sizes.ts';
import type { Fix } from '../core/issue.ts';
import type { IssueCode } from '../core/issue-kinds.ts';
import { isWithin } from '../core/values.ts';
import { labelOf, mostSetAside } from '../spec/batch/batch.ts';
import type { Case } from './candidate.ts';
import { asideInWords, setAside } from './set-aside.ts';

/** Problems that a larger size may solve. */
const bySize: ReadonlySet<IssueCode> = new Set([
  'uneven-sizes',
  'hard-to-read',
  'fine-mark',
  'thin-stroke',
  'weak-bridge',
  'gap-closes',
]);

/** `undefined` if the problem is of no shape that some names keep small. */
export function withoutSizeSetters({ report, issue }: Case): Fix[] | undefined {
  const { batch, source, shared = [] } = report;
  const size = shared.find(
    ({ path }) => isWithin(issue.path, path.slice(0, -1)) || (issue.path[0] === 'pieces' && shared.length === 1),
  );
  const found = batch && size && sizeSetters(size, mostSetAside(batch.rows.length));
  if (!found || !(bySize.has(issue.code) || found.rows.includes(report.row))) return undefined;
  const edits = setAside(source, batch.rows, found.rows);
  if (!edits) return [];
  const labels = found.rows.map((row) => labelOf({ batch, row })!);
  const title = `Leave ${asideInWords(labels)}: the others come out ${found.times.toFixed(1)} times as large`;
  return [{ title, edits, look: 1, aside: labels, isChoice: true }];
}
