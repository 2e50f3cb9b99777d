/** The letters of a line slid together one after the other, and what joins those that cannot meet. */

import { union } from '../../geometry/clipper.ts';
import type { Point, Region } from '../../geometry/types.ts';
import { movedRegion } from './bodies.ts';
import type { Body } from './bodies.ts';
import { placeMarks } from './marks.ts';
import type { Measures } from './measures.ts';
import { bar, bestPost, ease } from './post.ts';
import type { Post } from './post.ts';
import { contactAt, profileOf, sparesStrokes, touching } from './profile.ts';
import type { Contact, Profile, Standing } from './profile.ts';
import { movedRuns } from './runs.ts';

/** All shares are of the x-height; by eye and by an independent reader of letters, on a hundred names in six faces. */
const shares = {
  /** The most a letter comes nearer for a joint, beside what it laps. */
  reach: 0.5,
  /** A joint longer than this makes one stroke of two stems. */
  stem: 0.5,
  /** What two stems keep between them instead. */
  stemGap: 0.12,
  /** What a mark keeps from the letter before. */
  markGap: 0.14,
  /** What two words keep between them. */
  wordGap: 0.3,
  /** What two letters keep between them below an apostrophe. */
  signGap: 0.2,
  /** The longest post between an arm and what is below it. */
  post: 0.3,
  /** Letters are tried at places so far apart. */
  step: 1 / 80,
} as const;

/** A joint gains nothing by lapping further for less than this share of the way. */
const worthwhile = 0.4;

/** How many letters back one can be touched: an arm may reach over several. */
const lookBack = 4;

export interface Slid {
  /** By how much each letter is moved. */
  readonly moves: readonly Point[];
  /** Bars and posts, as grown. */
  readonly joints: readonly Region[];
}

/** `bodies`: the letters of one line from left to right. */
export function slideLine(bodies: readonly Body[], measures: Measures): Slid {
  const moves: Point[] = [];
  const joints: Region[] = [];
  // A sign hung high that nothing before it reaches: it waits for the next letter.
  let waiting: number | undefined;
  bodies.forEach((body, index) => {
    if (index === 0) {
      moves.push({ x: 0, y: 0 });
      if (body.letter.hung) waiting = index;
      return;
    }
    const before = Array.from({ length: Math.min(index, lookBack) }, (_, k) => index - 1 - k);
    const left = before.map((k): Standing => ({ rows: bodies[k]!.rows, dx: moves[k]!.x }));
    const start = moves[index - 1]!.x;
    const profile = profileOf(left, { rows: body.rows, dx: start });
    let { shift, joint } = body.letter.afterGap
      ? keptApart(profile, shares.wordGap, measures)
      : waiting !== undefined && waiting > 0
        ? roundSign(bodies, moves, waiting, body, measures)
        : meet(profile, measures, {
            oneLetter: body.letter.index === bodies[index - 1]!.letter.index,
            room: markRoom(left, body, start, measures),
          });
    if (joint === 'none' && body.letter.hung) waiting = index;
    else if (joint === 'none' && body.letter.index !== bodies[index - 1]!.letter.index) {
      const along = { left: before.map((k) => ({ body: bodies[k]!, dx: moves[k]!.x })), body, start };
      ({ shift, joint } = reachFor(along, profile, measures));
    }
    moves.push({ x: start - shift, y: 0 });
    if (joint === 'bar') joints.push(...footBar(profile, shift, body, measures));
    else if (joint !== 'met' && joint !== 'none') joints.push(postBar(joint, measures));
    if (waiting !== undefined && (waiting < index || index === bodies.length - 1)) {
      const { move, post } = hang(bodies, moves, waiting, measures);
      moves[waiting] = move;
      if (post) joints.push(postBar(post, measures));
      waiting = undefined;
    }
  });
  return { moves, joints };
}

/** The letter after a waiting sign: it meets the sign if it is as tall, else the two letters leave room for it. */
function roundSign(
  bodies: readonly Body[],
  moves: readonly Point[],
  waiting: number,
  body: Body,
  measures: Measures,
): Join {
  const sign = bodies[waiting]!;
  const before = bodies[waiting - 1]!;
  const start = moves[waiting]!.x;
  const tall = touching(profileOf([{ rows: sign.rows, dx: start }], { rows: body.rows, dx: start }));
  const low = profileOf([{ rows: before.rows, dx: moves[waiting - 1]!.x }], { rows: body.rows, dx: start });
  const room = keptApart(low, shares.signGap, measures);
  if (!(tall < shares.reach * measures.xHeight)) return room;
  return { shift: Math.max(0, Math.min(tall, room.shift)), joint: room.joint };
}

interface Hung {
  readonly move: Point;
  readonly post?: Post;
}

/** Where a sign goes that has waited: to the letter behind it where that is as tall, else down between the two. */
function hang(bodies: readonly Body[], moves: readonly Point[], index: number, measures: Measures): Hung {
  const { xHeight, web } = measures;
  const sign = bodies[index]!;
  const at = moves[index]!;
  const next = bodies[index + 1];
  const gap = next ? touching(profileOf([{ rows: sign.rows, dx: at.x }], { rows: next.rows, dx: moves[index + 1]!.x })) : Infinity;
  if (gap < shares.reach * xHeight) return { move: { x: at.x + gap + web / 8, y: 0 } };
  const neighbours = [index - 1, index + 1].flatMap((k) => (bodies[k] ? [movedRegion(bodies[k].base, moves[k]!.x, 0)] : []));
  const [placed] = placeMarks(union(neighbours), [movedRegion(sign.base, at.x, 0)], measures);
  return { move: { x: at.x + placed!.move.x, y: placed!.move.y }, ...(placed!.post ? { post: placed!.post } : {}) };
}

interface Join {
  /** How far the letter comes nearer. */
  readonly shift: number;
  /** `met`: by itself. `none`: it has to be held otherwise. */
  readonly joint: 'met' | 'bar' | 'none' | Post;
}

/** A distance is kept, or what there is of it, and both stand on a common bar. */
function keptApart(profile: Profile, share: number, { xHeight }: Measures): Join {
  const gap = touching(profile);
  if (!Number.isFinite(gap)) return { shift: 0, joint: 'none' };
  return { shift: Math.max(0, gap - share * xHeight), joint: gap < 0 ? 'met' : 'bar' };
}

interface Limits {
  /** Parts of one letter may touch along their whole length. */
  readonly oneLetter: boolean;
  /** How far the letter may come before its marks are in the way. */
  readonly room: number;
}

/** How far a letter may come until a mark of it is too near to what is before it. */
function markRoom(left: readonly Standing[], body: Body, start: number, { xHeight }: Measures): number {
  if (body.marks.length === 0) return Infinity;
  return Math.max(0, touching(profileOf(left, { rows: body.markRows, dx: start })) - shares.markGap * xHeight);
}

function meet(profile: Profile, measures: Measures, { oneLetter, room }: Limits = { oneLetter: false, room: Infinity }): Join {
  const { xHeight, web, overlap } = measures;
  const gap = touching(profile);
  if (gap > Math.min(room, shares.reach * xHeight)) return { shift: 0, joint: 'none' };
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
  if (!oneLetter && gap > 0 && length > shares.stem * xHeight)
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
  if (best && best.gap < shares.post * xHeight) return { shift, joint: best };
  return { shift, joint: Number.isFinite(touching(profile)) ? 'bar' : 'none' };
}

export function postBar({ x, bottom, top }: Post, { web, grow }: Measures): Region {
  const half = (ease * web) / 2;
  // Growth rounds its ends.
  const sink = web / 4 + grow / 2;
  return bar(x - half, bottom - sink, x + half, top + sink);
}

/** A bar as high as `web` along the baseline, from what stands on it on the left to what stands on it on the right. */
function footBar(profile: Profile, shift: number, { letter }: Body, { web, pitch }: Measures): Region[] {
  const from = Math.round(letter.baseline / pitch);
  const rows = Array.from({ length: Math.max(1, Math.round(web / pitch)) }, (_, k) => from + k - profile.first);
  const facing = rows.filter((row) => Number.isFinite(profile.gaps[row] ?? Infinity));
  if (facing.length === 0) return [];
  const ends = facing.map((row) => profile.edges[row]!);
  const starts = facing.map((row) => profile.edges[row]! + profile.gaps[row]! - shift);
  // Into the hollow below a bowl, but not along a leg that leans away.
  const left = Math.max(Math.min(...ends), Math.max(...ends) - 2 * web);
  const right = Math.min(Math.max(...starts), Math.min(...starts) + 2 * web);
  return [bar(left - web / 4, letter.baseline, right + web / 4, letter.baseline + ease * web)];
}
