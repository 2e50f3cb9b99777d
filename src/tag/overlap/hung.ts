/** Apostrophes and other signs that hang high and that nothing before them reaches: they wait for the next letter. */

import { union } from '../../geometry/clipper.ts';
import type { Point } from '../../geometry/types.ts';
import { movedRegion } from './bodies.ts';
import type { Body } from './bodies.ts';
import { placeMarks } from './marks.ts';
import type { Measures } from './measures.ts';
import { keptApart } from './meet.ts';
import type { Join } from './meet.ts';
import type { Post } from './post.ts';
import { profileOf, touching } from './profile.ts';
import type { StandingLetter } from './profile.ts';
import { shares } from './shares.ts';

/** The letter after a waiting sign: it meets the sign if it is as tall, else the two letters leave room for it. */
export function roundSign(
  bodies: readonly Body[],
  stands: readonly Point[],
  waiting: number,
  standing: StandingLetter,
  measures: Measures,
): Join {
  const sign = bodies[waiting]!;
  const before = bodies[waiting - 1]!;
  const tall = touching(profileOf([{ rows: sign.rows, dx: stands[waiting]!.x }], standing));
  const low = profileOf([{ rows: before.rows, dx: stands[waiting - 1]!.x }], standing);
  const room = keptApart(low, shares.signGap, measures);
  if (!(tall < shares.highReach * measures.xHeight)) return room;
  return { shift: Math.max(0, Math.min(tall, room.shift)), joint: room.joint };
}

export interface Hung {
  readonly stand: Point;
  readonly post?: Post;
}

/** Where a sign goes that has waited: to the letter behind it where that is as tall, else down between the two. */
export function hang(bodies: readonly Body[], stands: readonly Point[], index: number, measures: Measures): Hung {
  const { xHeight, web } = measures;
  const sign = bodies[index]!;
  const at = stands[index]!;
  const next = bodies[index + 1];
  const gap = next
    ? touching(profileOf([{ rows: sign.rows, dx: at.x }], { rows: next.rows, dx: stands[index + 1]!.x }))
    : Infinity;
  if (gap < shares.highReach * xHeight) return { stand: { x: at.x + gap + web / 8, y: 0 } };
  const neighbours = [index - 1, index + 1].flatMap((k) =>
    bodies[k] ? [movedRegion(bodies[k].base, stands[k]!)] : [],
  );
  const [placed] = placeMarks(union(neighbours), [movedRegion(sign.base, at)], measures);
  return { stand: { x: at.x + placed!.move.x, y: placed!.move.y }, ...(placed!.post ? { post: placed!.post } : {}) };
}
