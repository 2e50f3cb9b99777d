/**
 * Comments with which the writer of a spec accepts a finding: `# accept weak-bridge: the backing carries it`. At the
 * end of a line it applies to that line; on a line of its own, to the next line that has content.
 */

import { lineStart } from '../core/lines.ts';
import type { TextRange } from '../core/issue.ts';
import { tokensOf } from './yaml/tokens.ts';

export interface AcceptComment {
  /** Range of the whole comment, `#` included. */
  readonly range: TextRange;
  /** The codes with their ranges; they need not be known ones. */
  readonly codes: readonly { readonly code: string; readonly range: TextRange }[];
  /** Empty if none is given. */
  readonly reason: string;
  /** Offset of the start of the line it applies to; the end of the text if nothing follows. */
  readonly line: number;
}

const form = /^#\s*accept(?=[\s:,]|$)([^:]*)(?::\s*(.*))?$/;

/** The accepting comments, in the order of the text. */
export function acceptComments(text: string): AcceptComment[] {
  // Nearly every spec has none, and lexing takes time.
  if (!/#\s*accept/.test(text)) return [];
  return tokensOf(text).flatMap(({ start, text: comment, kind }): AcceptComment[] => {
    const match = kind === 'comment' ? form.exec(comment) : null;
    if (!match) return [];
    const [, listed = '', reason = ''] = match;
    const listedAt = start + comment.indexOf(listed, comment.indexOf('accept') + 'accept'.length);
    const codes = [...listed.matchAll(/[^\s,]+/g)].map(({ 0: code, index }) => {
      return { code, range: { start: listedAt + index, end: listedAt + index + code.length } };
    });
    const range = { start, end: start + comment.length };
    return [{ range, codes, reason: reason.trim(), line: lineSpokenOf(text, start) }];
  });
}

function lineSpokenOf(text: string, comment: number): number {
  const begin = lineStart(text, comment);
  if (text.slice(begin, comment).trim() !== '') return begin;
  let at = text.indexOf('\n', comment) + 1;
  while (at > 0) {
    const end = text.indexOf('\n', at);
    const line = text.slice(at, end < 0 ? undefined : end).trim();
    if (line !== '' && !line.startsWith('#')) return at;
    if (end < 0) break;
    at = end + 1;
  }
  return text.length;
}
