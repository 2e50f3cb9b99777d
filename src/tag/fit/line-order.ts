/** Words that are fitted into one room, each by itself: they stand one below the other in the order in which they are written. */

import { transform } from '../../geometry/affine.ts';
import { boundsOf, boxRing, widened } from '../../geometry/measure.ts';
import type { Bounds, Region } from '../../geometry/types.ts';
import { textsOf } from '../../spec/model/shape-model.ts';
import type { Generator, Place, Shape } from '../../spec/model/shape-model.ts';
import type { MadeShape } from '../made-shape.ts';
import type { Fitted } from './fitted.ts';

/** Where words beside a fitted shape stand: their ink, and its middle from top to bottom. */
export interface WordsBeside extends Bounds {
  readonly middle: number;
}

/** Words in the middle of a plate, above or below which a fitted shape is to stand. */
export interface WordsInMiddle extends WordsBeside {
  /** Heights of their line, whatever its letters. */
  readonly line: { readonly low: number; readonly high: number };
  /** What else is there. */
  readonly apart: Region;
  /** Whether they are written before the fitted shape. */
  readonly isFirst: boolean;
}

/** What a fitted shape is to stand below, or whether it goes above or below words in the middle of the plate as it is written before or after them. */
export type Order = 'below' | 'before the middle' | 'after the middle';

/** Of its size where there is most room: what a line keeps to stand below those written before it (our own judgement). */
const worthOrder = 0.4;

/**
 * Of the size of a line of typical words on the other side of words in the middle, what one keeps on the side that it is asked for, so that the
 * names of a batch stand on one side: of what is to fill the room, and of a lesser line, whose order counts for more (our own judgement, by looking).
 */
const worthUsualSide = { filling: 0.95, lesser: 0.75 };

/** Where words are placed below which others are to stand. */
const uppers: ReadonlySet<Place['at']> = new Set(['top', 'top-left', 'top-right']);

/** How a fitted shape is to stand to other words in the same room, as nothing says where it goes. */
export function orderOf({ generator, modifiers }: Shape, other: Shape, isWrittenAfter: boolean): Order | undefined {
  const { fit, place, nudge, rotate } = modifiers;
  if (!fit || place || nudge || rotate || !isLine(generator) || !isLine(other.generator)) return undefined;
  const { place: placed, fit: own, ...before } = other.modifiers;
  if (before.nudge || before.rotate) return undefined;
  const where = placed ?? own;
  if (where?.shape !== fit.shape || where.part !== fit.part) return undefined;
  if (!placed || uppers.has(placed.at)) return 'below';
  if (placed.at !== 'center') return undefined;
  return isWrittenAfter ? 'after the middle' : 'before the middle';
}

/** Whether it is upright words, in one line or several. */
export function isLine(generator: Generator): boolean {
  const texts = textsOf(generator);
  const isRound =
    texts.some(({ arc }) => arc) || (generator.kind === 'lines' && generator.lines.some(({ arc }) => arc));
  return texts.length > 0 && !isRound;
}

/** The lowest of some words. */
export function lowestOf(made: readonly MadeShape[]): WordsBeside | undefined {
  const boxes = made.flatMap(({ region }) => boundsOf(region) ?? []);
  const [first] = boxes;
  if (!first) return undefined;
  const lowest = boxes.reduce((a, b) => (b.minY < a.minY ? b : a), first);
  return { ...lowest, middle: (lowest.minY + lowest.maxY) / 2 };
}

export function inMiddleOf(
  made: readonly MadeShape[],
  apart: () => Region,
  isFirst: boolean,
): WordsInMiddle | undefined {
  const box = lowestOf(made);
  if (!box) return undefined;
  const bands = made.flatMap(({ band }) => band ?? []);
  const low = Math.min(...bands.map(({ baseline }) => baseline));
  const high = Math.max(...bands.map(({ top }) => top));
  return {
    ...box,
    line: bands.length === made.length ? { low, high } : { low: box.minY, high: box.maxY },
    apart: apart(),
    isFirst,
  };
}

export function standsBelow(fitted: Fitted, words: WordsBeside): boolean {
  const box = boxOf(fitted);
  return !box || (box.maxY <= words.middle && isOneOverOther(box, words));
}

export function standsAbove(fitted: Fitted, words: WordsBeside): boolean {
  const box = boxOf(fitted);
  return !box || (box.minY >= words.middle && isOneOverOther(box, words));
}

/** Of the width of the words above: a line that is further off their middle stands aside (our own judgement). */
const asideShare = 0.15;

/** Whether words stand among the letters of others, or are pushed aside by what hangs down from them: neither a line below those nor one above. */
export function standsAmong(fitted: Fitted, words: WordsBeside): boolean {
  const box = boxOf(fitted);
  if (!box || box.maxY <= words.minY || box.minY >= words.maxY) return false;
  const off = (box.minX + box.maxX - words.minX - words.maxX) / 2;
  const isAside = Math.abs(off) > asideShare * Math.max(words.maxX - words.minX, box.maxX - box.minX);
  return isAside || box.maxY > words.middle;
}

function boxOf({ shape, move }: Fitted): Bounds | undefined {
  return boundsOf(move ? transform(shape.region, move) : shape.region);
}

/** Diagonally below or above it is beside it. */
function isOneOverOther(a: Bounds, b: Bounds): boolean {
  const shared = Math.min(a.maxX, b.maxX) - Math.max(a.minX, b.minX);
  return shared > Math.min(a.maxX - a.minX, b.maxX - b.minX) / 2;
}

/** Whether the place below the lines above is good enough beside the one with most room. */
export function isWorthOrder(below: Fitted | undefined, anywhere: Fitted): boolean {
  return below !== undefined && below.scale >= worthOrder * anywhere.scale;
}

/** How large a shape would be on one side of other words, and how large a line of typical words. */
export interface OnSide {
  readonly scale: number | undefined;
  readonly usual: number | undefined;
}

/** Whether the side that the order asks for is good enough beside the other one. */
export function isWorthSide(asked: OnSide, other: OnSide, line: keyof typeof worthUsualSide): boolean {
  const [scale, elsewhere] = [asked.scale ?? 0, other.scale ?? 0];
  if (scale < worthOrder * elsewhere || elsewhere < worthOrder * scale) return scale > elsewhere;
  return asked.usual === undefined || asked.usual >= worthUsualSide[line] * (other.usual ?? 0);
}

/** What covers all of a region above a level, or all below it. */
export function over(region: Region, level: number): Region {
  const box = boundsOf(region);
  return !box || box.maxY <= level ? [] : [boxRing({ ...widened(box, 1), minY: level })];
}

export function under(region: Region, level: number): Region {
  const box = boundsOf(region);
  return !box || box.minY >= level ? [] : [boxRing({ ...widened(box, 1), maxY: level })];
}
