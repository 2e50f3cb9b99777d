/** What a job leaves out, by name, for the question before it is exported. */

import { mostInQuestion } from '../../core/in-words.ts';
import { clip } from '../../core/length.ts';
import { listed } from '../../core/names.ts';
import { counted } from '../../core/units.ts';
import type { LaidOutJob } from '../job.ts';
import { tagNames } from './by-order.ts';
import { pieceName } from './sheet-map.ts';

/** A paragraph each for lines that cannot be made and for pieces that find no room. */
export function notCutInWords({ leftOut, layout: { left }, pieces }: LaidOutJob): string[] {
  const nameOf = tagNames({ leftOut, pieces });
  const lines = leftOut.map((each) => `${ofOrder(each.order)}${clip(nameOf(each), 40)}: ${each.why}`);
  const found: string[] = [];
  if (lines.length > 0) {
    const verb = lines.length === 1 ? 'is' : 'are';
    found.push(`${counted(lines.length, 'line')} cannot be made and ${verb} left out.\n${first(lines)}`);
  }
  if (left.length > 0) {
    const names = left.map(({ of }) => `${ofOrder(of.of.order)}${pieceName(of, nameOf)}`);
    const verb = left.length === 1 ? 'goes' : 'go';
    found.push(`${counted(left.length, 'piece')} ${verb} on no sheet: ${listed(names, mostInQuestion)}.`);
  }
  return found;
}

/** One below the other. */
function first(lines: readonly string[]): string {
  const more = lines.length - mostInQuestion;
  return more > 1 ? [...lines.slice(0, mostInQuestion), `And ${more} more.`].join('\n') : lines.join('\n');
}

function ofOrder(order: string): string {
  return order === '' ? '' : `${clip(order)}, `;
}
