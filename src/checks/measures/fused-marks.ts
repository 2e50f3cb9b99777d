/**
 * Dots and accents that run into a neighbouring letter although the font keeps them apart, so that an i reads as an l,
 * or as nothing; and apostrophes that a letter lower than they are takes in.
 */

import { intersection, offset } from '../../geometry/clipper.ts';
import { area, boundsOf } from '../../geometry/measure.ts';
import { partsOf } from '../../geometry/parts.ts';
import type { Region } from '../../geometry/types.ts';
import type { Letter } from '../../tag/lettering/letters.ts';
import { hasMarks, marksAbove } from '../../tag/lettering/marks-above.ts';
import { clearance } from './clearance.ts';

/** Distance in letters at which a letter may still touch a mark: an arm may reach over several. */
const lookAround = 3;

/** Outlines this near, in x-heights, are joined in the font itself. */
const touchingShare = 0.005;

/** Signs that hang beside letters. */
const apostrophe = /^['’‘ʼ"“”]+$/u;

export function isApostrophe(text: string): boolean {
  return apostrophe.test(text);
}

/** One may stand on a letter, and a letter may hang by its dot from another, with no more than this share of it in that letter. */
const standingShare = 0.25;

/** A letter that covers this share of an apostrophe's height holds it at its side, where it is still seen. */
const tallShare = 0.6;

/**
 * For letters that were moved: the number of their marks and apostrophes, and of those nearer than `reach` mm to
 * another letter.
 */
export function fusedMarks(
  letters: readonly Letter[],
  { xHeight, reach }: { readonly xHeight: number; readonly reach: number },
): { readonly drawn: number; readonly fused: number } {
  let [drawn, fused] = [0, 0];
  const touching = touchingShare * xHeight;
  const near = Math.max(reach, touching);
  letters.forEach(({ text, region, asSet, heldByMark = false }, index) => {
    if (!asSet) return;
    const isSign = isApostrophe(text);
    if (!isSign && !hasMarks(text)) return;
    const [marks, set] = isSign ? [[region], [asSet]] : [marksAbove(region), marksAbove(asSet)];
    drawn += marks.length;
    const others = letters.filter((_, k) => k !== index && Math.abs(k - index) <= lookAround);
    fused += marks.filter((mark, k) =>
      others.some((other) => {
        if (isSign && reachesUp(other.region, mark)) return false;
        if (clearance(mark, other.region, near) >= near) return false;
        if ((isSign || heldByMark) && shareWithin(mark, other.region, reach) <= standingShare) return false;
        return !set[k] || !other.asSet || clearance(set[k], other.asSet, touching) >= touching;
      }),
    ).length;
  });
  return { drawn, fused };
}

/** Share of a sign that is in a letter as large as the beam leaves it. */
function shareWithin(sign: Region, letter: Region, reach: number): number {
  return area(intersection(sign, offset(letter, reach))) / area(sign);
}

/** Whether the letter reaches far up along the sign, without its own marks: a dot that the sign touches is lost too. */
function reachesUp(letter: Region, sign: Region): boolean {
  const [largest = []] = partsOf(letter);
  const [a, b] = [boundsOf(largest), boundsOf(sign)];
  return !!a && !!b && Math.min(a.maxY, b.maxY) - Math.max(a.minY, b.minY) >= tallShare * (b.maxY - b.minY);
}
