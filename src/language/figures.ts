/** Lengths for people who think in either unit. */

import { shortLength } from '../core/units.ts';
import type { Units } from '../core/units.ts';

/** In the units of the spec, with the other in brackets. */
export function bothLengths(mm: number, units: Units): string {
  return `${shortLength(mm, units)} (${shortLength(mm, units === 'mm' ? 'in' : 'mm')})`;
}
