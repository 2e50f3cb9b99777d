/** What holds a letter that no neighbour is near on its own height: under an arm, or beside a stem that stands back. */

import type { Body } from './bodies.ts';
import { footBar } from './bars.ts';
import type { Measures } from './measures.ts';
import { meet } from './meet.ts';
import type { Join } from './meet.ts';
import { bestPost } from './post.ts';
import type { Post } from './post.ts';
import { profileOf, touching } from './profile.ts';
import type { Profile } from './profile.ts';
import { movedRuns } from './runs.ts';
import { shares } from './shares.ts';

export interface Reach {
  readonly left: readonly { readonly body: Body; readonly dx: number }[];
  readonly body: Body;
  readonly start: number;
}

/** A mark may touch the arm; else a post hangs from the arm; else it stands on a bar, or, where that would be long, comes nearer. */
export function reachFor({ left, body, start }: Reach, profile: Profile, measures: Measures): Join {
  const { xHeight, web } = measures;
  const limits = (share: number) => ({ oneLetter: false, room: share * xHeight });
  const standing = left.flatMap(({ body: { rows, markRows }, dx }) => [
    { rows, dx },
    { rows: markRows, dx },
  ]);
  const byMark = meet(profileOf(standing, { rows: body.markRows, dx: start }), measures, limits(shares.reach));
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
  if (best && best.gap < shares.post * xHeight) return { shift, joint: best };
  const foot = footBar(profile, shift, body.letter.baseline, measures);
  if (foot && foot.length <= shares.longBar * xHeight) return { shift, joint: 'bar' };
  const nearer = meet(profile, measures, limits(shares.farReach));
  if (nearer.joint !== 'none') return nearer;
  return { shift, joint: foot ? 'bar' : 'none' };
}
