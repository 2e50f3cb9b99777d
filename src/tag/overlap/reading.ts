/**
 * Finds where two letters that meet read as another one: a bowl against a stem as a “d” or a “b” (“ol”, “lo”), the arm of an r against a stem
 * as an “m” or an “n” (“rn”), a c against a bowl as an “o” (“co”), and a slope or a flag against a single stem as an “N” or an “M” (“Iv”, “11”). The limits are our own judgement; what is
 * gained by keeping them apart is what OCR makes of words in eight faces (`npm run misread`).
 */

import { timesMet } from './closed-bays.ts';
import { contactAt } from './profile.ts';
import type { Profile } from './profile.ts';
import { lineAt, rowAt, topOf } from './runs.ts';
import type { Runs } from './runs.ts';

export type Misreading = 'bowl on stem' | 'bay closed' | 'arm on stem' | 'top on stem';

/** The letters on both sides of a gap. */
export interface Pair {
  readonly left: Runs;
  readonly right: Runs;
}

/** Nearer than this, in x-heights, two strokes are one. */
const merged = 0.06;

/** In x-heights: between which heights a stem is straight, how straight, and how wide at most. */
export const stem = { from: 0.25, to: 0.75, straight: 0.04, widest: 0.5 } as const;

/** In x-heights: where a bowl is widest, how far it draws back at its ends, and by how much its curve may err. */
const bowl = { from: 0.3, to: 0.7, low: 0.06, high: 0.94, drawsBack: 0.1, even: 0.02 } as const;

/** In x-heights: between which heights a c is open, how far its ends reach beyond its back at least, and how far left of all else its back is. */
const bay = { from: 0.4, to: 0.6, reach: 0.25, back: 0.08 } as const;

/** In x-heights: where the stem of an r and where its arm is looked at, the reach of the arm, and the top of the letter at most. */
const arm = { stem: [0.22, 0.5], at: [0.75, 1.05], reach: 0.1, highest: 1.15 } as const;

/** In heights of a 1: where its flag is looked at; in x-heights: the reach of the flag. */
const flag = { from: 0.6, reach: 0.15 } as const;

/** In heights of the letter: between which heights a slope is looked at; in x-heights: how far it leads away, and how straight it is. */
const slope = { from: 0.45, to: 0.78, away: 0.08, straight: 0.04 } as const;

/**
 * In x-heights: how far the arms of an E reach beyond its stem between them at least, how even their ends are, how high its lowest one is at most (an F would
 * be one on a bar), and how high it is itself at least.
 */
const arms = { reach: 0.3, even: 0.08, foot: 0.3, capital: 1.2 } as const;

/** What a pair reads as once the right letter has moved closer by `shift`. */
export function misreadingOf(
  { left, right }: Pair,
  profile: Profile,
  shift: number,
  xHeight: number,
): Misreading | undefined {
  const isMerged = (from: number, to: number): boolean =>
    profile.gaps.some((gap, row) => {
      const y = ((row + profile.first + 0.5) * profile.pitch) / xHeight;
      return y > from && y < to && gap - shift < merged * xHeight;
    });
  if (isBowlByStem({ left, right }, xHeight) && isMerged(bowl.from, bowl.to)) return 'bowl on stem';
  if (isBay(left, xHeight) && isMerged(0, bay.from) && isMerged(bay.to, 1)) return 'bay closed';
  if (
    isArmed(left, xHeight) &&
    (!isSingleStem(right, xHeight) || hasSerif(right, xHeight)) &&
    isStem(right, -1, xHeight) &&
    isMerged(arm.at[0], arm.at[1])
  )
    return 'arm on stem';
  const contact = contactAt(profile, shift + 1e-6);
  if (contact === undefined || contact.from * profile.pitch < slope.from * topOf(right)) return undefined;
  return isTopByStem({ left, right }, xHeight) ? 'top on stem' : undefined;
}

/**
 * Whether two arms or more of the left letter, as those of an E, end at the stem of the right one and close the bays between them: “El” is a “B”.
 * Among capitals, all of which are drawn so, it is read.
 */
export function areArmsOnStem({ left, right }: Pair, profile: Profile, shift: number, xHeight: number): boolean {
  if (topOf(left) < arms.capital * xHeight || !isStem(right, -1, xHeight)) return false;
  const ends = reaches(left, 1, 0, topOf(left) - left.pitch);
  const most = Math.max(...ends);
  const isEven = (end: number): boolean => end > most - arms.even * xHeight;
  if (!ends.slice(0, Math.round((arms.foot * xHeight) / left.pitch)).some(isEven)) return false;
  const rows = ends.map((end, row) => {
    const gap = profile.gaps[row - profile.first] ?? Infinity;
    if (isEven(end) && gap - shift < merged * xHeight) return 'met';
    return end < most - arms.reach * xHeight ? 'bay' : 'near';
  });
  return timesMet(rows) > 1;
}

/** Whether a letter that reaches furthest at its top, as a v or a 1, stands beside a single stem. */
export function isTopByStem({ left, right }: Pair, xHeight: number): boolean {
  return isSingleStem(left, xHeight) && (isSlope(right, topOf(right), xHeight) || isFlagged(right, xHeight));
}

/** Whether a bowl of the one faces a stem of the other. */
export function isBowlByStem({ left, right }: Pair, xHeight: number): boolean {
  return (
    (isBowl(left, 1, xHeight) && isStem(right, -1, xHeight)) || (isStem(left, 1, xHeight) && isBowl(right, -1, xHeight))
  );
}

/** In x-heights: how far the foot of a stem reaches beyond its side, as that of an l with a curl. */
const footReach = 0.1;

/** Whether it ends in a stem whose foot leads on to what follows: with a bar above that it would be a “t”. */
export function leadsOn(rows: Runs, xHeight: number): boolean {
  const side = Math.max(...reaches(rows, 1, stem.from * xHeight, stem.to * xHeight));
  const foot = Math.max(...reaches(rows, 1, 0, stem.from * xHeight));
  return isStem(rows, 1, xHeight) && foot > side + footReach * xHeight;
}

/** In x-heights: a stem rises above a bar by so much at least. */
const rises = 0.15;

/** Whether what ends at `top` meets a stem that goes on above it. */
export function isOnTallStem({ left, right }: Pair, top: number, xHeight: number): boolean {
  const isTall = (rows: Runs): boolean => topOf(rows) > top + rises * xHeight;
  return (isTall(left) && isStraight(left, 1, xHeight)) || (isTall(right) && isStraight(right, -1, xHeight));
}

type Side = -1 | 1;

/** By row from the height `from` to `to`, in mm: how far the letter reaches to that side, −∞ where it has nothing. */
function reaches(rows: Runs, side: Side, from: number, to: number): number[] {
  const [first, last] = [rowAt(rows, from), rowAt(rows, to)];
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, k) => {
    const line = lineAt(rows, first + k);
    return line.length === 0 ? -Infinity : side * (side > 0 ? line.at(-1)! : line[0]!);
  });
}

/** Whether a side is upright where the stems of small letters are. */
function isStraight(rows: Runs, side: Side, xHeight: number): boolean {
  const outer = reaches(rows, side, stem.from * xHeight, stem.to * xHeight);
  return Math.max(...outer) - Math.min(...outer) <= stem.straight * xHeight;
}

function isStem(rows: Runs, side: Side, xHeight: number): boolean {
  const [first, last] = [stem.from, stem.to].map((y) => rowAt(rows, y * xHeight)) as [number, number];
  for (let row = first; row <= last; row++) {
    const line = lineAt(rows, row);
    const [start = -Infinity, end = Infinity] = side > 0 ? line.slice(-2) : line.slice(0, 2);
    if (end - start > stem.widest * xHeight) return false;
  }
  return isStraight(rows, side, xHeight);
}

/** Whether a letter is nothing but a stem, serifs aside. */
export function isSingleStem(rows: Runs, xHeight: number): boolean {
  const [first, last] = [stem.from, stem.to].map((y) => rowAt(rows, y * xHeight)) as [number, number];
  for (let row = first; row <= last; row++) if (lineAt(rows, row).length !== 2) return false;
  return isStem(rows, 1, xHeight);
}

/** In x-heights and heights of the letter: between which heights a bare stem is straight. */
const bare = { from: 0.2, to: 0.9 } as const;

/** Whether it is a stem up to its top without serif or flag, as an l or an I; the foot of an L is below what is looked at. */
export function isBareStem(rows: Runs, xHeight: number): boolean {
  const [low, high] = [bare.from * xHeight, bare.to * topOf(rows)];
  const isEven = ([1, -1] as const).every((side) => {
    const outer = reaches(rows, side, low, high);
    return Math.max(...outer) - Math.min(...outer) <= stem.straight * xHeight;
  });
  return isEven && isSingleStem(rows, xHeight);
}

/** Whether it is one with a serif to the left at its foot. */
export function isSerifStem(rows: Runs, xHeight: number): boolean {
  return isSingleStem(rows, xHeight) && hasSerif(rows, xHeight);
}

function hasSerif(rows: Runs, xHeight: number): boolean {
  const outer = reaches(rows, -1, 0, stem.to * xHeight);
  return Math.max(...outer) - outer.at(-1)! > stem.straight * xHeight;
}

function isBowl(rows: Runs, side: Side, xHeight: number): boolean {
  const outer = reaches(rows, side, bowl.low * xHeight, bowl.high * xHeight);
  const most = Math.max(...outer);
  const drawn = bowl.drawsBack * xHeight;
  if (!Number.isFinite(most) || most - outer[0]! < drawn || most - outer.at(-1)! < drawn) return false;
  const peak = outer.indexOf(most);
  const height = bowl.low + (peak * rows.pitch) / xHeight;
  if (height < bowl.from || height > bowl.to) return false;
  return outer.every((reach, k) => {
    const inner = outer[k < peak ? k + 1 : k - 1];
    return k === peak || reach <= inner! + bowl.even * xHeight;
  });
}

/** Whether it is a small letter that is open on the right, as a c. */
function isBay(rows: Runs, xHeight: number): boolean {
  const at = (from: number, to: number, side: Side): number =>
    Math.max(...reaches(rows, side, from * xHeight, to * xHeight));
  if (topOf(rows) > arm.highest * xHeight) return false;
  const back = at(bay.from, bay.to, 1);
  const ends = Math.min(at(0, bay.from, 1), at(bay.to, 1, 1));
  const left = Math.max(at(0, bay.from, -1), at(bay.to, 1, -1));
  return ends > back + bay.reach * xHeight && at(bay.from, bay.to, -1) > left - bay.back * xHeight;
}

/** Whether it is a stem with an arm to the right at its top, as an r. */
function isArmed(rows: Runs, xHeight: number): boolean {
  if (topOf(rows) > arm.highest * xHeight) return false;
  const [low, high] = [arm.stem, arm.at].map(([from, to]) => reaches(rows, 1, from * xHeight, to * xHeight));
  const isStraight = Math.max(...low!) - Math.min(...low!) <= stem.straight * xHeight;
  return isStraight && Math.max(...high!) - Math.max(...low!) > arm.reach * xHeight;
}

/** Whether it is a single stem with a flag to the left at its top, as a 1. */
function isFlagged(rows: Runs, xHeight: number): boolean {
  if (!isSingleStem(rows, xHeight)) return false;
  const [low, high] = [
    reaches(rows, -1, stem.from * xHeight, stem.to * xHeight),
    reaches(rows, -1, flag.from * topOf(rows), topOf(rows)),
  ];
  return Math.max(...high) - Math.max(...low) > flag.reach * xHeight;
}

/** Whether the left side of a letter leads away from its top in a straight line. */
function isSlope(rows: Runs, top: number, xHeight: number): boolean {
  const outer = reaches(rows, -1, slope.from * top, slope.to * top);
  const [low, high] = [outer[0]!, outer.at(-1)!];
  return (
    high - low > slope.away * xHeight &&
    outer.every((reach, k) => {
      const straight = low + ((high - low) * k) / (outer.length - 1);
      return Math.abs(reach - straight) <= slope.straight * xHeight;
    })
  );
}
