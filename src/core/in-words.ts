/** Formats quantities for people, on paper and on screen: lengths, areas, times, weights, money. */

import { mmPerInch, shortLength, shortSize, trimmed } from './units.ts';
import type { Digits, Units } from './units.ts';

/** Inches get one digit more on paper than beside a drawing, because sizes are measured again from it. */
export const onPaper: Digits = [1, 3];

const mmPerMetre = 1000;
const mmPerFoot = 12 * mmPerInch;

/** For example 82 mm, or 3.23 in. */
export function lengthIn(mm: number, units: Units): string {
  return shortLength(mm, units, onPaper);
}

export function sizeIn(width: number, height: number, units: Units): string {
  return shortSize(width, height, units, onPaper);
}

/** A way of the beam: from a metre or a yard on in metres or feet, such as 16.6 m; nobody pictures 16590.9 mm. */
export function wayIn(mm: number, units: Units): string {
  return waysIn([mm], units)[0]!;
}

/** Ways that stand in one column, in one unit: that of the longest. */
export function waysIn(ways: readonly number[], units: Units): string[] {
  const [long, name] = units === 'in' ? ([mmPerFoot, 'ft'] as const) : ([mmPerMetre, 'm'] as const);
  if (Math.max(...ways) < (units === 'in' ? 3 : 1) * long) return ways.map((mm) => lengthIn(mm, units));
  const decimals = (way: number): number => (way < 0.1 ? 3 : way < 10 ? 2 : 1);
  return ways.map((mm) => `${trimmed(mm / long, decimals(mm / long))} ${name}`);
}

/** For example 40 s, 1 min 05 s or 12 min. */
export function minutes(seconds: number): string {
  const whole = Math.round(seconds);
  if (whole < 60) return `${whole} s`;
  if (whole >= 600) return `${Math.round(whole / 60)} min`;
  return `${Math.floor(whole / 60)} min ${String(whole % 60).padStart(2, '0')} s`;
}

export function grams(weight: number): string {
  return `${trimmed(weight, weight < 10 ? 1 : 0)} g`;
}

export function money({ amount, currency }: { readonly amount: number; readonly currency?: string }): string {
  return `${amount.toFixed(2)} ${currency ?? ''}`.trim();
}

/** Further names are given as a count. */
export const mostNames = 4;
/** In a question of the editor, which has more room. */
export const mostInQuestion = 8;
