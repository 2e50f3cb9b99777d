/** Dots and accents that run into a letter beside theirs, where the font keeps them apart: an i then reads as an l, or as nothing. */

import type { Letter } from '../tag/letters.ts';
import { marksAbove } from '../tag/marks-above.ts';
import { clearance } from './clearance.ts';

/** How many letters away one can touch a mark: an arm may reach over several. */
const lookAround = 3;

/** Outlines this near, in x-heights, are joined as the font draws them. */
const touchingShare = 0.005;

/** Of letters that were moved: how many of their marks there are, and how many come nearer than `reach` mm to another letter. */
export function fusedMarks(
  letters: readonly Letter[],
  { xHeight, reach }: { readonly xHeight: number; readonly reach: number },
): { readonly drawn: number; readonly fused: number } {
  let [drawn, fused] = [0, 0];
  const touching = touchingShare * xHeight;
  const near = Math.max(reach, touching);
  letters.forEach(({ region, asSet }, index) => {
    if (!asSet) return;
    const [marks, set] = [marksAbove(region), marksAbove(asSet)];
    drawn += marks.length;
    const others = letters.filter((_, k) => k !== index && Math.abs(k - index) <= lookAround);
    fused += marks.filter((mark, k) =>
      others.some((other) => {
        if (clearance(mark, other.region, near) >= near) return false;
        return !set[k] || !other.asSet || clearance(set[k], other.asSet, touching) >= touching;
      }),
    ).length;
  });
  return { drawn, fused };
}
