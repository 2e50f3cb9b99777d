/** Outlines and lines as SVG path data, y down. */

import { simplified } from '../geometry/simplify.ts';
import type { Line, Region, Ring } from '../geometry/types.ts';
import { areasIn } from '../tag/open-lines.ts';
import type { Mark } from '../tag/tag.ts';
import type { PathData } from '../protocol/scene.ts';

/**
 * Largest deviation of the drawing from the outline, in mm; measurements on it stay right to 0.01 mm. Every point costs
 * time on its way to the page and each time it is painted, and a third of them are not needed.
 */
const drawnWithinMm = 0.005;

/** Closed rings as SVG path data, kept short: it is built, sent and parsed at every keystroke. */
export function pathData(region: Region, withinMm = drawnWithinMm): PathData {
  return simplified(region, withinMm).map(ringData).join('');
}

function ringData(ring: Ring): PathData {
  return `${stepsAlong(ring)}z`;
}

/** A score as SVG path data: its lines, and the outlines of its areas. */
export function scoreData(mark: Mark, withinMm?: number): PathData {
  return lineData(mark.lines ?? []) + pathData(areasIn(mark), withinMm);
}

function lineData(lines: readonly Line[]): PathData {
  return lines.map(stepsAlong).join('');
}

/** Steps from point to point, counted in whole thousandths of a mm so that rounding errors do not add up. */
function stepsAlong(ring: Line): PathData {
  let [x, y] = [0, 0];
  let data = '';
  ring.forEach((point, index) => {
    const [toX, toY] = [Math.round(point.x * 1000), Math.round(-point.y * 1000)];
    data += `${index === 0 ? 'M' : index === 1 ? 'l' : ' '}${shortDecimal(toX - x)} ${shortDecimal(toY - y)}`;
    [x, y] = [toX, toY];
  });
  return data;
}

/** Decimals of every thousandth, precomputed: printing a fraction is many times slower than printing an integer. */
const fractions = Array.from({ length: 1000 }, (_, thousandths) => `${thousandths / 1000}`.slice(1));

/** Prints thousandths of a mm in mm, without a 0 before the decimal point. */
function shortDecimal(thousandths: number): string {
  const size = Math.abs(thousandths);
  const fraction = fractions[size % 1000]!;
  const whole = Math.trunc(size / 1000);
  return `${thousandths < 0 ? '-' : ''}${whole > 0 || fraction === '' ? whole : ''}${fraction}`;
}
