/** The narrow ends of gaps where two letters meet: the beam does not part them, and soot fills them. */

import { difference, intersection, offset } from '../../geometry/clipper.ts';
import { area, boundsOf } from '../../geometry/measure.ts';
import { partsOf } from '../../geometry/parts.ts';
import type { Bounds, Region } from '../../geometry/types.ts';
import { coarseMm } from './bodies.ts';

/** Gaps up to this width are filled, in mm: nearly twice a usual kerf. */
const wedgeMm = 0.3;

/** What is smaller is the rounding of a corner, in mm². */
const leastArea = 0.01;

/** What of `whole` closes between two of `letters`, all as grown. A letter's own notches stay. */
export function wedgesOf(whole: Region, letters: readonly Region[]): Region[] {
  const closed = offset(offset(whole, wedgeMm / 2, 'round', coarseMm), -wedgeMm / 2, 'round', coarseMm);
  const boxes = letters.map((letter) => boundsOf(letter));
  return partsOf(difference(closed, [whole])).flatMap((part) => {
    if (area(part) < leastArea) return [];
    const wedge = offset(part, coarseMm, 'miter');
    const box = boundsOf(wedge);
    const touched = letters.filter((letter, index) => {
      const other = boxes[index];
      return box && other && meets(box, other) && intersection(wedge, letter).length > 0;
    });
    return touched.length > 1 ? [wedge] : [];
  });
}

function meets(a: Bounds, b: Bounds): boolean {
  return a.minX <= b.maxX && b.minX <= a.maxX && a.minY <= b.maxY && b.minY <= a.maxY;
}
