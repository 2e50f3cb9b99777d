/** Finds the place of a letter beside those before it. */

import type { LetterBody } from './bodies.ts';
import type { Measures } from './measures.ts';
import type { Post } from './post.ts';
import { contactAt, profileOf, sparesStrokes, touching } from './profile.ts';
import type { Contact, Profile, ShiftedRows } from './profile.ts';
import { shares } from './shares.ts';

/** Overlapping further must widen the joint by more than this share of the way. */
const worthwhile = 0.4;

/** Most steps, however small the letters are compared with the allowed overlap. */
const mostSteps = 60;

/** Share of the web to which a joint is slid; a bead does the rest, as letters that keep apart are easier to read. */
const jointShare = 0.5;

/** Letters that meet overlap by at least so much, in mm: edges that only lie on each other may part when they are rounded. */
const sureMm = 0.01;

export interface Join {
  /** Distance that the letter moves closer, in mm. */
  readonly shift: number;
  /** `met`: it joins directly. `none`: it must be held in another way. */
  readonly joint: 'met' | 'bar' | 'none' | Post;
  /** Distance that it would have to move to join directly, if that makes one stroke of two. */
  readonly touch?: number;
  /** Whether one of its marks joins it. */
  readonly byMark?: boolean;
}

/** Keeps a distance, or whatever there is of it, with both on a common bar. */
export function keptApart(profile: Profile, share: number, { xHeight }: Measures): Join {
  const gap = touching(profile);
  if (!Number.isFinite(gap)) return { shift: 0, joint: 'none' };
  return { shift: Math.max(0, gap - share * xHeight), joint: gap < 0 ? 'met' : 'bar' };
}

/** A letter before, and its place. */
export interface PlacedLetter {
  readonly body: LetterBody;
  readonly dx: number;
}

export interface Limits {
  /** Whether the parts belong to one letter, and may touch along their whole length. */
  readonly oneLetter: boolean;
  /** Largest distance that the letter may move, its marks considered. */
  readonly room: number;
}

/** The distance that a letter may move before one of its marks, or of those before it, is too near to the other. */
export function markRoom(
  left: readonly PlacedLetter[],
  body: LetterBody,
  start: number,
  { xHeight }: Measures,
): number {
  const marks = left.filter((each) => each.body.marks.length > 0);
  if (body.marks.length === 0 && marks.length === 0) return Infinity;
  const bases = left.map(({ body: { rows }, dx }): ShiftedRows => ({ rows, dx }));
  const theirs = marks.map(({ body: { markRows }, dx }): ShiftedRows => ({ rows: markRows, dx }));
  const ahead = touching(profileOf([...bases, ...theirs], { rows: body.markRows, dx: start }));
  const behind = touching(profileOf(theirs, { rows: body.rows, dx: start }));
  return Math.max(0, Math.min(ahead, behind) - shares.markGap * xHeight);
}

export function meet(profile: Profile, measures: Measures, { oneLetter, room }: Limits): Join {
  const { xHeight, web, overlap } = measures;
  const enough = jointShare * web;
  const gap = touching(profile);
  if (gap > room) return { shift: 0, joint: 'none' };
  const start = Math.max(0, gap);
  const step = Math.max(shares.step * xHeight, overlap / mostSteps);
  let best: { readonly shift: number; readonly contact: Contact; readonly worth: number } | undefined;
  for (let lap = 0; lap <= overlap + 1e-9; lap += step) {
    const shift = start + lap;
    const contact = contactAt(profile, shift + 1e-6);
    if (!contact) continue;
    if (best && !sparesStrokes(profile, shift)) break;
    const worth = Math.min(contact.chord, enough) - worthwhile * lap;
    if (!best || worth > best.worth) best = { shift, contact, worth };
    if (contact.chord >= enough) break;
  }
  if (!best) return { shift: start, joint: 'none' };
  const shift = Math.max(best.shift, gap + sureMm);
  const { contact } = best;
  const length = (contact.to - contact.from + 1) * measures.pitch;
  // Stem on stem would make one broad stroke. Letters that the font joins stay as the font has them.
  if (!oneLetter && gap > 0 && length > shares.stem * xHeight)
    return { shift: Math.max(0, gap - shares.stemGap * xHeight), joint: 'bar', touch: shift };
  return { shift, joint: 'met' };
}

/** Letters told from an l or an L by a stroke across their stem. */
const crossed = /^[łŁ]$/u;

/** Between which heights that stroke is, in x-heights. */
const crossing = { from: 0.3, to: 1.4 } as const;

/** The distance that a letter may move before the stroke across the stem of one of the two runs into the other: half of it would be the arm of that. */
export function crossingRoom(texts: readonly string[], { gaps, first, pitch }: Profile, { xHeight }: Measures): number {
  if (!texts.some((text) => crossed.test(text))) return Infinity;
  const near = gaps.filter((_, row) => {
    const y = (row + first + 0.5) * pitch;
    return y > crossing.from * xHeight && y < crossing.to * xHeight;
  });
  return Math.max(0, Math.min(...near) - shares.markGap * xHeight);
}
