/**
 * Hyphens within a word: a hyphen is itself the bar that joins the letters beside it. Slid like a letter, it would lie in the bay of an e or under the
 * stroke that leads out of an a, and be read as part of that.
 */

import type { Point, Region } from '../../geometry/types.ts';
import { boundsOf } from '../../geometry/measure.ts';
import { footBar } from './bars.ts';
import type { LetterBody } from './bodies.ts';
import type { Measures } from './measures.ts';
import { keptApart, markRoom } from './meet.ts';
import type { PlacedLetter } from './meet.ts';
import { ease } from './post.ts';
import { profileOf, touching } from './profile.ts';
import { shares } from './shares.ts';

const hyphen = /^[-\u2010\u2011\u2013\u2014]$/u;

/** The longest bar that is still a hyphen, in x-heights; beside a letter without ink at its height it would be one. */
const longest = 1.7;

/** Whether it stands between two letters without a space. */
export function isHyphenBetween(bodies: readonly LetterBody[], index: number): boolean {
  const [before, body, next] = [bodies[index - 1], bodies[index], bodies[index + 1]];
  return !!body && hyphen.test(body.text) && !!before && !body.afterGap && !!next && !next.afterGap;
}

export interface HyphenPlace {
  /** Distance that the letter behind it moves closer, in mm. */
  readonly shift: number;
  /** The new origin of the hyphen. */
  readonly at: Point;
  /** What draws it from letter to letter, as grown. */
  readonly held: Region;
}

/**
 * The places of a hyphen and of the letter behind it, so far from the letter before that the hyphen is seen; `undefined` where one of them has no
 * ink at its height. `before`: the letters before it, the nearest first.
 */
export function besideHyphen(
  before: readonly PlacedLetter[],
  sign: LetterBody,
  next: PlacedLetter,
  measures: Measures,
): HyphenPlace | undefined {
  const { web, xHeight } = measures;
  const box = boundsOf(sign.base)!;
  const left = before.map(({ body: { rows }, dx }) => ({ rows, dx }));
  const profile = profileOf(left, { rows: next.body.rows, dx: next.dx });
  const apart = keptApart(profile, shares.hyphenGap, measures);
  const own = { ...measures, web: Math.max(web, (box.maxY - box.minY) / ease) };
  const level = (box.minY + box.maxY - ease * own.web) / 2;
  const shift = Math.min(apart.shift, markRoom(before, next.body, next.dx, measures));
  const bar = Number.isFinite(touching(profile)) ? footBar(profile, shift, own, level) : undefined;
  if (!bar || bar.length <= 0 || bar.length > longest * xHeight) return undefined;
  const held = boundsOf(bar.region)!;
  const x = (held.minX + held.maxX) / 2 - (box.minX + box.maxX) / 2;
  return { shift, at: { x, y: 0 }, held: bar.region };
}
