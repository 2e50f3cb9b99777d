/** How near the letters of a text come to one another, beside how near their font has them. */

import type { Region } from '../geometry/types.ts';
import { alongside, clearance } from './clearance.ts';

/** A letter where it stands, and where its font would have it: elsewhere only with spacing of one's own. */
export interface Standing {
  readonly outline: Region;
  readonly natural: Region;
  /** The first of its word: it may join the word before, but does not crowd it. */
  readonly opens: boolean;
}

export interface Closeness {
  /** Letters side by side that the font keeps apart, and how many of them are joined. */
  readonly neighbours: { readonly apart: number; readonly merged: number };
  /** Length over which a letter comes too near the next, in x-heights, at most 1; the mean of each word's pairs. Joins that are meant are none. */
  readonly crowded: number;
}

/** Outlines this near, in x-heights, are joined as the font draws them. */
const touchingShare = 0.005;
/** So much of letters side by side, in x-heights, is where their joint is. */
const jointShare = 0.03;
/** The longest joint of letters that were slid until they join, in x-heights: along all of a stem they are one stroke. Our own judgement. */
const slidJoint = 0.5;
/** Steps along an outline, in x-heights. */
const stepShare = 0.1;

/** In mm. Whatever is nearer than `reach` is joined. `slid`: the letters were set so that they touch. */
export function closeness(
  letters: readonly Standing[],
  { xHeight, reach, slid }: { readonly xHeight: number; readonly reach: number; readonly slid: boolean },
): Closeness {
  const touching = touchingShare * xHeight;
  const near = Math.max(reach, touching);
  let [apart, merged, length, within] = [0, 0, 0, 0];
  for (const [index, next] of letters.entries()) {
    const letter = letters[index - 1];
    if (!letter) continue;
    const gap = clearance(letter.outline, next.outline, near);
    const drawn = next.natural === next.outline ? gap : clearance(letter.outline, next.natural, near);
    const isApart = drawn >= touching && !slid;
    if (isApart) apart++;
    if (!next.opens) within++;
    if (gap >= near) continue;
    if (isApart) merged++;
    if (next.opens) continue;
    const step = stepShare * xHeight;
    const joint = alongside(letter.outline, next.natural, Math.min(near, jointShare * xHeight), step);
    const meant = slid ? Math.min(joint, slidJoint * xHeight) : joint;
    length += Math.min(1, Math.max(0, alongside(letter.outline, next.outline, near, step) - meant) / xHeight);
  }
  return { neighbours: { apart, merged }, crowded: length / Math.max(1, within) };
}
