/** Repairs lists with one entry per line. */

import type { Issue } from '../../core/issue.ts';
import type { SpecLine } from './spec-lines.ts';
import { insertion, quoted, replacement } from './repair.ts';
import type { Repair } from './repair.ts';

/** An entry that lacks its dash, below others that have one. */
export function dashRepairs(lines: readonly SpecLine[], line: SpecLine): Repair[] {
  const above = lines.slice(0, line.number).findLast(({ content }) => content !== '');
  const start = line.start + line.indent;
  const slip = { start, end: line.contentEnd };
  if (/^-[^\s-]/.test(line.content)) {
    return [
      {
        slip,
        message: 'A space is missing after the dash.',
        title: 'Add a space',
        edits: [insertion(start + 1, ' ')],
        rarity: 1,
      },
    ];
  }
  if (line.content === '---') {
    return [
      {
        slip,
        message: 'Three dashes start a second document; a tag spec has only one.',
        title: 'Remove the dashes',
        edits: [replacement(start, line.contentEnd, '')],
        rarity: 0,
      },
    ];
  }
  const dashed = /^-\s+(?=[A-Za-z][\w-]*:)/.exec(line.content);
  if (dashed && above && !above.content.startsWith('-')) {
    return [
      {
        slip: { start, end: start + 1 },
        message: 'A key in a group has no dash.',
        title: 'Remove the dash',
        edits: [replacement(line.start, start + dashed[0].length, ' '.repeat(above.indent))],
        rarity: 1.5,
      },
    ];
  }
  if (!above || !/^-\s/.test(above.content) || line.content === '' || /^-(\s|$)/.test(line.content)) return [];
  return [
    {
      slip,
      message: `Each entry of this list starts with a dash: ${quoted(`- ${line.content}`)}.`,
      title: 'Add a dash',
      edits: [insertion(start, '- ')],
      rarity: 1,
    },
  ];
}

/** `- label:` where names are expected: removes the dashes. */
export function dashedGroupRepairs({ message, range }: Issue, lines: readonly SpecLine[]): Repair[] {
  const first = lines.find(({ start, end }) => start <= range.start && range.start <= end);
  if (!/group of keys/.test(message) || !first || !/^-\s+[A-Za-z]/.test(first.content)) return [];
  const dashed = lines.filter(
    ({ start, indent, content }) =>
      start >= first.start && start < range.end && indent === first.indent && /^-\s/.test(content),
  );
  return ['', '  '].map((instead) => ({
    slip: { start: range.start, end: range.start + 1 },
    message: 'Entries with names need no dashes.',
    title: dashed.length > 1 ? 'Remove the dashes' : 'Remove the dash',
    edits: dashed.map(({ start, indent, content }) => {
      const at = start + indent;
      return replacement(at, at + /^-\s+/.exec(content)![0].length, instead);
    }),
    rarity: 1,
  }));
}
