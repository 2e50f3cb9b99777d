/** Repairs a key that occurs twice in a group. */

import { newLineOf } from '../../core/lines.ts';
import type { SpecLine } from './spec-lines.ts';
import { quoted, replacement } from './repair.ts';
import type { Repair } from './repair.ts';

/** Removes one of the two; if both have lines of their own, the second's join the first's. `at`: the second key. */
export function duplicateRepairs(text: string, lines: readonly SpecLine[], at: number): Repair[] {
  const line = lines.find(({ start, end }) => start <= at && at <= end);
  if (!line) return [];
  const key = /^[^\s:]*/.exec(text.slice(at))![0];
  const slip = { start: at, end: at + key.length };
  if (at !== line.start + line.indent) return betweenBrackets(text, line, at, key);
  const first = lines
    .slice(0, line.number)
    .findLast(({ content, indent }) => indent === line.indent && content.startsWith(`${key}:`));
  if (!first) return [];
  const [one, two] = [blockOf(lines, first), blockOf(lines, line)];
  const message = `“${key}” appears twice (first on line ${first.number + 1}); keep one.`;
  if (one.length > 1 && two.length > 1) {
    const body = two.slice(1).map(({ start, end }) => text.slice(start, end));
    const newLine = newLineOf(text);
    return [
      {
        slip,
        message: `“${key}” appears twice (first on line ${first.number + 1}); put everything under one.`,
        title: `Move these lines under the first “${key}”`,
        edits: [
          replacement(one.at(-1)!.end, one.at(-1)!.end, body.map((each) => `${newLine}${each}`).join('')),
          removal(text, two),
        ],
        rarity: 0,
      },
    ];
  }
  return [two, one].map((block, index) => ({
    slip,
    message,
    title: `Remove ${shown(block[0]!.content, index === 0 ? 'this' : 'the first')}`,
    edits: [removal(text, block)],
    rarity: index,
  }));
}

function shown(content: string, which: string): string {
  return content.length > 40 ? `${which} one` : `${which} one, ${quoted(content)}`;
}

function blockOf(lines: readonly SpecLine[], first: SpecLine): SpecLine[] {
  const rest = lines.slice(first.number + 1);
  const end = rest.findIndex(({ content, indent }) => content !== '' && indent <= first.indent);
  const block = [first, ...rest.slice(0, end < 0 ? rest.length : end)];
  while (block.at(-1)!.content === '') block.pop();
  return block;
}

function removal(text: string, block: readonly SpecLine[]) {
  const { end } = block.at(-1)!;
  const after = /^\r?\n/.exec(text.slice(end))?.[0].length ?? 0;
  return replacement(block[0]!.start, end + after, '');
}

function betweenBrackets(text: string, { start }: SpecLine, at: number, key: string): Repair[] {
  const entry = /^[^,{}[\]]*/.exec(text.slice(at))![0];
  const lead = /,\s*$/.exec(text.slice(start, at))?.[0].length;
  if (lead === undefined) return [];
  return [
    {
      slip: { start: at, end: at + key.length },
      message: `“${key}” appears twice between these brackets; keep one.`,
      title: `Remove ${shown(entry.trim(), 'this')}`,
      edits: [replacement(at - lead, at + entry.trimEnd().length, '')],
      rarity: 0,
    },
  ];
}
