/** Lengths as people write them: `3`, `3 mm`, `0.25 in`, `1/4 in`, `1 1/2 in`, `12 pt`. */

import type { Units } from './units.ts';

/** CSS Values and Units: 1 in = 2.54 cm = 72 pt = 96 px. */
const mmPer = { mm: 1, cm: 10, in: 25.4, pt: 25.4 / 72, px: 25.4 / 96 } as const;

/** No tag, and no sheet it is cut from, is larger than this, in mm; a larger figure is a typing mistake. */
export const longestMm = 3000;

const pattern = /^([+-]?)(?:(\d+(?:\.\d+)?|\.\d+)|(?:(\d+) +)?(\d+)\/(\d+))\s*(mm|cm|in|pt|px)?$/;

export type LengthResult = { readonly mm: number } | { readonly problem: string };

/** The length in mm, or a sentence that says what is wrong with it. A bare number is read in `units`. */
export function parseLength(value: number | string, units: Units): LengthResult {
  if (typeof value === 'number') return bounded(value * mmPer[units], String(value));
  const match = pattern.exec(value.trim());
  const pointed = value.trim().replace(/^([+-]?\d+),(?=\d)/, '$1.');
  if (!match && pointed !== value.trim() && pattern.test(pointed))
    return { problem: pointNotComma(pointed, value.trim()) };
  if (!match)
    return { problem: `“${clip(value)}” is not a length. Write a number with a unit, such as 3 mm or 1/4 in.` };
  const [, sign, decimal, whole, numerator, denominator, unit] = match;
  const size = decimal === undefined ? Number(whole ?? 0) + Number(numerator) / Number(denominator) : Number(decimal);
  const factor = mmPer[(unit ?? units) as keyof typeof mmPer];
  return bounded((sign === '-' ? -size : size) * factor, value.trim());
}

/** A figure with a decimal comma, and how it is written here. */
export function pointNotComma(pointed: string, written: string): string {
  return `Decimals are written with a point here: ${pointed}, not ${written}.`;
}

function bounded(mm: number, written: string): LengthResult {
  if (!Number.isFinite(mm)) return { problem: `“${clip(written)}” is not a number.` };
  if (Math.abs(mm) > longestMm)
    return { problem: `${clip(written)} is more than ${longestMm / 1000} m; check the unit.` };
  return { mm };
}

/** Text from a file, shortened for use in a message. */
export function clip(text: string, most = 40): string {
  const characters = Array.from(text);
  return characters.length > most ? `${characters.slice(0, most - 1).join('')}…` : text;
}
