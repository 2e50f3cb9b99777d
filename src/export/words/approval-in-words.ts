/** Whether the customer has approved a tag, for the bench. */

import type { Job } from '../job/job.ts';

/** `undefined` for a tag without a record, or that is not in it. `canWrite`: whether a text can be on paper. */
export function approvalInWords({ tag, issues }: Job, canWrite: (text: string) => boolean): string | undefined {
  const { approval } = tag;
  if (!approval || approval.tags.length === 0) return undefined;
  const { on, note } = approval;
  const who = note !== undefined && canWrite(note) ? `: ${note}` : '';
  const isChanged = issues.some(({ code }) => code === 'not-as-approved');
  return `Approved on ${on}${who}${isChanged ? '. Changed since then: see below' : ''}.`;
}
