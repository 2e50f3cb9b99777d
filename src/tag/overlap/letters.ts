/** The letters of a text, each divided into the parts that stand on the line and their marks. */

import { boundsOf } from '../../geometry/measure.ts';
import { partsOf } from '../../geometry/parts.ts';
import type { Bounds, Region } from '../../geometry/types.ts';

/** The unit that is slid; in mm, from the baseline up. */
export interface LetterPart {
  /** A single solid part, or all of a sign. */
  readonly base: Region;
  /** Dots and accents that do not touch it, the nearest first. */
  readonly marks: readonly Region[];
  /** Whether the letter has an accent that is no dot, however short it is drawn: an acute, a caron. */
  readonly isAccented?: boolean;
  /** Whether it is as high as an accent but stands on nothing: an apostrophe, a quotation mark. */
  readonly isHanging: boolean;
}

/** Height above which a sign that stands on nothing begins, in x-heights. */
const hungFrom = 0.6;

/** In x-heights: a part that begins below the first and reaches above the second stands on the line itself. */
const baselineLimits = { below: 0.25, tall: 0.6 } as const;

/** Combining marks but for the dot above and the two dots. */
const otherAccent = /[\u0300-\u0306\u0309-\u036f]/u;

interface LetterRegion {
  readonly region: Region;
  readonly box: Bounds;
}

/**
 * The parts of a letter's ink, in visual order. Of several parts side by side (Ы) each comes by itself, and so do parts
 * that stand under each other's arms: the i of a ligature Ti, the leg of a K.
 */
export function letterParts(text: string, ink: Region, xHeight: number): LetterPart[] {
  const parts = partsOf(ink).map((region): LetterRegion => ({ region, box: boundsOf(region)! }));
  const [largest, ...others] = parts;
  if (!largest) return [];
  // The two halves of a quotation mark move as one.
  const lowest = Math.min(...parts.map(({ box }) => box.minY));
  if (lowest > hungFrom * xHeight && /^[\p{P}\p{S}]+$/u.test(text) && !/^\p{Pd}$/u.test(text))
    return [{ base: ink, marks: [], isHanging: true }];
  const bases = [largest];
  const marks: LetterRegion[] = [];
  for (const part of others) {
    const isBase =
      !isCaron(text, part.box, xHeight) && (isBeside(part.box, largest.box) || standsOnBaseline(part.box, xHeight));
    (isBase ? bases : marks).push(part);
  }
  const isAccented = otherAccent.test(text.normalize('NFD'));
  bases.sort((a, b) => middle(a.box) - middle(b.box));
  return bases.map(({ region, box }, place): LetterPart => {
    const own = marks.filter((mark) => nearestOf(bases, mark.box) === place);
    return {
      base: region,
      marks: own.sort((a, b) => verticalGap(a.box, box) - verticalGap(b.box, box)).map((mark) => mark.region),
      isAccented,
      isHanging: false,
    };
  });
}

/** Whether a part is level with the other over more than half of the lower one's height, and clear of it sideways. */
function isBeside(part: Bounds, base: Bounds): boolean {
  const level = Math.min(part.maxY, base.maxY) - Math.max(part.minY, base.minY);
  const lower = Math.min(part.maxY - part.minY, base.maxY - base.minY);
  const room = 0.2 * (part.maxX - part.minX);
  return level > lower / 2 && (part.minX > base.maxX - room || part.maxX < base.minX + room);
}

/** Whether it is the caron of a ď or an Ľ, which is beside the letter and not above it. */
function isCaron(text: string, { minY }: Bounds, xHeight: number): boolean {
  return minY > hungFrom * xHeight && text.normalize('NFD').includes('\u030c');
}

function standsOnBaseline({ minY, maxY }: Bounds, xHeight: number): boolean {
  return minY < baselineLimits.below * xHeight && maxY > baselineLimits.tall * xHeight;
}

function nearestOf(bases: readonly LetterRegion[], mark: Bounds): number {
  const gaps = bases.map(({ box }) => Math.abs(middle(box) - middle(mark)));
  return gaps.indexOf(Math.min(...gaps));
}

function verticalGap(a: Bounds, b: Bounds): number {
  return Math.max(a.minY - b.maxY, b.minY - a.maxY);
}

function middle({ minX, maxX }: Bounds): number {
  return (minX + maxX) / 2;
}
