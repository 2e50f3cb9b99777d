/** Repairs lines that begin in a different column from those they belong with. */

import type { TextEdit } from '../../core/issue.ts';
import type { SpecLine } from './spec-lines.ts';
import { quoted, replacement } from './repair.ts';
import type { Repair } from './repair.ts';

/** Default indentation of a group's lines, in spaces. */
const usualStep = 2;

/** No single slip puts more lines than this in the wrong column. */
const mostMoved = 200;

/** Moves the line alone, with those that belong to it, or with all that follow in its column or deeper. */
export function indentRepairs(lines: readonly SpecLine[], line: SpecLine): Repair[] {
  if (line.content === '') return [];
  const rest = lines.slice(line.number + 1);
  const groups = [
    [line],
    [line, ...whileFilled(rest, ({ indent }) => indent > line.indent)],
    [line, ...whileFilled(rest, ({ indent }) => indent >= line.indent)],
  ];
  const sizes = new Set<number>();
  const distinct = groups.filter(({ length }) => length <= mostMoved && !sizes.has(length) && sizes.add(length));
  return distinct.flatMap((group) =>
    targetsFor(lines, line).map((target) => movedLines(lines, group, target - line.indent, target)),
  );
}

/** Lines from the first on while they fit; empty lines do not count. */
function whileFilled(lines: readonly SpecLine[], fits: (line: SpecLine) => boolean): SpecLine[] {
  const filled = lines.filter(({ content }) => content !== '');
  const end = filled.findIndex((line) => !fits(line));
  return end < 0 ? filled : filled.slice(0, end);
}

/** Candidate columns: those of lines above that may contain this one, and that of the next line; the nearest first. */
function targetsFor(lines: readonly SpecLine[], { number, indent }: SpecLine): number[] {
  const above = lines.slice(0, number).filter(({ content }) => content !== '');
  const below = lines.slice(number + 1).find(({ content }) => content !== '');
  const targets = new Set<number>([0]);
  let least = Infinity;
  for (const line of [...above].reverse()) {
    if (line.indent >= least) continue;
    least = line.indent;
    targets.add(line.indent);
    if (line.content.endsWith(':')) targets.add(line.indent + usualStep);
  }
  if (below) targets.add(below.indent);
  targets.delete(indent);
  return [...targets].sort((a, b) => Math.abs(a - indent) - Math.abs(b - indent) || b - a);
}

function movedLines(lines: readonly SpecLine[], group: readonly SpecLine[], by: number, target: number): Repair {
  const [first] = group as [SpecLine];
  const parent = lines.slice(0, first.number).findLast(({ content, indent }) => content !== '' && indent < target);
  const key = /^(?:-\s+)?([^:]*)/.exec(first.content)![1]!.trim();
  const start = first.start + first.indent;
  const spaces = `${Math.abs(by)} space${Math.abs(by) === 1 ? '' : 's'}`;
  const under = by > 0 && parent ? quoted(/^[^:]*/.exec(parent.content)![0]) : undefined;
  return {
    slip: { start, end: start + Math.max(1, key.length) },
    message:
      by > 0
        ? `${quoted(key)} is ${spaces} too far left${under ? `: it belongs under ${under}` : ''}.`
        : `${quoted(key)} is ${spaces} too deep.`,
    title: under ? `Indent under ${under}` : `Move it ${spaces} to the ${by > 0 ? 'right' : 'left'}`,
    edits: group.map((each): TextEdit => {
      const at = each.start;
      return replacement(at, at + each.indent, ' '.repeat(Math.max(0, each.indent + by)));
    }),
    rarity: 2 + (Math.abs(by) > usualStep ? 1 : 0) + (group.length - 1) / 20,
  };
}

/** Replaces tabs and other white space that YAML does not allow as indentation, in all lines at once. */
export function blankRepairs(text: string, lines: readonly SpecLine[]): Repair[] {
  const odd = lines.filter(({ start, indent }) => /[^ ]/.test(text.slice(start, start + indent)));
  const [first] = odd;
  if (!first) return [];
  const tab = text.slice(first.start, first.start + first.indent).includes('\t');
  const widths = tab ? [usualStep, 4, 8] : [1];
  return widths.map((width) => ({
    slip: { start: first.start, end: first.start + first.indent },
    message: tab
      ? 'Lines are indented with spaces here, not with tabs.'
      : 'This line is indented with a special space, as copied from a web page.',
    title: 'Indent with spaces',
    edits: odd.map(({ start, indent }) => {
      const blanks = text.slice(start, start + indent);
      return replacement(start, start + indent, blanks.replaceAll('\t', ' '.repeat(width)).replace(/[^ ]/g, ' '));
    }),
    rarity: 0,
  }));
}
