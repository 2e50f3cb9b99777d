/** The lines of a text that may not be valid YAML, and the structure that each line shows on its own. */

import type { TextRange } from '../../core/issue.ts';

export interface SpecLine extends TextRange {
  readonly number: number;
  /** White space characters before the content. */
  readonly indent: number;
  /** End of the content, before a comment and the space ahead of it. */
  readonly contentEnd: number;
  /** The content without indentation and comment. */
  readonly content: string;
  readonly signs: Signs;
}

export interface LineSign {
  readonly at: number;
  readonly sign: string;
}

/** Brackets, quotes and commas that the line leaves open or that are out of place. Offsets refer to the whole text. */
export interface Signs {
  /** Brackets that the line does not close, outermost first. */
  readonly open: readonly LineSign[];
  /** Closing brackets without an opening one in the line. */
  readonly stray: readonly LineSign[];
  /** Brackets that close one of another kind. */
  readonly wrong: readonly (LineSign & { readonly opener: LineSign })[];
  /** Offset of each comma between brackets. */
  readonly commas: readonly number[];
  /** A quote that the line does not close. */
  readonly quote?: number;
  /** Offset after the bracket that closes the last group in which no other is open; absent if there is none. */
  readonly groupEnd?: number;
}

export const closing: Readonly<Record<string, string>> = { '{': '}', '[': ']' };

/** Nobody writes longer lines, or lines that open more brackets, by hand; searching them would only take time. */
const longestLine = 500;
const mostOpen = 12;

/** Whether a line is worth searching. */
export function isByHand({ start, end, signs }: SpecLine): boolean {
  return end - start <= longestLine && signs.open.length <= mostOpen;
}

export function linesOf(text: string): SpecLine[] {
  const lines: SpecLine[] = [];
  let start = 0;
  for (const whole of text.split('\n')) {
    const line = whole.replace(/\r$/, '');
    const indent = /^[\s\u00a0]*/.exec(line)![0].length;
    const { end, signs } = scanned(line, start);
    const content = line.slice(indent, Math.max(indent, end)).trimEnd();
    lines.push({
      number: lines.length,
      start,
      end: start + line.length,
      indent,
      contentEnd: start + indent + content.length,
      content,
      signs,
    });
    start += whole.length + 1;
  }
  return lines;
}

/**
 * Finds brackets, commas and quotes. They count where a value can begin; within plain text they are text, except
 * between brackets.
 */
function scanned(line: string, start: number): { end: number; signs: Signs } {
  const open: LineSign[] = [];
  const stray: LineSign[] = [];
  const wrong: (LineSign & { opener: LineSign })[] = [];
  const commas: number[] = [];
  let groupEnd: number | undefined;
  const signs = (quote?: number): Signs => ({
    ...{ open, stray, wrong, commas },
    ...(quote === undefined ? {} : { quote }),
    ...(groupEnd === undefined ? {} : { groupEnd }),
  });
  let begins = true;
  for (let index = 0; index < line.length; index++) {
    const sign = line[index]!;
    const at = start + index;
    if (sign === '#' && (index === 0 || /\s/.test(line[index - 1]!))) return { end: index, signs: signs() };
    if (/\s/.test(sign)) continue;
    if (begins && (sign === '"' || sign === "'")) {
      const close = closeOf(line, index);
      if (close === undefined) return { end: line.length, signs: signs(at) };
      index = close;
      begins = false;
    } else if (sign in closing && (begins || open.length > 0)) {
      open.push({ at, sign });
      begins = true;
    } else if (sign === '}' || sign === ']') {
      const opener = open.at(-1);
      if (!opener) stray.push({ at, sign });
      else {
        open.pop();
        if (open.length === 0) groupEnd = at + 1;
        if (closing[opener.sign] !== sign) wrong.push({ at, sign, opener });
      }
      begins = false;
    } else {
      if (sign === ',' && open.length > 0) commas.push(at);
      const parts = (sign === ':' || sign === '-') && /\s|$/.test(line[index + 1] ?? '');
      begins = (sign === ',' && open.length > 0) || (sign === ':' && parts) || (sign === '-' && begins && parts);
    }
  }
  return { end: line.length, signs: signs() };
}

/** Offset of the end of the quoted text that begins at `from`. */
function closeOf(line: string, from: number): number | undefined {
  const pattern = line[from] === '"' ? /"(?:[^"\\]|\\.)*"/y : /'(?:[^']|'')*'/y;
  pattern.lastIndex = from;
  const match = pattern.exec(line);
  return match ? from + match[0].length - 1 : undefined;
}
