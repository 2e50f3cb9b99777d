/**
 * Figures in messages. Whoever writes a message knows millimetres and need not know the unit of the spec: a figure is put into
 * the sentence between two signs that no text has, and turned into the spec's unit where the message becomes an issue.
 */

import { mmPerInch } from './units.ts';
import type { Units } from './units.ts';

/** Of Unicode's private use area. */
const open = '\uE000';
const close = '\uE001';

/** A measured length in mm: 0.92 mm, or 0.036 in. `digits`: after the point, in mm; an inch gets one more. */
export function mm(length: number, digits = 2): string {
  return `${open}${length} ${digits} length${close}`;
}

/** A length that is a limit: 6 mm, or 0.25 in; no more digits than it has. */
export function limit(length: number): string {
  return `${open}${length} 2 limit${close}`;
}

/** An area in mm². */
export function mm2(area: number, digits = 0): string {
  return `${open}${area} ${digits} area${close}`;
}

/** Width × height. */
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
