/**
 * The lines of upright lettering that a ring is seen beside. Letters that are shapes of their own, side by side, are one line, as initials
 * are. The limits are our own judgement.
 */

import { boundsOf, widened } from '../../geometry/measure.ts';
import type { Bounds } from '../../geometry/types.ts';
import { hasSmallLetters as areSmall } from '../../spec/read/evenly.ts';
import type { Letter } from '../lettering/letters.ts';
import type { MadeShape } from '../made-shape.ts';
import type { LettersInLine } from './crook.ts';
import { isSeen } from './seen-letters.ts';
import { lineEnd } from './stems.ts';
import type { LineEnd } from './stems.ts';

/** A line of upright lettering, in mm. */
export interface LetterLine {
  readonly box: Bounds;
  readonly baseline: number;
  /** Of capitals, if there is nothing else. */
  readonly xHeight: number;
  /** The x of the middle of its first and of its last letter. */
  readonly first: number;
  readonly last: number;
  /** Whether it begins with a capital and continues in small letters: a small “o” in front of that makes no word. */
  readonly hasInitial: boolean;
  /** The ink of its first and of its last letter, each seen from its own end of the line. */
  readonly ends: readonly [LineEnd, LineEnd];
  readonly hasSmallLetters: boolean;
  /** As they were made, before `coverable.factor`. */
  readonly letters: LettersInLine;
  /** Whether another line stands below it. */
  readonly isOverLine: boolean;
  /** From the last letter of each word to the first letter of the next, both included. */
  readonly gaps: readonly Span[];
  /** Over which it has small letters that do not reach up: with a ring above them, they have an accent. */
  readonly low: readonly Span[];
}

/** A stretch along x. */
export interface Span {
  readonly from: number;
  readonly to: number;
}

/** A letter is low if it reaches no higher than this, in x-heights. */
const lowest = 1.2;

/**
 * Two shapes are on one line if they are level along this share of the lower one's height, overlap by no more than this share of the
 * narrower one's width and are no further apart than so many x-heights; from so many on they are two words.
 */
const beside = { level: 0.6, over: 0.5, apart: 1.2, word: 0.35 } as const;

/** What one shape has on a line. */
interface Run {
  readonly letters: readonly Letter[];
  readonly box: Bounds;
  readonly xHeight: number;
  readonly grow: number;
  /** Of its capitals, if it has nothing else; where it is unknown, they reach as high as the highest. */
  readonly top?: number | undefined;
  /** The number of its shape. */
  readonly of: number;
}

/** Of lettering that is not upright there are none. */
export function letterLines(shapes: readonly MadeShape[]): LetterLine[] {
  const lines = inLines(shapes.flatMap(runsOf)).map((runs) => ({
    line: letterLine(runs),
    of: new Set(runs.map((run) => run.of)),
  }));
  return lines.map(({ line, of }) => ({
    ...line,
    isOverLine: lines.some(
      (other) => other.line.baseline < line.baseline && [...other.of].some((each) => of.has(each)),
    ),
  }));
}

/** Where letters were put together with something else, as on a bar, those that are seen. */
function runsOf(shape: MadeShape, of: number): Run[] {
  const { band, lettering = [] } = shape;
  const seen = band ? lettering : lettering.filter((each) => isSeen(each, shape.region));
  const lines = seen.flatMap((each) => each.lines.map((letters) => ({ each, letters })));
  return lines.flatMap(({ each: { xHeight, grow }, letters }): Run[] => {
    if (letters[0]!.baseline === undefined) return [];
    const box = boundsOf(letters.flatMap(({ region }) => region))!;
    return [{ letters, box, xHeight, grow, top: lines.length > 1 ? undefined : band?.top, of }];
  });
}

/** Runs that stand side by side, from left to right. */
function inLines(runs: readonly Run[]): Run[][] {
  const lines: Run[][] = [];
  for (const run of runs.toSorted((a, b) => a.box.minX - b.box.minX)) {
    const line = lines.find((each) => isBeside(each.at(-1)!, run));
    if (line) line.push(run);
    else lines.push([run]);
  }
  return lines;
}

function isBeside({ box: left, ...one }: Run, { box: right, ...other }: Run): boolean {
  const level = Math.min(left.maxY, right.maxY) - Math.max(left.minY, right.minY);
  if (level < beside.level * Math.min(left.maxY - left.minY, right.maxY - right.minY)) return false;
  const apart = right.minX - left.maxX;
  const narrower = Math.min(left.maxX - left.minX, right.maxX - right.minX);
  return apart > -beside.over * narrower && apart < beside.apart * Math.max(one.xHeight, other.xHeight);
}

function letterLine(runs: readonly Run[]): Omit<LetterLine, 'isOverLine'> {
  const letters = runs.flatMap((run, index) => (index === 0 ? run.letters : opened(run, runs[index - 1]!)));
  const grow = Math.max(...runs.map((run) => run.grow));
  const placed = letters
    .map(({ text, region }) => ({ text, region, box: boundsOf(region)! }))
    .sort((a, b) => middleX(a.box) - middleX(b.box));
  const [start, end] = [placed[0]!, placed.at(-1)!];
  const baseline = Math.min(...runs.map((run) => run.letters[0]!.baseline!));
  const whole = boundsOf(placed.flatMap(({ region }) => region))!;
  const hasSmallLetters = letters.some(({ text }) => areSmall(text));
  const top = runs.length === 1 ? runs[0]!.top : undefined;
  const ofSmall = Math.max(...runs.map((run) => run.xHeight));
  const xHeight = hasSmallLetters ? ofSmall : (top ?? whole.maxY) - baseline;
  return {
    ...{ box: widened(whole, grow), baseline, xHeight, hasSmallLetters, letters: placed },
    hasInitial: hasSmallLetters && /^\p{Lu}/u.test(letters[0]!.text),
    ends: [lineEnd(start.region, -1), lineEnd(end.region, 1)],
    ...{ first: middleX(start.box), last: middleX(end.box), gaps: gapsBetween(letters) },
    low: placed
      .filter(({ box }) => isLow({ hasSmallLetters, baseline, xHeight }, box.maxY))
      .map(({ box: { minX, maxX } }) => ({ from: minX, to: maxX })),
  };
}

/** Whether a letter that reaches so high is a small one without an ascender. */
export function isLow(
  { hasSmallLetters, baseline, xHeight }: Pick<LetterLine, 'hasSmallLetters' | 'baseline' | 'xHeight'>,
  top: number,
): boolean {
  return hasSmallLetters && top < baseline + lowest * xHeight;
}

/** The letters of a run, the first of which opens a word only if it stands off what is before it. */
function opened({ letters, box, xHeight }: Run, before: Run): Letter[] {
  const opens = box.minX - before.box.maxX > beside.word * Math.max(xHeight, before.xHeight);
  return letters.map((letter, index) => (index === 0 ? { ...letter, opens } : letter));
}

/** Between the words of a line. */
function gapsBetween(letters: readonly Letter[]): Span[] {
  const words: Bounds[][] = [];
  for (const { region, opens } of letters) {
    const word = words.at(-1);
    if (word && !opens) word.push(boundsOf(region)!);
    else words.push([boundsOf(region)!]);
  }
  for (const word of words) word.sort((a, b) => middleX(a) - middleX(b));
  words.sort((a, b) => middleX(a[0]!) - middleX(b[0]!));
  const ends = words.slice(1).map((word, index) => [words[index]!.at(-1)!, word[0]!] as const);
  if (!ends.every(([last, first]) => middleX(last) < middleX(first))) return [];
  return ends.map(([last, first]) => ({ from: last.minX, to: first.maxX }));
}

function middleX({ minX, maxX }: Bounds): number {
  return (minX + maxX) / 2;
}
