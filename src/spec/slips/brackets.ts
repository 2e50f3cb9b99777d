/** Repairs brackets that are not closed, close nothing or close another kind, and the commas between them. */

import { knownKeys } from '../schema/known-keys.ts';
import { closing } from './spec-lines.ts';
import type { LineSign, SpecLine } from './spec-lines.ts';
import { insertion, quoted, replacement, sign } from './repair.ts';
import type { Repair } from './repair.ts';

export function bracketRepairs(text: string, line: SpecLine, until: SpecLine): Repair[] {
  return [
    ...unclosed(text, line, until),
    ...mismatched(text, line),
    ...stray(text, line),
    ...roundBrackets(text, line),
    ...opened(text, line),
    ...commas(text, line),
    ...afterGroup(text, line),
  ];
}

/** `{rectangle: [60, 30]},`: something behind the group that is the whole value. */
function afterGroup(text: string, { contentEnd, signs: { open, stray: closers, groupEnd } }: SpecLine): Repair[] {
  if (groupEnd === undefined || open.length > 0 || closers.length > 0) return [];
  const rest = text.slice(groupEnd, contentEnd);
  const extra = rest.trim();
  if (extra === '') return [];
  const start = groupEnd + rest.indexOf(extra);
  const closer = text[groupEnd - 1]!;
  const message =
    extra === ','
      ? `The comma after the last “${closer}” is one too many: lines outside brackets end without one.`
      : `${quoted(extra)} does not belong after the last “${closer}”.`;
  return [
    {
      slip: { start, end: contentEnd },
      message,
      title: `Remove ${quoted(extra)}`,
      edits: [replacement(groupEnd, contentEnd, '')],
      rarity: 0.5,
    },
  ];
}

/** Closes a bracket at the end of the line, before one of its commas, or at the end of a line that belongs to it. */
function unclosed(text: string, line: SpecLine, until: SpecLine): Repair[] {
  const { open, commas: parts } = line.signs;
  if (open.length === 0) return [];
  const inner = open.at(-1)!;
  const all = [...open]
    .reverse()
    .map((each) => closing[each.sign])
    .join('');
  const ends = [line.contentEnd, ...(until.number > line.number ? [until.contentEnd] : [])];
  const repairs = ends.map((end) => closingRepair(all, open.length > 1 ? open[0]! : inner, end, text));
  for (const comma of [...parts].reverse()) {
    if (comma > inner.at && open.length > 0) repairs.push(closingRepair(closing[inner.sign]!, inner, comma, text));
  }
  for (const each of open) {
    repairs.push(removed(each, `This “${each.sign}” is never closed.`));
  }
  return repairs;
}

function closingRepair(signs: string, opener: LineSign, at: number, text: string): Repair {
  // Nothing follows a trailing comma.
  const trail = /,\s*$/.exec(text.slice(opener.at, at))?.[0].length ?? 0;
  return {
    slip: sign(opener.at),
    message: `This “${opener.sign}” is never closed: “${signs}” is missing${signs.length > 1 ? '' : ` ${wordBefore(text, at)}`}.`,
    title: `Add “${signs}”`,
    edits: [trail > 0 ? replacement(at - trail, at, signs) : insertion(at, signs)],
    rarity: 1,
  };
}

function wordBefore(text: string, at: number): string {
  const before = /[^\s,{}[\]]+$/.exec(text.slice(0, at))?.[0];
  return before === undefined ? 'at the end' : `after ${quoted(before)}`;
}

function removed({ at, sign: mark }: LineSign, message: string): Repair {
  return { slip: sign(at), message, title: `Remove “${mark}”`, edits: [replacement(at, at + 1, '')], rarity: 2.5 };
}

/** `[60 mm, 30 mm}`: another bracket was meant, or one is missing before it. */
function mismatched(text: string, { signs: { wrong, commas: parts } }: SpecLine): Repair[] {
  return wrong.flatMap(({ at, sign: mark, opener }): Repair[] => {
    const wanted = closing[opener.sign]!;
    return [
      ...[at, ...parts.filter((comma) => comma > opener.at && comma < at)].map((place) =>
        closingRepair(wanted, opener, place, text),
      ),
      {
        slip: sign(at),
        message: `“${opener.sign}” is closed with “${wanted}”, not with “${mark}”.`,
        title: `Change to “${wanted}”`,
        edits: [replacement(at, at + 1, wanted)],
        rarity: 1,
      },
      {
        slip: sign(opener.at),
        message: `This should be “${mark === '}' ? '{' : '['}”: it is closed with “${mark}”.`,
        title: `Change to “${mark === '}' ? '{' : '['}”`,
        edits: [replacement(opener.at, opener.at + 1, mark === '}' ? '{' : '[')],
        rarity: 2,
      },
    ];
  });
}

/** `twine: 2 mm}`: the opening bracket is missing, or the closing one is superfluous. */
function stray(text: string, line: SpecLine): Repair[] {
  return [...line.signs.stray, ...line.signs.wrong].flatMap((each): Repair[] => {
    const opener = each.sign === '}' ? '{' : '[';
    const starts = [...text.slice(line.start, each.at).matchAll(/[A-Za-z][\w-]*:\s+/g)].map(
      ({ index, 0: match }) => line.start + index + match.length,
    );
    return [
      ...starts.reverse().map((at) => ({
        slip: sign(each.at),
        message: `This “${each.sign}” closes nothing: “${opener}” is missing before ${quoted(/[^\s,]*/.exec(text.slice(at))![0])}.`,
        title: `Add “${opener}”`,
        edits: [insertion(at, opener)],
        rarity: 1,
      })),
      removed(each, `This “${each.sign}” closes nothing.`),
    ];
  });
}

/** `[60 mm, 30 mm)`: round brackets instead of square ones. */
function roundBrackets(text: string, line: SpecLine): Repair[] {
  const within = text.slice(line.start, line.contentEnd);
  return [...within.matchAll(/[([]([^()[\]]*)[)\]]/g)].flatMap(({ index, 0: found, 1: inner = '' }): Repair[] => {
    if (!/[()]/.test(found)) return [];
    const at = line.start + index;
    return [
      {
        slip: { start: at, end: at + found.length },
        message: `A list goes in square brackets: ${quoted(`[${inner}]`)}.`,
        title: 'Change to square brackets',
        edits: [replacement(at, at + found.length, `[${inner}]`)],
        rarity: 1,
      },
    ];
  });
}

/** `tie: twine: 2 mm`, `hanger: hole: {at: top}` and `body: - plate`: the brackets round the value are missing. */
function opened(text: string, line: SpecLine): Repair[] {
  const found = /^(?:-\s+)?[A-Za-z][\w-]*:\s+(?=([A-Za-z][\w-]*):\s|-\s)/.exec(line.content);
  if (!found) return [];
  const at = line.start + line.indent + found[0].length;
  const value = text.slice(at, line.contentEnd);
  if (found[1] === undefined) {
    const item = value.replace(/^-\s+/, '');
    return [
      {
        slip: { start: at, end: line.contentEnd },
        message: `A list on one line goes in square brackets: ${quoted(`[${item}]`)}.`,
        title: 'Put in brackets',
        edits: [replacement(at, line.contentEnd, `[${item}]`)],
        rarity: 1,
      },
    ];
  }
  if (!knownKeys.has(found[1])) return [];
  return [
    {
      slip: { start: at, end: line.contentEnd },
      message: `Keys on the line of their group go in braces: ${quoted(`{${value}}`)}.`,
      title: 'Put in braces',
      edits: [insertion(at, '{'), insertion(line.contentEnd, '}')],
      rarity: 2,
    },
  ];
}

/** A comma that is missing before a key, is another sign, or is doubled. */
function commas(text: string, line: SpecLine): Repair[] {
  const within = text.slice(line.start, line.contentEnd);
  const repairs: Repair[] = [];
  for (const match of within.matchAll(/([^\s,;{[])(\s*;\s*|\s+)(?=([A-Za-z][\w-]*):(?:\s|$))/g)) {
    const [, , gap = '', key = ''] = match;
    const at = line.start + match.index + 1;
    const before = within.slice(0, match.index + 1);
    if (!knownKeys.has(key) || before.endsWith(':') || !/[{[]/.test(before)) continue;
    const semicolon = gap.includes(';');
    repairs.push({
      slip: { start: at + gap.length, end: at + gap.length + key.length },
      message: semicolon
        ? `Between brackets, keys are separated by commas, not by “;”.`
        : `A comma is missing before ${quoted(key)}.`,
      title: semicolon ? 'Change to a comma' : 'Add a comma',
      edits: [replacement(at, at + gap.length, ', ')],
      rarity: 1,
    });
  }
  for (const { index, 0: found } of within.matchAll(/,(?:\s*,)+/g)) {
    const at = line.start + index;
    repairs.push({
      slip: { start: at, end: at + found.length },
      message: 'There is one comma too many.',
      title: 'Remove the comma',
      edits: [replacement(at + 1, at + found.length, '')],
      rarity: 1,
    });
  }
  return repairs;
}
