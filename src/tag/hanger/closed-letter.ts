/**
 * Letters that a ring at an end of their line makes others of without being as large as they are: it closes the bay of a digit (a 7 is a 3, a 2 an 8)
 * and the room under a Hebrew roof, is an “o” on the hook of a J and, in Arabic, the loop of a و or a ف. The limits are our own judgement, by eye.
 */

import type { Bounds, Point } from '../../geometry/types.ts';
import type { LetterLine } from './letter-lines.ts';
import { isOverFoot, isUnderArm } from './stems.ts';

export type ClosedLetter = 'digit' | 'hook' | 'roof' | 'loop of a waw';

/** In shares of the letter's height: how high the hook of a J is, and how far below the line it may end. */
const hook = { high: 0.55, below: 0.1 } as const;

/** A ring whose lower edge is above this share of the height of an Arabic line is over the letters, and no part of one. */
const overArabic = 0.6;

const hebrew = /^[\u05d0-\u05ea]/u;

/** `factor`: by which the letters have been scaled since they were made, all else with them. */
export function closesLetter(
  { letters, ends, baseline }: Pick<LetterLine, 'letters' | 'ends' | 'baseline'>,
  at: Point,
  radius: number,
  factor: number,
): ClosedLetter[] {
  const found: ClosedLetter[] = [];
  const isBeside = (box: Bounds): boolean => isOn(box, at, radius, factor);
  const [first, last] = [letters[0]!, letters.at(-1)!];
  for (const [letter, end] of [
    [first, ends[0]],
    [last, ends[1]],
  ] as const) {
    if (!isBeside(letter.box)) continue;
    const isRoofed = isUnderArm(end, at);
    if (/^\d$/u.test(letter.text) && (isRoofed || isOverFoot(end, at))) found.push('digit');
    if (isRoofed && hebrew.test(letter.text)) found.push('roof');
  }
  if (first.text.startsWith('J') && isBeside(first.box) && isOnHook(first.box, baseline / factor, at, factor))
    found.push('hook');
  const isArabic = letters.some(({ text, box }) => /\p{Script=Arabic}/u.test(text) && isBeside(box));
  const top = factor * Math.max(...letters.map(({ box }) => box.maxY));
  if (isArabic && at.y - radius < baseline + overArabic * (top - baseline)) found.push('loop of a waw');
  return found;
}

function isOn({ minX, maxX, minY, maxY }: Bounds, { x, y }: Point, radius: number, factor: number): boolean {
  const isWithin = (from: number, to: number, along: number): boolean =>
    along + radius > factor * from && along - radius < factor * to;
  return isWithin(minX, maxX, x) && isWithin(minY, maxY, y);
}

/** To the left of the stem, low; a J that goes below the line has its hook there. */
function isOnHook({ minX, maxX, minY, maxY }: Bounds, baseline: number, { x, y }: Point, factor: number): boolean {
  const high = maxY - minY;
  if (minY < baseline - hook.below * high) return false;
  return x / factor < (minX + maxX) / 2 && y / factor < minY + hook.high * high;
}
