/** Lengths as text for a spec, in the form of the text they replace. */

import { parseLength } from '../core/length.ts';
import type { Units } from '../core/units.ts';

/** CSS Values and Units, as in `spec/length.ts`; enough decimals that each unit is at least as fine as 0.01 mm. */
const written = {
  mm: { mm: 1, decimals: 2 },
  cm: { mm: 10, decimals: 3 },
  in: { mm: 25.4, decimals: 4 },
  pt: { mm: 25.4 / 72, decimals: 2 },
  px: { mm: 25.4 / 96, decimals: 2 },
} as const;

/**
 * @param before The value replaced, if any: a bare number is replaced by a bare number, a unit by the same unit.
 * @param units Units of the spec, for bare numbers and new values.
 */
export function lengthText(mm: number, before: unknown, units: Units): string {
  const unit = typeof before === 'string' ? /(mm|cm|in|pt|px)\s*$/.exec(before)?.[1] : undefined;
  const own = (unit ?? units) as keyof typeof written;
  const figure = String(Number((mm / written[own].mm).toFixed(written[own].decimals)) + 0);
  const isBare = before !== undefined && unit === undefined;
  return isBare ? figure : `${figure} ${own}`;
}

/** The length in mm; 0 if there is none or it cannot be read. */
export function lengthInMm(value: unknown, units: Units): number {
  if (typeof value !== 'string' && typeof value !== 'number') return 0;
  const result = parseLength(value, units);
  return 'mm' in result ? result.mm : 0;
}
