/** Words that are fitted into one room, each by itself: they stand one below the other in the order in which they are written. */

import { transform } from '../../geometry/affine.ts';
import { boundsOf, boxRing, widened } from '../../geometry/measure.ts';
import type { Region } from '../../geometry/types.ts';
import { textsOf } from '../../spec/model/shape-model.ts';
import type { Generator, Place, Shape } from '../../spec/model/shape-model.ts';
import type { MadeShape } from '../made-shape.ts';
import type { Fitted } from './fitted.ts';

/** Heights of what is written before a shape. */
export interface LinesAbove {
  /** Of the lowest one: the middle and the lower edge of its ink, and how far that goes to either side. */
  readonly middle: number;
  readonly bottom: number;
  readonly left: number;
  readonly right: number;
}

/** Of its size where there is most room: what a line gives up to stand below those written before it (our own judgement). */
const worthOrder = 0.4;

/** Where words are placed below which others are to stand. */
const uppers: ReadonlySet<Place['at']> = new Set(['center', 'top', 'top-left', 'top-right']);

/** Whether a fitted shape is to stand below another, as nothing says where it goes: the other is fitted there too, in the middle or at the top. */
export function isBelow({ generator, modifiers }: Shape, other: Shape): boolean {
  const { fit, place, nudge, rotate } = modifiers;
  if (!fit || place || nudge || rotate || !isLine(generator) || !isLine(other.generator)) return false;
  const before = other.modifiers;
  if (before.nudge || before.rotate) return false;
  const { place: placed } = before;
  const where = placed ? (uppers.has(placed.at) ? placed : undefined) : before.fit;
  return where?.shape === fit.shape && where.part === fit.part;
}

/** Whether it is upright words, in one line or several. */
export function isLine(generator: Generator): boolean {
  const texts = textsOf(generator);
  const isRound =
    texts.some(({ arc }) => arc) || (generator.kind === 'lines' && generator.lines.some(({ arc }) => arc));
  return texts.length > 0 && !isRound;
}

export function linesAbove(made: readonly MadeShape[]): LinesAbove | undefined {
  const boxes = made.flatMap(({ region }) => boundsOf(region) ?? []);
  const [first] = boxes;
  if (!first) return undefined;
  const lowest = boxes.reduce((a, b) => (b.minY < a.minY ? b : a), first);
  const { minX, maxX, minY, maxY } = lowest;
  return { middle: (minY + maxY) / 2, bottom: minY, left: minX, right: maxX };
}

export function standsBelow({ shape, move }: Fitted, { middle, left, right }: LinesAbove): boolean {
  const box = boundsOf(move ? transform(shape.region, move) : shape.region);
  if (!box) return true;
  // Diagonally below it is beside it.
  const shared = Math.min(right, box.maxX) - Math.max(left, box.minX);
  return box.maxY <= middle && shared > Math.min(right - left, box.maxX - box.minX) / 2;
}

/** Whether the place below the lines above is good enough beside the one with most room. */
export function isWorthOrder(below: Fitted | undefined, anywhere: Fitted): boolean {
  return below !== undefined && below.scale >= worthOrder * anywhere.scale;
}

/** What covers all of a region above a level. */
export function over(region: Region, level: number): Region {
  const box = boundsOf(region);
  if (!box || box.maxY <= level) return [];
  return [boxRing({ ...widened(box, 1), minY: level })];
}
