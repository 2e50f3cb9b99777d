/** Repairs colons that are missing, lack their space, or are another sign. */

import { knownKeys } from '../schema/known-keys.ts';
import type { SpecLine } from './spec-lines.ts';
import { insertion, quoted, replacement, sign } from './repair.ts';
import type { Repair } from './repair.ts';

export function colonRepairs(text: string, line: SpecLine, next: SpecLine | undefined): Repair[] {
  return [
    ...missingSpaces(line),
    ...otherSeparators(line),
    ...wideColons(text, line),
    ...betweenBrackets(line),
    ...missingColons(line, next),
  ];
}

/** `text:Sorrel`, also between brackets. */
function missingSpaces({ content, start, indent }: SpecLine): Repair[] {
  return [...content.matchAll(/(^|[{[,]\s*|^-\s+)([A-Za-z][\w-]*):(?=[^\s:/\\])/g)].flatMap((match): Repair[] => {
    const key = match[2]!;
    const at = start + indent + match.index + match[1]!.length + key.length;
    return [
      {
        slip: { start: at - key.length, end: at + 1 },
        message: `A space is missing after “${key}:”.`,
        title: 'Add a space',
        edits: [insertion(at + 1, ' ')],
        rarity: knownKeys.has(key) ? 1 : 2,
      },
    ];
  });
}

/** `{on plate}` and `{on = plate}`. */
function betweenBrackets({ content, start, indent }: SpecLine): Repair[] {
  return [...content.matchAll(/([{,]\s*)([A-Za-z][\w-]*)(\s*[;=])?(?=\s+[^\s:,}\]][^:,}\]]*[,}])/g)].flatMap(
    (match): Repair[] => {
      const key = match[2]!;
      const at = start + indent + match.index + match[1]!.length;
      if (!knownKeys.has(key)) return [];
      const mark = match[3];
      if (mark !== undefined) {
        const end = at + key.length + mark.length;
        return [
          {
            slip: { start: at, end },
            message: `A colon stands between a key and its value, not ${quoted(mark.trim())}.`,
            title: `Change “${mark.trim()}” to a colon`,
            edits: [replacement(at + key.length, end, ':')],
            rarity: 1,
          },
        ];
      }
      return [
        {
          slip: { start: at, end: at + key.length },
          message: `A colon is missing after “${key}”.`,
          title: 'Add a colon',
          edits: [insertion(at + key.length, ':')],
          rarity: 1,
        },
      ];
    },
  );
}

/** `font = Nunito`. */
function otherSeparators({ content, start, indent }: SpecLine): Repair[] {
  const found = /^((?:-\s+)?)([A-Za-z][\w-]*)(\s*[=;]\s*|\s+:\s*(?=\S))/.exec(content);
  if (!found || (/^\s+:\s/.test(found[3]!) && !knownKeys.has(found[2]!))) return [];
  const [, dash = '', key = '', mark = ''] = found;
  const at = start + indent + dash.length + key.length;
  const rest = content.slice(found[0].length);
  return [
    {
      slip: { start: at - key.length, end: at + mark.length },
      message:
        `A colon stands between a key and its value, not ${quoted(mark.trim())}: “${key}: ${rest.slice(0, 30)}”.`.replace(
          ': ”',
          ':”',
        ),
      title: `Change “${mark.trim()}” to a colon`,
      edits: [replacement(at, at + mark.length, rest === '' ? ':' : ': ')],
      rarity: 1,
    },
  ];
}

/** The wide colon that some keyboards of other scripts produce. */
function wideColons(text: string, { start, end }: SpecLine): Repair[] {
  const index = text.slice(start, end).search(/[：︰]/);
  if (index < 0) return [];
  const at = start + index;
  return [
    {
      slip: sign(at),
      message: 'This is the wide colon of another keyboard; a key needs the plain one, then a space.',
      title: 'Change to a plain colon',
      edits: [replacement(at, at + 1, /\s/.test(text[at + 1] ?? ' ') ? ':' : ': ')],
      rarity: 0,
    },
  ];
}

/** `font Nunito`, and `shapes` above its own lines. */
function missingColons({ content, start, indent }: SpecLine, next: SpecLine | undefined): Repair[] {
  const found = /^((?:-\s+)?)([A-Za-z][\w-]*)(\s+[^\s:].*)?$/.exec(content);
  if (!found || /[\w)\]}'"]:(\s|$)/.test(found[3] ?? '')) return [];
  const [, dash = '', key = '', value] = found;
  const opens = value === undefined && next !== undefined && next.indent > indent;
  if (!opens && !knownKeys.has(key)) return [];
  const at = start + indent + dash.length + key.length;
  return [
    {
      slip: { start: at - key.length, end: at },
      message: `A colon is missing after ${quoted(key)}.`,
      title: 'Add a colon',
      edits: [insertion(at, ':')],
      rarity: 1,
    },
  ];
}
