/** How far a job is, in words. */

import { clip } from '../core/length.ts';
import { counted } from '../core/units.ts';
import type { LayoutProgress } from './layout/layout.ts';

export function makingTag(done: number, all: number): string {
  return `making tag ${done} of ${all}`;
}

/** Such as “laying out ply3 (1 of 2): 7 sheets so far”. */
export function layingOut({ stock, number, of, sheets }: LayoutProgress): string {
  const which = of === 1 ? '' : ` (${number} of ${of})`;
  const soFar = sheets === undefined ? '' : `: ${counted(sheets, 'sheet')} so far`;
  return `laying out ${clip(stock)}${which}${soFar}`;
}
