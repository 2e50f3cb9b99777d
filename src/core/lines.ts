/** Lines of a text, by offsets, whichever line ends it has. */

import type { TextRange } from './issue.ts';

/** What the text ends its lines with. */
export function newLineOf(text: string): string {
  return text.includes('\r\n') ? '\r\n' : '\n';
}

/** Where the line begins that holds the offset. */
export function lineStart(text: string, offset: number): number {
  return text.lastIndexOf('\n', offset - 1) + 1;
}

/** Where the last line ends, a comment included, that the content of a range is on. */
export function lastLineEnd(text: string, { start, end }: TextRange): number {
  const content = start + text.slice(start, end).trimEnd().length;
  return content + /\r?\n|$/.exec(text.slice(content))!.index;
}
