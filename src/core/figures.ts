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

/** The width of something that is there, as `mm` shows it; never 0.00 mm, since what measures nothing is not there. */
export function mmWide(length: number, digits = 2): string {
  return `${open}${length} ${digits} width${close}`;
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

type Kind = 'length' | 'width' | 'limit' | 'area';

const figure = new RegExp(`${open}(\\S+) (\\d) (length|width|limit|area)${close}`, 'g');

/** Words right before a figure that others in the sentence are compared with. */
const limits = /\b(minimum|at least|at most|needs|(narrower|thinner|less) than)( of)? $/;

/** Most decimals that are added to tell a figure from its limit; figures that are closer are the same. */
const mostMore = 3;

/** The message with its figures in the unit of the spec. A figure and its limit have decimals enough to differ. */
export function inUnits(message: string, units: Units): string {
  const found = [...message.matchAll(figure)].map((match) => ({
    value: Number(match[1]),
    digits: Number(match[2]),
    kind: match[3] as Kind,
    isLimit: limits.test(message.slice(0, match.index)),
  }));
  type Figure = (typeof found)[number];
  const text = ({ value, digits, kind }: Figure, more: number): string =>
    (units === 'mm' ? inMm : inInches)(value, digits + more, kind);
  const isSame = (a: Figure, b: Figure, more: number): boolean =>
    a.value !== b.value && Number(text(a, more)) === Number(text(b, more));
  const extra = found.map((each) => {
    const others = found.filter(
      (other) => (other.isLimit || each.isLimit) && (other.kind === 'area') === (each.kind === 'area'),
    );
    const needed = others.map((other) => {
      for (let more = 0; more <= mostMore; more++) if (!isSame(each, other, more)) return more;
      return 0;
    });
    return Math.max(0, ...needed);
  });
  let nth = 0;
  const written = message.replace(figure, () => {
    const each = found[nth]!;
    const shown = text(each, extra[nth++]!);
    if (each.kind === 'width' && Number(shown) === 0) return `${shown.replace(/0$/, '1')} ${units} or less`;
    return `${each.kind === 'limit' ? String(Number(shown)) : shown} ${each.kind === 'area' ? `${units}²` : units}`;
  });
  // 1.20 mm × 3.40 mm is written 1.20 × 3.40 mm.
  return written.replace(/(\d) (mm|in) (×|→) (?=[\d.]+ \2)/g, '$1 $3 ');
}

function inMm(value: number, digits: number): string {
  return value.toFixed(digits);
}

/** A hundredth of a millimetre is less than a thousandth of an inch; a square inch has 645 mm². */
function inInches(value: number, digits: number, kind: Kind): string {
  return kind === 'area' ? (value / mmPerInch ** 2).toFixed(digits + 3) : (value / mmPerInch).toFixed(digits + 1);
}
