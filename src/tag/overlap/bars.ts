/** Bars along the baseline, and posts as shapes, with round ends like pen strokes. */

import { translation, transform } from '../../geometry/affine.ts';
import type { Region } from '../../geometry/types.ts';
import { hasSmallLetters } from '../../spec/read/evenly.ts';
import { roundedRectangle } from '../shapes/plates.ts';
import { holdingArm, middleArm } from './arms.ts';
import type { Measures } from './measures.ts';
import { ease } from './post.ts';
import type { Post } from './post.ts';
import type { Profile } from './profile.ts';
import {
  isBareStem,
  isBowlByStem,
  isOnTallStem,
  isSerifStem,
  isSingleStem,
  isTopByStem,
  leadsOn,
  stem,
} from './reading.ts';
import type { Pair } from './reading.ts';
import { lineAt, topOf } from './runs.ts';
import type { Runs } from './runs.ts';
import { shares } from './shares.ts';

export function postBar({ x, bottom, top }: Post, { web, grow }: Measures): Region {
  const half = (ease * web) / 2;
  // Its ends are round, from its own shape and from growth.
  const sink = web / 2 + grow / 2;
  return bar(x - half, bottom - sink, x + half, top + sink);
}

export interface FootBar {
  readonly region: Region;
  /** Visible length, in mm. */
  readonly length: number;
  /** Whether a move closer is better than this. */
  readonly isLong: boolean;
}

/** Reach of a bar into the letters, in webs. */
const into = 0.75;

/**
 * How far a bar reaches back into the hollow below a bowl, in webs: at the feet, and on an arm or a bowl, where it would be a shelf below that. By eye.
 */
const hollow = { foot: 2, high: 0.3 } as const;

/** How much longer a bar may be below the top of the letters than along the baseline. Our own judgement. */
const longerShare = 1.6;

/**
 * A bar between two words: just below `top`, that of their small letters or capitals, where it is hardly longer there,
 * since along the baseline it reads as an underscore. On a stem that rises above it, it would read as the arm of a T, and between two
 * stems as high as it a “Π”. Beside a single bare capital stem it lies where it would within a word: at its top it makes a “Γ” of the “I”.
 */
export function wordBar(profile: Profile, shift: number, measures: Measures, wordEnds: WordEnds): FootBar | undefined {
  const { top, left, right } = wordEnds;
  const foot = footBar(profile, shift, measures);
  const isStemToTop = (rows: Runs): boolean =>
    isSingleStem(rows, measures.xHeight) && Math.abs(topOf(rows) - top) < measures.web;
  if (isStemToTop(left) && isStemToTop(right)) return foot;
  const lifted = [left, right].some((rows) => isBareToTop(rows, top, measures))
    ? footBar(profile, shift, measures, liftShare * top)
    : undefined;
  if (foot && lifted && lifted.length > 0 && lifted.length <= longerShare * foot.length) return lifted;
  const head = footBar(profile, shift, measures, top - ease * measures.web);
  if (!foot || !head || head.length <= 0) return foot;
  const [longer, other] = isOnTallStem({ left, right }, top, measures.xHeight) ? [foot, head] : [head, foot];
  return longer.length <= longerShare * other.length ? longer : other;
}

/** Whether it is a capital that is nothing but a stem, as high as the bar. */
function isBareToTop(rows: Runs, top: number, { web, xHeight }: Measures): boolean {
  return top > bareFrom * xHeight && Math.abs(topOf(rows) - top) < web && isBareStem(rows, xHeight);
}

export interface WordEnds extends Pair {
  /** Of the lower letters. */
  readonly top: number;
}

/** A stem is that of a capital if it is higher than so many x-heights. */
const bareFrom = 1.15;

/** The height of a bar beside a stem, as a share of the lower letter: its foot is seen below. By eye, and by an independent reader. */
const liftShare = 0.21;

/** The height of a bar between a bowl and a stem, in x-heights: at the foot it makes an “a” of the bowl. */
const bowlMiddle = 0.5;

/**
 * A bar between two letters: on the baseline or, behind the bare stem of a capital, somewhat above. At its foot it would be the arm of an L
 * beside an I, and the lowest of an E beside an F.
 */
export function letterBar(profile: Profile, shift: number, measures: Measures, sides: BarSides): FootBar | undefined {
  const foot = footBar(profile, shift, measures);
  const high = highBar(profile, shift, measures, sides);
  if (high) return high;
  if (isTopByStem(sides, measures.xHeight)) return foot;
  const lift = liftShare * Math.min(topOf(sides.left), topOf(sides.right));
  if (!foot || hasSmallLetters(sides.text) || lift < measures.web || !isStem(sides.left, lift + measures.web, measures))
    return foot;
  const lifted = footBar(profile, shift, measures, lift);
  return lifted && lifted.length <= longerShare * foot.length ? lifted : foot;
}

/** A bar on the arm of a capital; `undefined` if there is none, or where it would be long. */
export function armBar(profile: Profile, shift: number, measures: Measures, sides: BarSides): FootBar | undefined {
  return heldByArm(sides, measures.xHeight) === undefined ? undefined : highBar(profile, shift, measures, sides);
}

function highBar(profile: Profile, shift: number, measures: Measures, sides: BarSides): FootBar | undefined {
  const { web, xHeight } = measures;
  const middle = heightOf(sides, xHeight);
  if (middle === undefined) return undefined;
  const high = footBar(profile, shift, measures, middle - (ease * web) / 2, hollow.high);
  const longest = middleArm(sides.left, xHeight) === undefined ? shares.longBar : shares.longArm;
  return high && high.length <= longest * xHeight ? high : undefined;
}

/** The middle of a bar that is to lie higher than at the feet, whatever the letters are: on the arm of an F, or between a bowl and a stem. */
function heightOf(sides: BarSides, xHeight: number): number | undefined {
  const isBetween = isBowlByStem(sides, xHeight) && !leadsOn(sides.left, xHeight);
  return heldByArm(sides, xHeight) ?? (isBetween ? bowlMiddle * xHeight : undefined);
}

/** The height of the arm on which a stem with serifs or a letter with a dot hangs: its dot would melt into the upper arm of an F. */
export function heldByArm({ left, right, isDotted }: BarSides, xHeight: number): number | undefined {
  const arm = isDotted || isSerifStem(right, xHeight) ? middleArm(left, xHeight) : undefined;
  return arm ?? (isDotted ? holdingArm(left, xHeight) : undefined);
}

/** What a bar stands between. */
export interface BarSides extends Pair {
  /** Of the left letter. */
  readonly text: string;
  /** Whether the right letter has a dot or an accent. */
  readonly isDotted: boolean;
}

/** Whether a letter ends on the right in an upright stem without a serif or an arm at its foot, up to `top`. */
function isStem(rows: Runs, top: number, { xHeight }: Measures): boolean {
  const runs = Array.from({ length: Math.ceil(top / rows.pitch) }, (_, k) => lineAt(rows, k).slice(-2));
  const edges = runs.flatMap(([, to]) => to ?? []);
  const upper = runs.slice(Math.floor(runs.length / 2));
  if (upper.some(([from = -Infinity, to = Infinity]) => to - from > stem.widest * xHeight)) return false;
  const [furthest, ...inner] = [Math.max(...edges), ...upper.map(([, to]) => to!)];
  return inner.every((to) => furthest - to <= stem.straight * xHeight);
}

/** A bar as high as `web` along a line, `back` webs into hollows at most, between whatever stands on it on the left and on the right. */
export function footBar(
  profile: Profile,
  shift: number,
  { web, pitch, xHeight }: Measures,
  line = 0,
  back: number = hollow.foot,
): FootBar | undefined {
  const first = Math.round(line / pitch) - profile.first;
  const rows = Array.from({ length: Math.max(1, Math.round(web / pitch)) }, (_, k) => k + first);
  const facing = rows.filter((row) => Number.isFinite(profile.gaps[row] ?? Infinity));
  if (facing.length === 0) return undefined;
  const ends = facing.map((row) => profile.edges[row]!);
  const starts = facing.map((row) => profile.edges[row]! + profile.gaps[row]! - shift);
  // Into the hollow below a bowl, but not along a leg that leans away.
  const left = Math.max(Math.min(...ends), Math.max(...ends) - back * web);
  const right = Math.min(Math.max(...starts), Math.min(...starts) + back * web);
  const sink = into * web;
  const region = bar(left - sink, line, right + sink, line + ease * web);
  const length = Math.min(...starts) - Math.max(...ends);
  return { region, length, isLong: length > shares.longBar * xHeight };
}

/** A bar with round ends, as a region. */
function bar(left: number, bottom: number, right: number, top: number): Region {
  const [width, height] = [right - left, top - bottom];
  const ring = roundedRectangle(width, height, Math.min(width, height) / 2);
  return transform([ring], translation((left + right) / 2, (bottom + top) / 2));
}
