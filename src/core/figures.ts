/**
 * Figures in messages. Code that writes a message works in millimetres and need not know the unit of the spec: each
 * figure is put into the sentence between two markers that occur in no text, and is converted to the spec's unit when
 * the message becomes an issue.
 */

import { mmPerInch } from './units.ts';
import type { Units } from './units.ts';

/** Markers, from Unicode's private use area. */
const open = '\uE000';
const close = '\uE001';

/** A measured length in mm, shown as 0.92 mm or 0.036 in. `digits` counts decimals in mm; inches get one more. */
export function mm(length: number, digits = 2): string {
  return `${open}${length} ${digits} length${close}`;
}

/** A length that is a limit, shown as 6 mm or 0.25 in, without trailing zeros. */
export function limit(length: number): string {
  return `${open}${length} 2 limit${close}`;
}

/** An area in mm². */
export function mm2(area: number, digits = 0): string {
  return `${open}${area} ${digits} area${close}`;
}

/** Width × height, both in mm. */
export function mmByMm(width: number, height: number, digits = 2): string {
  return `${mm(width, digits)} × ${mm(height, digits)}`;
}

const figure = new RegExp(`${open}(\\S+) (\\d) (length|limit|area)${close}`, 'g');

/** The message with its figures in the unit of the spec. */
export function inUnits(message: string, units: Units): string {
  const written = message.replace(figure, (_, value: string, digits: string, kind: 'length' | 'limit' | 'area') => {
    const { text, sign } =
      units === 'mm' ? inMm(Number(value), Number(digits), kind) : inInches(Number(value), Number(digits), kind);
    return `${kind === 'limit' ? String(Number(text)) : text} ${sign}`;
  });
  // 1.20 mm × 3.40 mm is written 1.20 × 3.40 mm.
  return written.replace(/(\d) (mm|in) (×|→) (?=[\d.]+ \2)/g, '$1 $3 ');
}

function inMm(value: number, digits: number, kind: string) {
  return { text: value.toFixed(digits), sign: kind === 'area' ? 'mm²' : 'mm' };
}

/** A hundredth of a millimetre is less than a thousandth of an inch; a square inch has 645 mm². */
function inInches(value: number, digits: number, kind: string) {
  return kind === 'area'
    ? { text: (value / mmPerInch ** 2).toFixed(digits + 3), sign: 'in²' }
    : { text: (value / mmPerInch).toFixed(digits + 1), sign: 'in' };
}
