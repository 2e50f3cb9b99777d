/** Formats quantities for people, on paper and on screen: lengths, areas, times, weights, money. */

import { shortLength, shortSize, trimmed } from '../core/units.ts';
import type { Digits, Units } from '../core/units.ts';

/** Inches get one digit more on paper than beside a drawing, because sizes are measured again from it. */
const onPaper: Digits = [1, 3];

/** For example 82 mm, or 3.23 in. */
export function lengthIn(mm: number, units: Units): string {
  return shortLength(mm, units, onPaper);
}

export function sizeIn(width: number, height: number, units: Units): string {
  return shortSize(width, height, units, onPaper);
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
