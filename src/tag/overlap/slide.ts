/** The letters of a line slid together one after the other, and what joins those that cannot meet. */

import type { Region } from '../../geometry/types.ts';
import type { Body } from './bodies.ts';
import type { Measures } from './measures.ts';
import { bar, bestPost } from './post.ts';
import type { Post } from './post.ts';
import { contactAt, profileOf, sparesStrokes, touching } from './profile.ts';
import type { Contact, Profile, Standing } from './profile.ts';
import { movedRuns } from './runs.ts';

/** All shares are of the x-height; by eye and by an independent reader of letters, on a hundred names in six faces. */
const shares = {
  /** The most a letter comes nearer for a joint, beside what it laps. */
  reach: 0.4,
  /** A joint longer than this makes one stroke of two stems. */
  stem: 0.5,
  /** What two stems keep between them instead. */
  stemGap: 0.12,
  /** What two words keep between them. */
  wordGap: 0.3,
  /** How near a sign hung high may come to be joined by a post. */
  step: 1 / 80,
} as const;

/** A joint gains nothing by lapping further for less than this share of the way. */
const worthwhile = 0.4;

/** How many letters back one can be touched: an arm may reach over several. */
const lookBack = 4;

export interface Slid {
  /** By how much each letter is moved to the right; never positive but for the first. */
  readonly moves: readonly number[];
  /** Bars and posts, as grown. */
  readonly joints: readonly Region[];
}

/** `bodies`: the letters of one line from left to right. */
export function slideLine(bodies: readonly Body[], measures: Measures): Slid {
  const moves: number[] = [];
  const joints: Region[] = [];
  bodies.forEach((body, index) => {
    if (index === 0) {
      moves.push(0);
      return;
    }
    const before = Array.from({ length: Math.min(index, lookBack) }, (_, k) => index - 1 - k);
    const left = before.map((k): Standing => ({ rows: bodies[k]!.rows, dx: moves[k]! }));
    const start = moves[index - 1]!;
    const profile = profileOf(left, { rows: body.rows, dx: start });
    const joined = body.letter.afterGap ? acrossGap(profile, measures) : meet(profile, measures);
    let { shift } = joined;
    let { joint } = joined;
    if (joint === 'none') {
      const along = { left: before.map((k) => ({ body: bodies[k]!, dx: moves[k]! })), body, start };
      ({ shift, joint } = reachFor(along, profile, measures));
    }
    moves.push(start - shift);
    if (joint === 'bar') joints.push(...footBar(profile, shift, body, measures));
    else if (joint !== 'met' && joint !== 'none') joints.push(postBar(joint, measures));
  });
  return { moves, joints };
}

interface Join {
  /** How far the letter comes nearer. */
  readonly shift: number;
  /** `met`: by itself. `none`: it has to be held otherwise. */
  readonly joint: 'met' | 'bar' | 'none' | Post;
}

/** Words keep their distance, or what is left of it, and stand on a common bar. */
function acrossGap(profile: Profile, { xHeight }: Measures): Join {
  const gap = touching(profile);
  if (!Number.isFinite(gap)) return { shift: 0, joint: 'none' };
  return { shift: Math.max(0, gap - shares.wordGap * xHeight), joint: gap < 0 ? 'met' : 'bar' };
}

function meet(profile: Profile, measures: Measures): Join {
  const { xHeight, web, overlap } = measures;
  const gap = touching(profile);
  if (gap > shares.reach * xHeight) return { shift: 0, joint: 'none' };
  const start = Math.max(0, gap);
  const step = shares.step * xHeight;
  let best: { readonly shift: number; readonly contact: Contact; readonly worth: number } | undefined;
  for (let lap = 0; lap <= overlap + 1e-9; lap += step) {
    const shift = start + lap;
    const contact = contactAt(profile, shift + 1e-6);
    if (!contact) continue;
    if (best && !sparesStrokes(profile, shift)) break;
    const worth = Math.min(contact.chord, web) - worthwhile * lap;
    if (!best || worth > best.worth) best = { shift, contact, worth };
    if (contact.chord >= web) break;
  }
  if (!best) return { shift: start, joint: 'none' };
  const { shift, contact } = best;
  const length = (contact.to - contact.from + 1) * measures.pitch;
  // Stem on stem: they would be one broad stroke. Letters that the font joins are as it wants them.
  if (gap > 0 && length > shares.stem * xHeight)
    return { shift: Math.max(0, gap - shares.stemGap * xHeight), joint: 'bar' };
  return { shift, joint: 'met' };
}

interface Reach {
  readonly left: readonly { readonly body: Body; readonly dx: number }[];
  readonly body: Body;
  readonly start: number;
}

/**
 * For a letter that no neighbour is near on its own height: under an arm, or beside a stem that stands back. A mark may touch
 * the arm; else a post hangs from the arm; else it stands on a bar.
 */
function reachFor({ left, body, start }: Reach, profile: Profile, measures: Measures): Join {
  const { xHeight, web } = measures;
  const standing = left.flatMap(({ body: { rows, markRows }, dx }) => [
    { rows, dx },
    { rows: markRows, dx },
  ]);
  const byMark = meet(profileOf(standing, { rows: body.markRows, dx: start }), measures);
  if (byMark.joint === 'met') return byMark;
  const shift = Math.max(0, Math.min(touching(profile) - 2 * shares.stemGap * xHeight, shares.reach * xHeight));
  const columns = Math.round((start - shift) / measures.pitch);
  let best: Post | undefined;
  for (const { body: other, dx } of left) {
    const own = movedRuns(body.columns, columns, 0);
    const theirs = movedRuns(other.columns, Math.round(dx / measures.pitch), 0);
    const edge = (own.first + 1) * measures.pitch + web;
    for (const post of [bestPost(theirs, own, web, edge), bestPost(own, theirs, web, edge)]) {
      if (post && post.gap >= 0 && (!best || post.cost < best.cost)) best = post;
    }
  }
  if (best && best.top - best.bottom < shares.reach * xHeight + web) return { shift, joint: best };
  return { shift, joint: Number.isFinite(touching(profile)) ? 'bar' : 'none' };
}

export function postBar({ x, bottom, top }: Post, { web }: Measures): Region {
  return bar(x - web / 2, bottom - web / 4, x + web / 2, top + web / 4);
}

/** A bar as high as `web` along the baseline, from what stands on it on the left to what stands on it on the right. */
function footBar(profile: Profile, shift: number, { letter }: Body, { web, pitch }: Measures): Region[] {
  const from = Math.round(letter.baseline / pitch);
  const rows = Array.from({ length: Math.max(1, Math.round(web / pitch)) }, (_, k) => from + k - profile.first);
  const facing = rows.filter((row) => Number.isFinite(profile.gaps[row] ?? Infinity));
  if (facing.length === 0) return [];
  const left = Math.min(...facing.map((row) => profile.edges[row]!));
  const right = Math.max(...facing.map((row) => profile.edges[row]! + profile.gaps[row]!)) - shift;
  return [bar(left - web / 4, letter.baseline, right + web / 4, letter.baseline + web)];
}

