/** From a text to another by as few edits as may be, so that cursors, folds and the undo stack keep their places. */

import { diffWordsWithSpace } from 'diff';
import type { TextEdit } from '../../core/issue.ts';

/** In the order of the text; they do not touch. */
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
