/** Apostrophes and other high signs that nothing before them reaches: they wait for the next letter. */

import { union } from '../../geometry/clipper.ts';
import type { Point } from '../../geometry/types.ts';
import { movedRegion } from './bodies.ts';
import type { LetterBody } from './bodies.ts';
import { gapTo, middleX, placeMarks } from './marks.ts';
import type { Measures } from './measures.ts';
import { keptApart } from './meet.ts';
import type { Join, PlacedLetter } from './meet.ts';
import { bestPost, clearance } from './post.ts';
import type { Post } from './post.ts';
import { profileOf, touching } from './profile.ts';
import type { ShiftedRows } from './profile.ts';
import { columnsOf, lineAt, movedRuns } from './runs.ts';
import { shares } from './shares.ts';

/**
 * A letter is as tall as a sign if it has ink on this share of the sign's rows; one that only reaches up to the sign
 * would merge with it.
 */
const tallShare = 0.6;

export function isAsTall(letter: LetterBody, sign: LetterBody): boolean {
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

export interface PlacedSign {
  readonly position: Point;
  readonly post?: Post;
}

/** Limits, in x-heights, for moving a sign sideways, further at the end of a word, with the step to try, back to the letter before it, and for raising or lowering it. */
const reach = { aside: 0.45, closing: 1.6, step: 0.033, back: 0.6, raised: 0.6, lowered: 0.35 } as const;

/** How deep the foot of a sign is sunk into what it stands on, in x-heights: on a post it is read as an accent, or as a letter. */
const sunk = 0.06;

/** Costs per mm of moving a sign sideways, of raising or lowering it, and of being too near its neighbours; in x-heights, of standing on a stem. */
const cost = { aside: 0.2, raised: 0.5, crowded: 4, onStem: 0.4 } as const;

/** In x-heights: a stem is longer than this, and a small letter without an ascender no higher. */
const stemShare = 0.5;
const smallTop = 1.2;

/** Place of a sign that has waited: at the next letter if that is as tall, otherwise on a post above one of the two. */
export function placeSign(
  bodies: readonly LetterBody[],
  positions: readonly Point[],
  index: number,
  measures: Measures,
): PlacedSign {
  const { xHeight, web, pitch } = measures;
  const sign = bodies[index]!;
  const at = positions[index]!;
  const next = bodies[index + 1];
  const gapFrom = (left: LetterBody, dx: number, right: LetterBody, to: number): number =>
    touching(profileOf([{ rows: left.rows, dx }], { rows: right.rows, dx: to }));
  if (next && isAsTall(next, sign)) {
    const gap = gapFrom(sign, at.x, next, positions[index + 1]!.x);
    if (gap < shares.highReach * xHeight) return { position: { x: at.x + gap + web / 8, y: 0 } };
    // On the swash of a capital further away it would be an i.
    const before = bodies[index - 1];
    const back = before && isAsTall(before, sign) ? gapFrom(before, positions[index - 1]!.x, sign, at.x) : Infinity;
    if (back < reach.back * xHeight) return { position: { x: at.x - back - web / 8, y: 0 } };
  }
  const near = [index - 1, index + 1].filter((k) => bodies[k]);
  const neighbours = union(near.map((k) => movedRegion(bodies[k]!.base, positions[k]!)));
  const beside = near.flatMap((k) => {
    const { rows, columns, marks, markRows, markColumns } = bodies[k]!;
    const base = { rows, columns, at: positions[k]! };
    return marks.length > 0 ? [base, { rows: markRows, columns: markColumns, at: positions[k]! }] : [base];
  });
  const below = columnsOf(neighbours, pitch);
  const middle = middleX(sign.base);
  /** Whether a column of ink goes down there, from the top of a small letter: on the one of an “a” a sign makes a “d”. */
  const isOnStem = (x: number): boolean => {
    const [from, to] = lineAt(below, Math.round(x / pitch - 0.5)).slice(-2);
    return from !== undefined && to! - from > stemShare * xHeight && to! < smallTop * xHeight;
  };
  const placeAt = (x: number): (PlacedSign & { readonly cost: number }) | undefined => {
    const across = Math.round(x / pitch);
    const clear = clearance(movedRuns(sign.columns, across, 0), below);
    const y = Math.max(-sunk * xHeight - clear, -reach.lowered * xHeight);
    if (!Number.isFinite(clear) || y > reach.raised * xHeight) return undefined;
    const post = bestPost(movedRuns(sign.columns, across, y), below, web, middle + x);
    if (!post) return undefined;
    const lacks = Math.max(0, shares.markGap * xHeight - gapTo(beside, sign, { x, y }));
    const whole = cost.aside * Math.abs(x - at.x) + cost.raised * Math.abs(y) + cost.crowded * lacks + post.cost;
    return { position: { x, y }, post, cost: whole + (isOnStem(post.x) ? cost.onStem * xHeight : 0) };
  };
  const aside = next && !next.afterGap ? reach.aside : reach.closing;
  const steps = Math.ceil(aside / reach.step);
  const all = Array.from({ length: 2 * steps + 1 }, (_, k) => ((k - steps) * aside * xHeight) / steps);
  // Over the last letter of its word, but no further back than its middle: there it would be read in front of it.
  const last = bodies[index - 1];
  const least =
    last && aside === reach.closing ? positions[index - 1]!.x + middleX(last.base) - (at.x + middle) : -Infinity;
  const shifts = all.filter((shift) => shift >= Math.min(0, least));
  const [best] = shifts.flatMap((shift) => placeAt(at.x + shift) ?? []).toSorted((a, b) => a.cost - b.cost);
  if (best) return { position: best.position, ...(best.post ? { post: best.post } : {}) };
  const [placed] = placeMarks(neighbours, [movedRegion(sign.base, at)], measures);
  return { position: { x: at.x + placed!.move.x, y: placed!.move.y }, ...(placed!.post ? { post: placed!.post } : {}) };
}
