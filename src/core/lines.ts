/** Lines of a text, by offsets, with either kind of line ending. */

import type { TextRange } from './issue.ts';

/** The line ending that the text uses. */
export function newLineOf(text: string): string {
  return text.includes('\r\n') ? '\r\n' : '\n';
}

/** Offset of the start of the line that contains `offset`. */
export function lineStart(text: string, offset: number): number {
  return text.lastIndexOf('\n', offset - 1) + 1;
}

/** Offset of the end of the last line that the content of a range is on, including any comment on that line. */
export function lastLineEnd(text: string, { start, end }: TextRange): number {
  const content = start + text.slice(start, end).trimEnd().length;
  return content + /\r?\n|$/.exec(text.slice(content))!.index;
}
