/** Letters that a ring makes together with the stem of the first or the last letter of a line. */

import { boundsOf } from '../../geometry/measure.ts';
import type { Point, Region } from '../../geometry/types.ts';

export interface LineEnd {
  /** The way outwards along x: −1 on the left, 1 on the right. */
  readonly outwards: -1 | 1;
  /** From the letter's foot up. */
  readonly ink: readonly InkAt[];
}

interface InkAt {
  readonly y: number;
  /** Where it ends outwards, as x times the way outwards; −∞ where there is none. */
  readonly reach: number;
  readonly width: number;
}

interface StemLine {
  readonly baseline: number;
  readonly xHeight: number;
  readonly hasInitial: boolean;
}

export type StemLetter = 'd' | '9' | 'b' | 'P';

/**
 * Beside the middle of a ring a letter is no more than a stem, as F, P and Y are: in x-heights, of the ring's radius up
 * and down, and in x-heights. Such a stem is at least as long as the ring is wide. A letter most of whose height is a
 * stem is one to its ends, as I, L and T are. Where so many radii of the stem are free below the ring and above it, the
 * two are no letter, nor where the ring reaches so many above the end of a stem that has a foot or an arm. Over a foot whose far end
 * reaches up beside the ring, so many radii of a stem are enough whose side is even within so many x-heights, and beyond whose side no more
 * than a serif reaches.
 */
const stem = {
  widest: 0.7,
  beside: 0.6,
  near: 0.1,
  most: 0.7,
  free: 0.8,
  above: 0.2,
  overFoot: 1.7,
  serif: 0.3,
  straight: 0.02,
} as const;

/** A small letter that is taller than so many x-heights has an ascender. */
const tall = 1.2;

/** At how many heights the ink of a letter is looked at. */
const inkLevels = 24;

export function lineEnd(letter: Region, outwards: -1 | 1): LineEnd {
  const { minY, maxY } = boundsOf(letter)!;
  const ink = Array.from({ length: inkLevels }, (_, level): InkAt => {
    const y = minY + ((level + 0.5) / inkLevels) * (maxY - minY);
    let [least, most] = [Infinity, -Infinity];
    for (const ring of letter) {
      let from = ring.at(-1)!;
      for (const to of ring) {
        if (from.y > y !== to.y > y) {
          const along = outwards * (from.x + ((y - from.y) / (to.y - from.y)) * (to.x - from.x));
          least = Math.min(least, along);
          most = Math.max(most, along);
        }
        from = to;
      }
    }
    return { y, reach: most, width: Math.max(0, most - least) };
  });
  return { outwards, ink };
}

export function scaledEnd({ outwards, ink }: LineEnd, factor: number): LineEnd {
  const scaled = ({ y, reach, width }: InkAt): InkAt => {
    return { y: factor * y, reach: factor * reach, width: factor * width };
  };
  return { outwards, ink: ink.map(scaled) };
}

/** Whether the letter reaches over the middle of the ring, as a T does, from further in beside it. */
export function isUnderArm({ outwards, ink }: LineEnd, { x, y }: Point): boolean {
  const above = ink.findIndex((each) => each.y > y);
  if (above < 0) return false;
  const reaches = ({ reach }: InkAt): boolean => reach > outwards * x;
  return !reaches(ink[Math.max(0, above - 1)]!) && ink.slice(above).some(reaches);
}

/** Whether the letter reaches below the middle of the ring, as a 2 does, from further in beside it. */
export function isOverFoot({ outwards, ink }: LineEnd, { x, y }: Point): boolean {
  const below = ink.findLastIndex((each) => each.y < y);
  if (below < 0) return false;
  const reaches = ({ reach }: InkAt): boolean => reach > outwards * x;
  return !reaches(ink[Math.min(ink.length - 1, below + 1)]!) && ink.slice(0, below + 1).some(reaches);
}

/** In x-heights: how much further a stroke that leans out reaches at its top than halfway up. */
const leanOut = 0.1;

/** Whether the letter's outermost stroke leads outwards from the middle of its height up, as those of a V do. */
export function leansOut({ ink }: LineEnd, xHeight: number): boolean {
  const upper = ink.slice(Math.floor(ink.length / 2));
  return upper.at(-1)!.reach - upper[0]!.reach > leanOut * xHeight;
}

/** What a ring makes of the stem that it stands beside; `undefined` if that is none. */
export function withStem(
  { xHeight, baseline, hasInitial }: StemLine,
  { outwards, ink }: LineEnd,
  { x, y }: Point,
  radius: number,
): StemLetter | 'loop' | undefined {
  // A small letter that reaches up is a stem even where it is a loop, as “l” in a script.
  const isTall = ink.at(-1)!.y > baseline + tall * xHeight;
  const isSmall = outwards === 1 || !hasInitial;
  const isThin = ({ width }: InkAt): boolean => width > 0 && ((isSmall && isTall) || width < stem.widest * xHeight);
  const from = ink.findIndex((each) => each.y > y - stem.beside * radius);
  const to = ink.findLastIndex((each) => each.y < y + stem.beside * radius);
  if (from < 0 || to < from) return undefined;
  const beside = ink.slice(from, to + 1);
  // The foot of an L with a serif reaches up beside the ring, but on the far side.
  const isStemOverFoot = (): boolean => {
    const { reach } = ink[to]!;
    const isStraight = (row: InkAt): boolean => isThin(row) && Math.abs(row.reach - reach) < stem.straight * xHeight;
    const isOuter = ink.every((row) => row.reach - reach < stem.serif * xHeight);
    return isOuter && heightOfRun(ink, isStraight, to, to) >= stem.overFoot * radius;
  };
  const isAllStem = ink.filter(isThin).length > stem.most * ink.length;
  const isStem = beside.every(isThin) && heightOfRun(ink, isThin, from, to) >= 2 * radius;
  if (!isAllStem && !isStem && !isStemOverFoot()) return undefined;
  const inwards = -outwards * x;
  const isNear = ({ reach }: InkAt): boolean => -reach - (inwards + radius) < stem.near * xHeight;
  if (!beside.some((each) => isThin(each) && isNear(each))) return undefined;
  // Seen from the ring, a stem ends where a foot or an arm reaches below or above it.
  const isBeyond = ({ reach }: InkAt): boolean => -reach < inwards;
  const bottom = ink.findLastIndex((each, index) => index < from && isBeyond(each)) + 1;
  const above = ink.findIndex((each, index) => index > to && isBeyond(each));
  const top = above < 0 ? ink.length - 1 : above - 1;
  const below = y - radius - ink[bottom]!.y;
  const over = ink[top]!.y - (y + radius);
  if (!isSmall && Math.min(below, over) >= stem.free * radius) return 'loop';
  // Above the end of a stem with a foot or an arm, as at an L, it stands free.
  if (over < -stem.above * radius && !ink.every(isThin)) return undefined;
  const [low, high] = outwards < 0 ? (['d', '9'] as const) : (['b', 'P'] as const);
  return below < over ? low : high;
}

/** How far the rows that include two given ones and all fulfil a condition reach, in mm. */
function heightOfRun(ink: readonly InkAt[], fulfils: (row: InkAt) => boolean, from: number, to: number): number {
  let [first, last] = [from, to];
  while (first > 0 && fulfils(ink[first - 1]!)) first--;
  while (last + 1 < ink.length && fulfils(ink[last + 1]!)) last++;
  return ink[last]!.y - ink[first]!.y;
}
