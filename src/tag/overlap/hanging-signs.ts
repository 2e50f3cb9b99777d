/** Apostrophes and other high signs that nothing before them reaches: they wait for the next letter. */

import { union } from '../../geometry/clipper.ts';
import { boundsOf } from '../../geometry/measure.ts';
import type { Point } from '../../geometry/types.ts';
import { movedRegion } from './bodies.ts';
import type { LetterBody } from './bodies.ts';
import { placeMarks } from './marks.ts';
import type { PlacedMark } from './marks.ts';
import type { Measures } from './measures.ts';
import { keptApart } from './meet.ts';
import type { Join, PlacedLetter } from './meet.ts';
import { profileOf, touching } from './profile.ts';
import type { ShiftedRows } from './profile.ts';
import { lineAt } from './runs.ts';
import { shares } from './shares.ts';
import { bestSignPlace } from './sign-places.ts';
import type { PlacedSign } from './sign-places.ts';

/**
 * A letter is as tall as a sign if it has ink on this share of the sign's rows; one that only reaches up to the sign
 * would merge with it.
 */
const tallShare = 0.6;

export function isAsTall(letter: Pick<LetterBody, 'rows'>, sign: Pick<LetterBody, 'rows'>): boolean {
  const { first, lines } = sign.rows;
  const shared = lines.filter((_, index) => lineAt(letter.rows, first + index).length > 0);
  return shared.length >= tallShare * lines.length;
}

/** The letter after a waiting sign: it meets the sign if it is as tall, otherwise the two letters leave room for it. */
export function roundSign(
  bodies: readonly LetterBody[],
  positions: readonly Point[],
  waiting: number,
  next: PlacedLetter,
  measures: Measures,
): Join {
  const { xHeight } = measures;
  const sign = bodies[waiting]!;
  const before = bodies[waiting - 1]!;
  const standing: ShiftedRows = { rows: next.body.rows, dx: next.dx };
  const room = touching(profileOf([{ rows: sign.rows, dx: positions[waiting]!.x }], standing));
  const low = profileOf([{ rows: before.rows, dx: positions[waiting - 1]!.x }], standing);
  const apart = keptApart(low, shares.signGap, measures);
  if (!(room < shares.highReach * xHeight && isAsTall(next.body, sign))) return apart;
  return { shift: Math.max(0, Math.min(room, apart.shift)), joint: apart.joint };
}

/** The letter after a sign that stands beside a tall one: it is not below the sign, and keeps off the letter before. */
export function pastSign(
  bodies: readonly LetterBody[],
  positions: readonly Point[],
  index: number,
  next: PlacedLetter,
  measures: Measures,
): Join {
  const [before, sign] = [bodies[index - 1]!, bodies[index]!];
  const standing: ShiftedRows = { rows: next.body.rows, dx: next.dx };
  const apart = keptApart(
    profileOf([{ rows: before.rows, dx: positions[index - 1]!.x }], standing),
    shares.signGap,
    measures,
  );
  const { x } = positions[index]!;
  const clear = boundsOf(next.body.base)!.minX + next.dx - (boundsOf(sign.base)!.maxX + x);
  return {
    shift: Math.min(apart.shift, clear),
    joint: apart.joint === 'met' && clear < apart.shift ? 'bar' : apart.joint,
  };
}

/** In x-heights: how far a sign goes back to a tall letter before it. */
const backReach = 0.6;

/** Place of a sign that has waited: at the next letter if that is as tall, otherwise where it is read best. */
export function placeSign(
  bodies: readonly LetterBody[],
  positions: readonly Point[],
  index: number,
  measures: Measures,
): PlacedSign {
  const { xHeight, web } = measures;
  const sign = bodies[index]!;
  const at = positions[index]!;
  const next = bodies[index + 1];
  const gapFrom = (left: LetterBody, dx: number, right: LetterBody, to: number): number =>
    touching(profileOf([{ rows: left.rows, dx }], { rows: right.rows, dx: to }));
  if (next && !next.afterGap && isAsTall(next, sign)) {
    const gap = gapFrom(sign, at.x, next, positions[index + 1]!.x);
    if (gap < shares.highReach * xHeight) return { position: { x: at.x + gap + web / 8, y: 0 } };
    // On the swash of a capital further away it would be an i.
    const before = bodies[index - 1];
    const back = before && isAsTall(before, sign) ? gapFrom(before, positions[index - 1]!.x, sign, at.x) : Infinity;
    if (back < backReach * xHeight) return { position: { x: at.x - back - web / 8, y: 0 } };
  }
  const [before, after] = [index - 1, index + 1].map((k) =>
    bodies[k] ? { ...bodies[k], at: positions[k]! } : undefined,
  );
  const isClosing = !next || next.afterGap;
  const best = bestSignPlace({ sign, at, before, after, isClosing }, measures);
  if (best) return best;
  const neighbours = union([before, after].flatMap((each) => (each ? [movedRegion(each.base, each.at)] : [])));
  const [{ move, held }] = placeMarks(neighbours, [movedRegion(sign.base, at)], measures) as [PlacedMark];
  return { position: { x: at.x + move.x, y: move.y }, ...(held ? { held } : {}) };
}
