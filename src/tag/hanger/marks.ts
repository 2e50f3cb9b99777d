/** Dots, accents and apostrophes, beside which a ring reads as one more, or in whose place it stands. */

import { boundsOf, widened } from '../../geometry/measure.ts';
import type { Bounds, Point } from '../../geometry/types.ts';
import { hasMarks, marksAbove } from '../lettering/marks-above.ts';
import type { MadeShape } from '../made-shape.ts';

/** The box of a mark. */
export interface Mark extends Bounds {
  /** Whether it is the one dot of an “i” or a “j”: a ring straight above it is read as that dot. */
  readonly isDot: boolean;
}

/** A sign that begins above this share of the x-height hangs beside the letters, as an apostrophe does. */
const hungFrom = 0.5;

/** Where it is not known how high its capitals are, above this share: a hyphen between capitals is none. */
const surelyHungFrom = 0.7;

export function marksOf({ lettering = [], band }: MadeShape): Mark[] {
  return lettering.flatMap(({ letters, grow, xHeight }) =>
    letters.flatMap(({ text, region, baseline = Infinity }) => {
      const hung = band ? band.baseline + hungFrom * (band.top - band.baseline) : baseline + surelyHungFrom * xHeight;
      const isHung = /^\p{P}+$/u.test(text) && boundsOf(region)!.minY > hung;
      const isDot = /^[ij]$/u.test(text);
      return (isHung ? [region] : hasMarks(text) ? marksAbove(region) : []).map((mark) => ({
        ...widened(boundsOf(mark)!, grow),
        isDot,
      }));
    }),
  );
}

export function awayFrom({ minX, minY, maxX, maxY }: Mark, { x, y }: Point): number {
  return Math.hypot(Math.max(minX - x, 0, x - maxX), Math.max(minY - y, 0, y - maxY));
}

export function isInPlaceOf({ isDot, minX, maxX, minY, maxY }: Mark, { x, y }: Point): boolean {
  return isDot && x > minX && x < maxX && y > (minY + maxY) / 2;
}
