/** Repairs texts that YAML misreads unless they are in quotes, and quotes that do not match. */

import type { Issue } from '../../core/issue.ts';
import { knownKeys } from '../schema/known-keys.ts';
import type { SpecLine } from './spec-lines.ts';
import { inQuotes, insertion, quoted, replacement, sign } from './repair.ts';
import type { Repair } from './repair.ts';

export function quoteRepairs(text: string, line: SpecLine): Repair[] {
  return [
    ...unclosed(text, line),
    ...splitKeys(text, line),
    ...keyValues(text, line).flatMap((value) => unquoted(text, value)),
  ];
}

/** `{text: Ivy, Rue}`: a comma in a text, which ends it between brackets. */
export function commaRepairs({ code, range }: Issue, text: string, line: SpecLine): Repair[] {
  if (code !== 'unknown-key') return [];
  const whole = text.slice(line.start, line.contentEnd);
  const values = whole.matchAll(
    /(?<=[{,]\s*)([a-z_]+):\s+([^\s"'{}[\],][^"'{}[\]]*?)(?=\s*(?:,\s*[A-Za-z][\w-]*:\s|[}\]]))/g,
  );
  return [...values].flatMap(({ index, 0: found, 1: key = '', 2: value = '' }): Repair[] => {
    const end = line.start + index + found.length;
    const start = end - value.length;
    if (!isLettering(key) || !value.includes(',') || range.start < start || range.end > end) return [];
    return [
      {
        slip: { start, end },
        message: `Between brackets a comma ends a text. With one in it, it needs quotes: ${quoted(inQuotes(value)).slice(1, -1)}.`,
        title: 'Put in quotes',
        edits: [replacement(start, end, inQuotes(value))],
        rarity: 0,
      },
    ];
  });
}

interface Value {
  readonly start: number;
  readonly end: number;
  readonly key: string;
}

/** The value of each key in the line: up to the next key, to a closing bracket at the end, or to the end. */
function keyValues(text: string, line: SpecLine): Value[] {
  const whole = text.slice(line.start, line.end);
  const starts = [...whole.matchAll(/(^\s*(?:-\s+)?|[{,[]\s*)([A-Za-z][\w-]*):\s+(?=\S)/g)];
  return starts.flatMap(({ index, 0: lead, 1: before = '', 2: key = '' }, at): Value[] => {
    const start = index + lead.length;
    const next = starts
      .slice(at + 1)
      .find(({ 1: mark = '', 2: other = '' }) => mark.includes(',') && knownKeys.has(other));
    const flow = /[{,[]/.test(before);
    const ends = flow && next ? [next.index] : [];
    if (!next || !flow) {
      const content = whole.trimEnd();
      ends.push(content.length);
      for (let closers = content.length; flow && /[}\]]/.test(content[closers - 1] ?? ''); closers--)
        ends.push(closers - 1);
      if (line.contentEnd - line.start > start) ends.push(line.contentEnd - line.start);
    }
    return [...new Set(ends)].map((end) => {
      const value = whole.slice(start, end).trimEnd();
      return { start: line.start + start, end: line.start + start + value.length, key };
    });
  });
}

function unquoted(text: string, { start, end, key }: Value): Repair[] {
  const value = text.slice(start, end);
  if (value === '' || /^(["'])(?:(?!\1).)*\1$/.test(value)) return [];
  // A group of keys, whatever else is wrong with it.
  if (isLettering(key) ? startsGroup(key, value) : /^[{[].*:\s/.test(value)) return [];
  const inner = bare(value);
  return [
    {
      slip: { start, end },
      message: reason(value, inner),
      title: 'Put in quotes',
      edits: [replacement(start, end, inQuotes(inner))],
      rarity: (isLettering(key) ? 2 : 4) + (value.startsWith('#') || /[{}]/.test(value) ? 0 : 1),
    },
  ];
}

/** Such as `{text: Ivy, f`: half of a group, as it is typed. A text in brackets has no such word before a colon. */
function startsGroup(key: string, value: string): boolean {
  // Its first word; a name of a column, `text: {na`, may begin like that.
  if (key === 'name' && /^\{\s*[a-z_]*$/.test(value)) return true;
  return knownKeys.has(/^\{\s*([a-z_]+):\s/.exec(value)?.[1] ?? '');
}

function isLettering(key: string): boolean {
  return ['text', 'title', 'name', 'material'].includes(key);
}

/** The value without quotes at its ends that were meant to enclose all of it. */
function bare(value: string): string {
  const whole = /^(["'])(.*)\1$/.exec(value);
  return whole ? whole[2]!.replace(/\\(?=")/g, '') : value;
}

function reason(value: string, inner: string): string {
  const shown = quoted(inQuotes(inner)).slice(1, -1);
  if (value.startsWith('#')) return `“#” starts a comment, so this text is empty. Put it in quotes: ${shown}.`;
  if (/^["']/.test(value)) {
    return inner === value
      ? `A text that starts with a quote needs quotes around all of it: ${shown}.`
      : `The quote inside this text ends it too early. Put the other kind around it: ${shown}.`;
  }
  if (/[{}[\]]/.test(value)) return `A text with brackets in it needs quotes: ${shown}.`;
  if (/: |:$/.test(value)) return `A text with a colon in it needs quotes: ${shown}.`;
  if (/^[^\w\s]/.test(value)) return `A text that starts with “${Array.from(value)[0]!}” needs quotes: ${shown}.`;
  return `This text needs quotes: ${shown}.`;
}

/** Closes a quote at the end of the line, or where the next key or the closing brackets begin. */
function unclosed(text: string, line: SpecLine): Repair[] {
  const at = line.signs.quote;
  if (at === undefined) return [];
  const mark = text[at]!;
  const rest = text.slice(at, line.end).trimEnd();
  const ends: number[] = [];
  const next = /\s*,\s*([A-Za-z][\w-]*):\s/g;
  for (const { index, 1: key = '' } of rest.matchAll(next)) if (knownKeys.has(key)) ends.push(index);
  const comment = rest.search(/\s+#/);
  if (comment > 0) ends.push(comment);
  ends.push(rest.length);
  for (let end = rest.length; end > 1 && /[}\]]/.test(rest[end - 1]!); end--) ends.push(end - 1);
  for (const { index } of rest.matchAll(/\s*,/g)) ends.push(index);
  const other = /["']$/.exec(rest)?.[0];
  return [
    ...(other !== undefined && other !== mark && rest.length > 1
      ? [
          {
            slip: sign(at + rest.length - 1),
            message: `A text that starts with ${mark} must end with ${mark}, not with ${other}.`,
            title: `Change to ${mark}`,
            edits: [replacement(at + rest.length - 1, at + rest.length, mark)],
            rarity: 0.5,
          },
        ]
      : []),
    ...[...new Set(ends)].map((end) => ({
      slip: sign(at),
      message: `This quote is never closed: put ${mark} after ${quoted(/[^\s,]*$/.exec(rest.slice(1, end))![0])}.`,
      title: 'Close the quote',
      edits: [insertion(at + end, mark)],
      rarity: 1,
    })),
    {
      slip: sign(at),
      message: 'This quote is never closed.',
      title: 'Remove the quote',
      edits: [replacement(at, at + 1, '')],
      rarity: 4,
    },
  ];
}

/** `text: Sorrel, font: Nunito` on one line: two keys, each of which needs its own line. */
function splitKeys(text: string, line: SpecLine): Repair[] {
  const found = /^([A-Za-z][\w-]*:\s.*?)(\s*[,;]\s*|\s+)([A-Za-z][\w-]*):\s/.exec(line.content);
  if (!found || !knownKeys.has(found[3]!) || /[{[]/.test(found[1]!)) return [];
  const at = line.start + line.indent + found[1]!.length;
  const indent = text.slice(line.start, line.start + line.indent);
  const end = at + found[2]!.length;
  return [
    {
      slip: { start: end, end: end + found[3]!.length },
      message: `${quoted(found[3]!)} is a separate key: put it on its own line.`,
      title: `Put “${found[3]!}” on its own line`,
      edits: [replacement(at, end, `\n${indent}`)],
      rarity: 2,
    },
  ];
}

/** Within double quotes, a backslash begins an escape sequence. */
export function backslashRepairs(text: string, line: SpecLine): Repair[] {
  const whole = text.slice(line.start, line.end);
  return [...whole.matchAll(/"(?:[^"\\]|\\.)*"/g)].flatMap(({ index, 0: found }): Repair[] => {
    const inner = found.slice(1, -1);
    if (!/\\[^"\\/0abefnrtvNLPxuU_ ]/.test(inner)) return [];
    const start = line.start + index;
    const single = inner.includes("'") ? `"${inner.replaceAll('\\', '\\\\')}"` : `'${inner}'`;
    return [
      {
        slip: { start, end: start + found.length },
        message: `In double quotes, a backslash starts an escape. Single quotes keep it as it is: ${quoted(single).slice(1, -1)}.`,
        title: inner.includes("'") ? 'Double the backslashes' : 'Put in single quotes',
        edits: [replacement(start, start + found.length, single)],
        rarity: 0,
      },
    ];
  });
}
