/** Figures as people read them on paper and on the screen: lengths, areas, times, weights, money. */

import type { Units } from '../core/length.ts';

/** 82.04 mm, or 3.230 in. */
export function lengthIn(mm: number, units: Units): string {
  return units === 'mm' ? `${trimmed(mm, 1)} mm` : `${trimmed(mm / 25.4, 3)} in`;
}

/** 0.125 mm, or 0.0049 in: of what is as fine as a beam. */
export function finelyIn(mm: number, units: Units): string {
  return units === 'mm' ? `${trimmed(mm, 3)} mm` : `${trimmed(mm / 25.4, 4)} in`;
}

/** Two sides of a box. */
export function sizeIn(width: number, height: number, units: Units): string {
  return `${lengthIn(width, units).replace(/ \w+$/, '')} × ${lengthIn(height, units)}`;
}

export function areaIn(mm2: number, units: Units): string {
  return units === 'mm' ? `${trimmed(mm2 / 100, 1)} cm²` : `${trimmed(mm2 / 645.16, 2)} in²`;
}

/** 40 s, 1 min 05 s, 12 min. */
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

/** “1 part”, “6 parts”. */
export function counted(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}

/** More names than this are counted. */
const mostNames = 4;
/** In a question of the editor, which has more room. */
export const mostInQuestion = 8;

/** “Sorrel, Rue and 4 more”. */
export function listed(names: readonly string[], most = mostNames): string {
  const more = names.length - most;
  return more > 1 ? `${names.slice(0, most).join(', ')} and ${more} more` : names.join(', ');
}

function trimmed(value: number, decimals: number): string {
  return String(Number(value.toFixed(decimals)) + 0);
}
