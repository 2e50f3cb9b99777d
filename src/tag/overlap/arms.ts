/** Letters with a stem as their only foot and an arm to the right above it, as F and P: with a stroke at the foot they read as E and B. */

import { lineAt, rowAt, topOf } from './runs.ts';
import type { Runs } from './runs.ts';

/**
 * In x-heights: where the stem stands, how wide it is at most, between which heights an arm begins, within which height, and how far it
 * reaches at least. Our own judgement.
 */
const shape = { stemAt: 0.15, stem: 0.4, from: 0.3, to: 1, within: 0.1, arm: 0.22 } as const;

/** @param widest Of its stem, in x-heights. */
export function isArmOverFoot(rows: Runs, xHeight: number, widest: number = shape.stem): boolean {
  const at = (share: number): number => rowAt(rows, share * xHeight);
  const foot = lineAt(rows, at(shape.stemAt));
  if (foot.length === 0 || foot.at(-1)! - foot[0]! > widest * xHeight) return false;
  const rise = Math.max(1, Math.round((shape.within * xHeight) / rows.pitch));
  for (let row = at(shape.from); row < at(shape.to); row++) {
    const [below, above] = [lineAt(rows, row).at(-1), lineAt(rows, row + rise).at(-1)];
    if (below !== undefined && above !== undefined && above - below > shape.arm * xHeight) return true;
  }
  return false;
}

/**
 * In x-heights: the lowest middle arm, from where its stem is bare, how far it reaches beyond that and beyond what is above it, how much less far a
 * serif at the foot reaches, and how even its end is.
 */
const middle = { lowest: 0.4, stem: 0.2, reach: 0.1, beyondFoot: 0.04, even: 0.03 } as const;

/** The height of the middle arm of an F, below an upper one that reaches as far, in mm; `undefined` if there is none. */
export function middleArm(rows: Runs, xHeight: number): number | undefined {
  const ends = rows.lines.map((line) => line.at(-1) ?? -Infinity);
  const first = rowAt(rows, middle.lowest * xHeight) - rows.first;
  const reach = middle.reach * xHeight;
  const foot = Math.max(...ends.slice(0, first));
  const bare = Math.min(...ends.slice(Math.max(0, rowAt(rows, middle.stem * xHeight) - rows.first), first));
  let most = -Infinity;
  // The first row from which it draws back above.
  const above = ends.findIndex((end, row) => {
    if (row < first) return false;
    most = Math.max(most, end);
    return end < most - reach;
  });
  if (
    above < 0 ||
    bare > most - reach ||
    foot > most - middle.beyondFoot * xHeight ||
    Math.max(...ends.slice(above)) < most
  )
    return undefined;
  const isArm = (end: number): boolean => end >= most - middle.even * xHeight;
  const [from, to] = [
    ends.findIndex((end, row) => row >= first && isArm(end)),
    ends.slice(0, above).findLastIndex(isArm),
  ];
  return (rows.first + (from + to + 1) / 2) * rows.pitch;
}

/** In x-heights: where a capital with an arm holds a letter with a dot, its least height and widest stem, and how even the end of its arm is. */
const holding = { from: 0.35, to: 0.95, least: 1.15, widest: 0.5, even: 0.03 } as const;

/**
 * The height at which an F or a P reaches furthest to the right beside small letters, in mm, or the middle of the stem of a T; `undefined` of
 * letters without an arm.
 */
export function holdingArm(rows: Runs, xHeight: number): number | undefined {
  if (topOf(rows) < holding.least * xHeight || !isArmOverFoot(rows, xHeight, holding.widest)) return undefined;
  const at = (share: number): number => rowAt(rows, share * xHeight);
  const band = Array.from({ length: at(holding.to) - at(holding.from) + 1 }, (_, k) => at(holding.from) + k);
  const endOf = (row: number): number => lineAt(rows, row).at(-1) ?? -Infinity;
  const most = Math.max(...band.map(endOf));
  const arm = band.filter((row) => endOf(row) >= most - holding.even * xHeight);
  return ((arm[0]! + arm.at(-1)! + 1) / 2) * rows.pitch;
}
