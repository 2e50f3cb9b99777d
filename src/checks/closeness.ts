/** How near the letters of a text come to one another, beside how near their font has them. */

import { transform, translation } from '../geometry/affine.ts';
import type { Point, Region } from '../geometry/types.ts';
import { alongside, clearance } from './clearance.ts';

/** A letter where it stands, and where its font would have it: elsewhere only with spacing of one's own. */
export interface Standing {
  /** Letters of the same number are drawn alike. */
  readonly like: number;
  /** Any point of it, the same for all that are drawn alike. */
  readonly at: Point;
  readonly outline: Region;
  /** How far spacing of one's own has moved it. */
  readonly spaced?: Point | undefined;
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

interface Reaches {
  readonly xHeight: number;
  /** In mm; whatever is nearer is joined. */
  readonly reach: number;
  /** The letters were set so that they touch. */
  readonly slid: boolean;
}

/** Pairs that stand alike are looked at once: a long text has far fewer than letters. */
export function closeness(letters: readonly Standing[], reaches: Reaches): Closeness {
  const { xHeight, slid } = reaches;
  const known = new Map<string, Pair>();
  let [apart, merged, length, within] = [0, 0, 0, 0];
  for (const [index, next] of letters.entries()) {
    const letter = letters[index - 1];
    if (!letter) continue;
    const key = keyOf(letter, next, xHeight);
    const pair = known.get(key) ?? pairOf(letter, next, reaches);
    known.set(key, pair);
    const isApart = pair.isApart && !slid;
    if (isApart) apart++;
    if (isApart && pair.isJoined) merged++;
    if (next.opens) continue;
    within++;
    length += pair.length;
  }
  return { neighbours: { apart, merged }, crowded: length / Math.max(1, within) };
}

/** Places that differ by a ten-thousandth of the x-height are the same. */
function keyOf(letter: Standing, next: Standing, xHeight: number): string {
  const away = [next.at.x - letter.at.x, next.at.y - letter.at.y, next.spaced?.x ?? 0, next.spaced?.y ?? 0];
  return [letter.like, next.like, ...away.map((mm) => Math.round((1e4 * mm) / xHeight))].join(' ');
}

interface Pair {
  /** As the font has them. */
  readonly isApart: boolean;
  readonly isJoined: boolean;
  /** Over which they come too near, in x-heights, at most 1. */
  readonly length: number;
}

function pairOf({ outline: before }: Standing, next: Standing, { xHeight, reach, slid }: Reaches): Pair {
  const touching = touchingShare * xHeight;
  const near = Math.max(reach, touching);
  const { outline, spaced } = next;
  const natural = spaced ? transform(outline, translation(-spaced.x, -spaced.y)) : outline;
  const gap = clearance(before, outline, near);
  const isApart = (spaced ? clearance(before, natural, near) : gap) >= touching;
  if (gap >= near) return { isApart, isJoined: false, length: 0 };
  const step = stepShare * xHeight;
  const joint = alongside(before, natural, Math.min(near, jointShare * xHeight), step);
  const meant = slid ? Math.min(joint, slidJoint * xHeight) : joint;
  const length = Math.min(1, Math.max(0, alongside(before, outline, near, step) - meant) / xHeight);
  return { isApart, isJoined: true, length };
}
