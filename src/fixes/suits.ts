/** Decides whether a change suits one tag: what it must keep there, and whether the tag needs it at all. */

import type { Judged, Report } from '../engine/engine.ts';
import { causeOf } from '../core/issue.ts';
import type { Issue } from '../core/issue.ts';
import type { IssueCode } from '../core/issue-kinds.ts';
import { keepsApart } from './apart-from-letters.ts';
import { keptLookShare } from './gentle.ts';
import { lookChange } from './look.ts';
import { isNoWorse } from './no-worse.ts';
import { readsAsWell } from './reads-as-well.ts';
import { ringsReadAsWell } from './rings-read.ts';
import { staysPut } from './stays-put.ts';

/** Problems of all tags of a batch together, which no tag has by itself. */
export const ofWholeBatch: ReadonlySet<IssueCode> = new Set(['uneven-sizes', 'uneven-hanging']);

/** Whether the tag has the problem. */
export function needsFix(issue: Issue, { issues }: Pick<Judged, 'issues'>): boolean {
  if (ofWholeBatch.has(issue.code)) return true;
  return issues.some((other) => causeOf(other) === causeOf(issue));
}

/** Whether a tag stays as sound as before, and looks the same unless it has the problem too, or another one that is solved as well. */
export function suits(issue: Issue, was: Report, is: Report): boolean {
  if (!isNoWorse(was, is) || !looksAsMeant(was, is)) return false;
  return needsFix(issue, was) || isRidOfAny(was, is) || lookChange(was, is).share <= keptLookShare;
}

export function looksAsMeant(was: Report, is: Report): boolean {
  return readsAsWell(was, is) && ringsReadAsWell(was, is) && staysPut(was, is) && keepsApart(was, is);
}

/** Whether a warning or an error of a tag is gone. */
function isRidOfAny(was: Report, is: Report): boolean {
  const left = new Set(is.issues.map(causeOf));
  return was.issues.some((issue) => issue.severity !== 'info' && !left.has(causeOf(issue)));
}
