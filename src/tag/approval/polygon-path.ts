/** Polygons as SVG path data and back, in mm from the middle of a piece, with y flipped to run down. */

import { simplified } from '../../geometry/simplify.ts';
import type { Point, Region } from '../../geometry/types.ts';

/** Points that matter less are left out, in mm. */
const toleranceMm = 0.01;

/** Hundredths of a millimetre. */
const digits = 2;

export function polygonPath(region: Region, middle: Point): string {
  const at = (value: number): string => String(Number(value.toFixed(digits)) || 0);
  const ringPath = (ring: readonly Point[]): string =>
    `M${ring.map(({ x, y }) => `${at(x - middle.x)} ${at(middle.y - y)}`).join(' ')}Z`;
  return simplified(region, toleranceMm).map(ringPath).join('');
}

/** What `polygonPath` has written, as a region round the origin. A number that is lacking takes its point with it. */
export function polygonsIn(path: string): Region {
  return path.split('Z').flatMap((ring) => {
    const numbers = (ring.match(/-?[\d.]+/g) ?? []).map(Number);
    const points: Point[] = [];
    for (let at = 0; at + 1 < numbers.length; at += 2) points.push({ x: numbers[at]!, y: -numbers[at + 1]! });
    return points.length > 2 && points.every(({ x, y }) => Number.isFinite(x + y)) ? [points] : [];
  });
}
