/** The closeness of a text's letters to each other, compared with their spacing in the font. */

import { transform, translation } from '../../geometry/affine.ts';
import type { Point, Region } from '../../geometry/types.ts';
import { lengthNear, clearance } from './clearance.ts';

/** A letter at its place, with its place in the font if custom spacing has moved it. */
export interface PositionedLetter {
  /** Letters with the same number have the same outline. */
  readonly like: number;
  /** A reference point, the same for all letters with the same outline. */
  readonly at: Point;
  readonly outline: Region;
  /** Displacement by custom spacing. */
  readonly spaced?: Point | undefined;
  /** Whether it is the first of its word: it may join the word before, but does not crowd it. */
  readonly opens: boolean;
}

export interface Closeness {
  /** Number of neighbouring letters that the font keeps apart, and how many of them are joined. */
  readonly neighbours: { readonly apart: number; readonly merged: number };
  /**
   * Length over which a letter comes too near the next, in x-heights, at most 1; the mean over each word's pairs.
   * Intended joins do not count.
   */
  readonly crowded: number;
}

/** Outlines this near, in x-heights, are joined in the font itself. */
const touchingShare = 0.005;
/** Outlines within this distance of each other, in x-heights, belong to the joint of two letters. */
const jointShare = 0.03;
/** Longest joint of slid letters, in x-heights: along a whole stem they become one stroke. Our own judgement. */
const slidJoint = 0.5;
/** Steps along an outline, in x-heights. */
const stepShare = 0.1;

interface JoiningDistances {
  readonly xHeight: number;
  /** In mm; outlines nearer than this are joined. */
  readonly reach: number;
  /** Whether the letters were set so that they touch. */
  readonly slid: boolean;
}

/** Pairs in the same position are examined once: a long text has far fewer of them than letters. */
export function closeness(letters: readonly PositionedLetter[], reaches: JoiningDistances): Closeness {
  const { xHeight, slid } = reaches;
  const known = new Map<string, Pair>();
  let [apart, merged, length, within] = [0, 0, 0, 0];
  for (const [index, next] of letters.entries()) {
    const letter = letters[index - 1];
    if (!letter) continue;
    const key = pairKey(letter, next, xHeight);
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

/** Positions that differ by less than a ten-thousandth of the x-height are the same. */
function pairKey(letter: PositionedLetter, next: PositionedLetter, xHeight: number): string {
  const away = [next.at.x - letter.at.x, next.at.y - letter.at.y, next.spaced?.x ?? 0, next.spaced?.y ?? 0];
  return [letter.like, next.like, ...away.map((mm) => Math.round((1e4 * mm) / xHeight))].join(' ');
}

interface Pair {
  /** Whether the font keeps them apart. */
  readonly isApart: boolean;
  readonly isJoined: boolean;
  /** Length over which they come too near, in x-heights, at most 1. */
  readonly length: number;
}

function pairOf(
  { outline: before }: PositionedLetter,
  next: PositionedLetter,
  { xHeight, reach, slid }: JoiningDistances,
): Pair {
  const touching = touchingShare * xHeight;
  const near = Math.max(reach, touching);
  const { outline, spaced } = next;
  const natural = spaced ? transform(outline, translation(-spaced.x, -spaced.y)) : outline;
  const gap = clearance(before, outline, near);
  const isApart = (spaced ? clearance(before, natural, near) : gap) >= touching;
  if (gap >= near) return { isApart, isJoined: false, length: 0 };
  const step = stepShare * xHeight;
  const joint = lengthNear(before, natural, Math.min(near, jointShare * xHeight), step);
  const meant = slid ? Math.min(joint, slidJoint * xHeight) : joint;
  const length = Math.min(1, Math.max(0, lengthNear(before, outline, near, step) - meant) / xHeight);
  return { isApart, isJoined: true, length };
}
