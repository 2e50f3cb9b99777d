/** Lengths in both units. */

import { shortLength } from '../core/units.ts';
import type { Units } from '../core/units.ts';

/** In the units of the spec, followed by the other unit in brackets. */
export function bothLengths(mm: number, units: Units): string {
  return `${shortLength(mm, units)} (${shortLength(mm, units === 'mm' ? 'in' : 'mm')})`;
}
