/** Turns one text into another by few edits, so that cursors, folds and the undo stack survive. */

import { diffWordsWithSpace } from 'diff';
import type { TextEdit } from '../../core/issue.ts';

/** In text order, without touching one another. */
export function editsBetween(before: string, after: string): TextEdit[] {
  const edits: TextEdit[] = [];
  let offset = 0;
  let open: { start: number; text: string } | undefined;
  const close = () => {
    if (open) edits.push({ range: { start: open.start, end: offset }, text: open.text });
    open = undefined;
  };
  for (const { value, added, removed } of diffWordsWithSpace(before, after)) {
    if (!added && !removed) close();
    else open ??= { start: offset, text: '' };
    if (added && open) open.text += value;
    if (!added) offset += value.length;
  }
  close();
  return edits;
}
