/**
 * Formats a spec: two spaces for each level, one after commas and colons, values aligned where the writer has begun to
 * align them. Only white space changes; the code verifies that the value and the comments are still the same.
 */

import { newLineOf } from '../../core/lines.ts';
import { SpecSource } from '../../spec/yaml/source.ts';
import { tokensOf } from '../../spec/yaml/tokens.ts';
import type { SpecToken } from '../../spec/yaml/tokens.ts';
import { Indentation } from './indentation.ts';

/** The formatted text, or the text unchanged if it cannot be parsed. */
export function formatted(text: string): string {
  const source = new SpecSource(text);
  if (source.issues.length > 0 || !source.tree) return text;
  const newLine = newLineOf(text);
  const set = setOut(tokensOf(text), new Indentation(source));
  const tidy = `${set.replace(/(?:[^\S\n]*\n){3,}/g, '\n\n').trim()}\n`.replaceAll('\n', newLine);
  return hasSameValues(text, tidy) ? tidy : text;
}

function hasSameValues(before: string, after: string): boolean {
  const contentOf = (text: string) => {
    const { value, issues } = new SpecSource(text);
    const comments = tokensOf(text).flatMap((token) => (token.kind === 'comment' ? [token.text.trim()] : []));
    return JSON.stringify([value, issues.length, comments]);
  };
  return contentOf(before) === contentOf(after);
}

function setOut(tokens: readonly SpecToken[], layout: Indentation): string {
  let out = '';
  let depth = 0;
  let atLineStart = true;
  for (const [index, token] of tokens.entries()) {
    const { kind, text, start } = token;
    if (kind === 'space') {
      if (text.includes('\n')) {
        out = out.replace(/[^\S\n]+$/, '') + '\n'.repeat(text.split('\n').length - 1);
        atLineStart = true;
      }
      continue;
    }
    const written = text.replaceAll('\r\n', '\n');
    const before = previous(tokens, index);
    // Multi-line text has its own indentation, which is shifted with its key.
    if (/^\s/.test(written)) out += shifted(written, layout.shiftAt(start));
    else if (atLineStart) out += ' '.repeat(layout.indentOf(start)) + written;
    else out += ' '.repeat(gap(before.token!, before.space, token, depth, layout)) + written;
    atLineStart = text.endsWith('\n');
    if (kind === 'mark' && (text === '{' || text === '[')) depth++;
    if (kind === 'mark' && (text === '}' || text === ']')) depth--;
  }
  return out;
}

function shifted(block: string, by: number): string {
  return block.replace(/^( *)(?=\S)/gm, (indent) => ' '.repeat(Math.max(1, indent.length + by)));
}

/** The previous token on the same line, and the number of spaces between. */
function previous(tokens: readonly SpecToken[], index: number): { token: SpecToken | undefined; space: number } {
  const before = tokens[index - 1];
  if (before?.kind !== 'space') return { token: before, space: 0 };
  return { token: tokens[index - 2], space: before.text.length };
}

function gap(before: SpecToken, space: number, token: SpecToken, depth: number, layout: Indentation): number {
  if (token.kind === 'comment') return Math.max(space, 1);
  const [left, right] = [before, token].map(({ kind, text }) => (kind === 'mark' ? text : ''));
  if (left === ':') return space === 0 ? 0 : (layout.gapBehind(before.start) ?? 1);
  if (left === '-' || left === '?') return 1;
  if (depth === 0) return right === ':' ? 0 : space;
  if (left === '{' || left === '[' || right === '}' || right === ']' || right === ',' || right === ':') return 0;
  return left === ',' ? 1 : space;
}
