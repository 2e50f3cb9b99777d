/**
 * What a ring makes of the letter on whose head it stands: the dot of an “i” on the end of a bare stem, as of an l, one letter of two whose heads it
 * joins, and an Å or an Ů.
 */

import type { Bounds, Point, Region } from '../../geometry/types.ts';
import { bareStemsOf } from './bare-stems.ts';
import type { BareStem } from './bare-stems.ts';
import type { LettersInLine } from './crook.ts';
import { cellsOf } from './letter-cells.ts';

export type OnHead = 'dotted stem' | 'heads' | 'ringed';

/** Letters that have a ring in some language: an Å, an Ů. */
const ringed = /^[AUauΑ]$/u;
const isPointed = /^[AΑ]$/u;

/**
 * The head of such a letter is in the middle of its width, by this share of it to each side; a ring reaches so far above it, in heights. The apex of an A
 * is its uppermost share, and is met from so many of its widths aside.
 */
const ringedHead = { share: 0.35, above: 0.6, top: 0.1, aside: 0.1 } as const;

/**
 * A stem is bare if it is so long, in heights of its letter: an l and the right one of an N are, above the bowl of an h it is not. A letter with a foot as wide
 * as this share of its height beside a stem, and nothing else, is an L and stays one where it is the first, one
 * with a bar that reaches so many of its widths to either side a T.
 */
const bare = { long: 0.55, foot: 0.3, bar: 1.5 } as const;

/** Above its bar a t is bare: with a ring on its head it is an “i” with a stroke through it. */
const shortHead = /^[tτ]$/u;

/** At the outer corner of the first letter, or of the last, it is no dot: off the line of the stem by so many of its radii, of a letter so many stems wide. */
const corner = { aside: 0.3, wide: 2.5 } as const;

/** A year or a number is read as one all the same (“20i9”). */
const isDigit = /^\p{Nd}$/u;

/** A ring is on the end of a stem if its middle is no further aside than so many of its radii, no deeper and no higher. */
const onEnd = { aside: 0.3, below: 0.25, above: 1.5 } as const;

/** The lean of a stem is that of so many of its upper rows. */
const leanRows = 8;

/** It joins two heads if it reaches the uppermost share of both letters, one on either side of its middle by so many of its radii. */
const joins = { share: 0.2, within: 1.15, aside: 0.3 } as const;

/** All in the scale of the letters. @param hole The radius of the hole. */
export function onHeads(
  letters: LettersInLine,
  at: Point,
  radius: number,
  hole: number,
  isLow: (top: number) => boolean,
): OnHead[] {
  const found = new Set<OnHead>();
  const sides = { left: new Set<number>(), right: new Set<number>() };
  letters.forEach(({ text, region, box }, index) => {
    const { minX, minY, maxX, maxY } = box;
    if (at.x + 2 * radius < minX || at.x - 2 * radius > maxX || at.y + radius < minY || at.y - 3 * radius > maxY)
      return;
    const [wide, high] = [maxX - minX, maxY - minY];
    const isOverHead =
      Math.abs(at.x - (minX + maxX) / 2) <= ringedHead.share * wide ||
      (isPointed.test(text) && isOverTop(region, box, at));
    if (ringed.test(text) && isOverHead && at.y > maxY - radius && at.y - hole < maxY + ringedHead.above * high)
      found.add('ringed');
    if (isLow(maxY)) return;
    for (const side of sidesOf(region, box, at, radius)) sides[side].add(index);
    for (const stem of bareStemsOf(region)) {
      const { head, middles, width } = stem;
      if (!head) continue;
      const { top } = head;
      const middle = axisAt(stem, top);
      const isBarred = Math.min(middle - head.from, head.to - middle) > bare.bar * width;
      const isLong = top - middles[0]!.y > bare.long * high || shortHead.test(text);
      const isBare = isLong && !isBarred && !(index === 0 && isFooted(stem, box));
      const lean = axisAt(stem, Math.max(at.y, top)) - middle;
      const reach = onEnd.aside * radius;
      const isOver = at.x > head.from + lean - reach && at.x < head.to + lean + reach;
      const isOnEnd = isOver && at.y > top - onEnd.below * radius && at.y < top + onEnd.above * radius;
      const aside = corner.aside * radius;
      const isAtCorner =
        wide > corner.wide * width &&
        ((index === 0 && at.x < middle + lean - aside) ||
          (index === letters.length - 1 && at.x > middle + lean + aside));
      if (isBare && isOnEnd && !isAtCorner && !isDigit.test(text)) found.add('dotted stem');
    }
  });
  if ([...sides.left].some((one) => [...sides.right].some((other) => one < other))) found.add('heads');
  return [...found];
}

/** Whether it stands over the apex of a letter, which is far to the right in an A that leans. */
function isOverTop(region: Region, { minX, minY, maxX, maxY }: Bounds, { x }: Point): boolean {
  const { ink } = cellsOf(region);
  const from = maxY - ringedHead.top * (maxY - minY);
  const reach = ringedHead.aside * (maxX - minX);
  for (let i = 0; i < ink.length; i += 2) if (ink[i + 1]! > from && Math.abs(ink[i]! - x) < reach) return true;
  return false;
}

/** On which sides of its middle a ring reaches the head of a letter. */
function sidesOf(region: Region, { minY, maxY }: Bounds, { x, y }: Point, radius: number): Set<'left' | 'right'> {
  const sides = new Set<'left' | 'right'>();
  const { ink } = cellsOf(region);
  const from = maxY - joins.share * (maxY - minY);
  for (let i = 0; i < ink.length; i += 2) {
    const [along, up] = [ink[i]! - x, ink[i + 1]! - y];
    if (ink[i + 1]! < from || Math.abs(along) < joins.aside * radius || Math.hypot(along, up) > joins.within * radius)
      continue;
    sides.add(along < 0 ? 'left' : 'right');
  }
  return sides;
}

/** Where the line of a stem is at a height above it. */
function axisAt({ middles }: BareStem, y: number): number {
  const last = middles.at(-1)!;
  const before = middles[Math.max(0, middles.length - 1 - leanRows)]!;
  return last.x + ((last.x - before.x) / (last.y - before.y)) * (y - last.y);
}

/** Whether the stem is the left side of its letter, and all else of that is a foot to the right of it. */
function isFooted({ middles, width, isAlone }: BareStem, { minX, maxX, minY, maxY }: Bounds): boolean {
  const { x } = middles[0]!;
  const [left, right] = [x - width / 2 - minX, maxX - x - width / 2];
  return isAlone && right - left > bare.foot * (maxY - minY);
}
