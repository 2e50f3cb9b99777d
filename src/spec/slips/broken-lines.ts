/** Repairs a value between brackets that goes on in the next line: an Enter came into it. */

import { clip } from '../../core/length.ts';
import { quoted, replacement } from './repair.ts';
import type { Repair } from './repair.ts';
import type { SpecLine } from './spec-lines.ts';

/** The last key between the brackets of a line, and what stands of its value. */
const lastValue = /[{,]\s*([\w-]+):\s+([^{}[\],:"']+)$/;

/** What goes on with a value, up to the comma or the bracket behind it. */
const rest = /^([^{}[\],:"'#]+)[,}\]]/;

export function brokenLineRepairs(line: SpecLine, next: SpecLine | undefined): Repair[] {
  const [, key, begun] = (line.signs.open.length > 0 && lastValue.exec(line.content)) || [];
  const [, end] = (next && rest.exec(next.content)) ?? [];
  if (!next || key === undefined || begun === undefined || end === undefined) return [];
  // The space where the Enter was typed is still there, before or after it.
  const hadSpace = line.end > line.contentEnd || (next.indent - line.indent) % 2 === 1;
  const whole = `${begun}${hadSpace ? ' ' : ''}${end.trim()}`;
  return [
    {
      slip: { start: line.contentEnd - begun.length, end: line.contentEnd },
      message: `The value of ${quoted(key)} is broken over two lines: ${quoted(begun)} and ${quoted(end.trim())}.`,
      title: `Put “${clip(whole)}” on one line`,
      edits: [replacement(line.contentEnd, next.start + next.indent, hadSpace ? ' ' : '')],
      rarity: 1,
    },
  ];
}
