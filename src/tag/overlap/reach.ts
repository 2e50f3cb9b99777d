/**
 * Finds support for a letter without a neighbour at its own height: under an arm, or beside a stem that stands back.
 */

import { armBar, heldByArm } from './bars.ts';
import type { LetterBody } from './bodies.ts';
import { isArmOverFoot, middleArm } from './arms.ts';
import { footJoint } from './foot-joint.ts';
import type { FootNeighbours } from './foot-joint.ts';
import type { Measures } from './measures.ts';
import { markRoom, meet } from './meet.ts';
import type { Join, PlacedLetter } from './meet.ts';
import { bestPost } from './post.ts';
import type { Post } from './post.ts';
import { contactAt, profileOf, touching } from './profile.ts';
import { movedRuns } from './runs.ts';
import { shares } from './shares.ts';

/** A meeting above this, in x-heights, leaves the feet apart. */
const highMeeting = 0.6;

export interface SlideReach {
  readonly left: readonly PlacedLetter[];
  readonly body: LetterBody;
  readonly start: number;
  /** Largest distance that it may move closer, in mm. */
  readonly reach: number;
  readonly sides: FootNeighbours;
}

/** In x-heights: a post that begins below this gives way to a joint at the foot that is no longer than the second. Our own judgement. */
const lowPost = { below: 0.25, joint: 0.4 } as const;

/** In x-heights: a post that costs more than its gap by this protrudes, and a move closer is better. Our own judgement. */
const postSeat = 0.22;

/**
 * A post from the arm if that is short; otherwise a bar to stand on or, if the bar would be long, a move closer. If its
 * marks leave no room for that, one of them may touch the arm.
 */
export function reachFor({ left, body, start, reach, sides }: SlideReach, measures: Measures): Join {
  const { xHeight } = measures;
  const { profile } = sides;
  const standing = left.map(({ body: { rows }, dx }) => ({ rows, dx }));
  const room = markRoom(left, body, start, measures);
  const limits = (share: number) => ({ oneLetter: false, room: Math.min(share * xHeight, room) });
  const near = touching(profile) - 2 * shares.stemGap * xHeight;
  const shift = Math.max(0, Math.min(near, reach, room));
  const best = postAt(left, body, start - shift, measures);
  const foot = footJoint(sides, shift, measures);
  const isF = middleArm(sides.beside.left, xHeight) !== undefined;
  const closest = isF ? Math.min(touching(profile) - shares.stemGap * xHeight, room) : shift;
  const onArm = [shift, Math.max(shift, closest)].find((each) => armBar(profile, each, measures, sides.beside));
  if (onArm !== undefined) {
    // Two serifs at the top are met without a bar.
    const atTop = sides.beside.isDotted ? undefined : meet(profile, measures, limits(shares.farReach));
    const contact = atTop?.joint === 'met' ? contactAt(profile, atTop.shift) : undefined;
    return contact && contact.from * measures.pitch > highMeeting * xHeight ? atTop! : { shift: onArm, joint: 'bar' };
  }
  if (foot && !foot.isLong && heldByArm(sides.beside, xHeight) !== undefined) return { shift, joint: 'bar' };
  if (best && best.gap < shares.post * xHeight) {
    const isSeated = best.cost - best.gap < postSeat * xHeight;
    const isBetter = foot && best.bottom < lowPost.below * xHeight && foot.length < lowPost.joint * xHeight;
    if (isSeated && !isBetter) return { shift, joint: best };
    const beside = isSeated ? undefined : meet(profile, measures, limits(shares.highReach));
    if (beside?.joint === 'met') return beside;
  }
  const isArmed = isArmOverFoot(left[0]!.body.rows, xHeight);
  if (foot && !isArmed && !foot.isLong) return { shift, joint: 'bar' };
  const touchedByMark = profileOf(standing, { rows: body.markRows, dx: start });
  const markReach = Math.max(reach, shares.highReach * xHeight);
  const byMark = meet(touchedByMark, measures, { oneLetter: false, room: markReach });
  if (byMark.joint === 'met') return { ...byMark, byMark: true };
  const nearer = meet(profile, measures, limits(shares.farReach));
  if (nearer.joint !== 'none') return nearer;
  const most = Math.min(near, room, bowl.most * xHeight);
  const below = belowBowl({ left, body, start }, { from: shift, to: most }, measures);
  return below ?? { shift, joint: foot && !isArmed ? 'bar' : 'none' };
}

/** In x-heights: how far a letter moves in below a bowl at most, and in which steps. */
const bowl = { most: 0.9, step: 0.05 } as const;

/** A move closer until a short post reaches down from the bowl above: a long bar at the feet would close that from below, and make a “B” of a P. */
function belowBowl(
  { left, body, start }: Pick<SlideReach, 'left' | 'body' | 'start'>,
  { from, to }: { readonly from: number; readonly to: number },
  measures: Measures,
): Join | undefined {
  const { xHeight } = measures;
  for (let shift = from; shift <= to; shift += bowl.step * xHeight) {
    const post = postAt(left, body, start - shift, measures);
    if (post && post.gap < shares.post * xHeight && post.cost - post.gap < postSeat * xHeight)
      return { shift, joint: post };
  }
  return undefined;
}

/** The best post between a letter at `x` and any before it. */
function postAt(
  left: readonly PlacedLetter[],
  body: LetterBody,
  x: number,
  { pitch, web }: Measures,
): Post | undefined {
  let best: Post | undefined;
  for (const { body: other, dx } of left) {
    const own = movedRuns(body.columns, Math.round(x / pitch), 0);
    const theirs = movedRuns(other.columns, Math.round(dx / pitch), 0);
    const edge = (own.first + 1) * pitch + web;
    for (const post of [bestPost(theirs, own, web, edge), bestPost(own, theirs, web, edge)]) {
      if (post && post.gap >= 0 && (!best || post.cost < best.cost)) best = post;
    }
  }
  return best;
}
