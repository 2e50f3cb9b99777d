/** Where a letter comes to stand beside those before it. */

import type { Body } from './bodies.ts';
import type { Measures } from './measures.ts';
import type { Post } from './post.ts';
import { contactAt, profileOf, sparesStrokes, touching } from './profile.ts';
import type { Contact, Profile, StandingLetter } from './profile.ts';
import { shares } from './shares.ts';

/** A joint gains nothing by lapping further for less than this share of the way. */
const worthwhile = 0.4;

/** However small the letters are beside what they may lap. */
const mostSteps = 60;

/** A joint is slid to so much of the web, and a bead does the rest: letters that keep their distance are read better. */
const jointShare = 0.5;

export interface Join {
  /** How far the letter comes nearer. */
  readonly shift: number;
  /** `met`: by itself. `none`: it has to be held otherwise. */
  readonly joint: 'met' | 'bar' | 'none' | Post;
  /** How far it would come to meet by itself, where that makes one stroke of two. */
  readonly touch?: number;
}

/** A distance is kept, or what there is of it, and both stand on a common bar. */
export function keptApart(profile: Profile, share: number, { xHeight }: Measures): Join {
  const gap = touching(profile);
  if (!Number.isFinite(gap)) return { shift: 0, joint: 'none' };
  return { shift: Math.max(0, gap - share * xHeight), joint: gap < 0 ? 'met' : 'bar' };
}

/** A letter before, and where it stands. */
export interface PlacedLetter {
  readonly body: Body;
  readonly dx: number;
}

export interface Limits {
  /** Parts of one letter may touch along their whole length. */
  readonly oneLetter: boolean;
  /** How far the letter may come, for its marks as well. */
  readonly room: number;
}

/** How far a letter may come until a mark of it, or of those before it, is too near to the other. */
export function markRoom(left: readonly PlacedLetter[], body: Body, start: number, { xHeight }: Measures): number {
  const marks = left.filter((each) => each.body.marks.length > 0);
  if (body.marks.length === 0 && marks.length === 0) return Infinity;
  const bases = left.map(({ body: { rows }, dx }): StandingLetter => ({ rows, dx }));
  const theirs = marks.map(({ body: { markRows }, dx }): StandingLetter => ({ rows: markRows, dx }));
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
  const { shift, contact } = best;
  const length = (contact.to - contact.from + 1) * measures.pitch;
  // Stem on stem: they would be one broad stroke. Letters that the font joins are as it wants them.
  if (!oneLetter && gap > 0 && length > shares.stem * xHeight)
    return { shift: Math.max(0, gap - shares.stemGap * xHeight), joint: 'bar', touch: shift };
  return { shift, joint: 'met' };
}
