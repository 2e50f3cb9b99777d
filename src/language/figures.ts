/** Lengths and areas in figures, for people who think in either unit. */

import type { Units } from '../core/length.ts';

const mmPerInch = 25.4;

/** To a hundredth of a millimetre or a thousandth of an inch, as fine as sizes are promised. */
export function lengthIn(mm: number, units: Units): string {
  return units === 'mm' ? `${figure(mm, 2)} mm` : `${figure(mm / mmPerInch, 3)} in`;
}

/** In the units of the spec, with the other in brackets. */
export function bothLengths(mm: number, units: Units): string {
  return `${lengthIn(mm, units)} (${lengthIn(mm, units === 'mm' ? 'in' : 'mm')})`;
}

/** `82.0 × 31.4 mm`: to a tenth of a millimetre or a hundredth of an inch, enough to know a thing by. */
export function sizeIn({ width, height }: { readonly width: number; readonly height: number }, units: Units): string {
  const [perUnit, digits] = units === 'mm' ? [1, 1] : [mmPerInch, 2];
  return `${(width / perUnit).toFixed(digits)} × ${(height / perUnit).toFixed(digits)} ${units}`;
}

export function areaIn(squareMm: number, units: Units): string {
  if (units === 'in') return `${(squareMm / mmPerInch ** 2).toFixed(2)} in²`;
  return `${(squareMm / 100).toFixed(1)} cm²`;
}

/** Without zeros at its end. */
export function figure(value: number, digits: number): string {
  return String(Number(value.toFixed(digits)));
}

export function counted(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}
