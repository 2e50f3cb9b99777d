/** A shape once it has been made: its material, and what placement needs to know about it. */

import { applyTo, transform } from '../geometry/affine.ts';
import { boundsOf, boxCentre, centroid } from '../geometry/measure.ts';
import type { Affine, Bounds, Point, Region } from '../geometry/types.ts';
import type { CentreRule } from '../spec/model/shape-model.ts';
import { scaledBorder } from './shapes/border.ts';
import type { Border } from './shapes/border.ts';
import { mapCode } from './shapes/code.ts';
import type { Code } from './shapes/code.ts';
import type { Lettering } from './lettering/letters.ts';
import type { Drawn, StrokeText } from './open-lines.ts';
import { mapAskedWidths } from './asked-width.ts';
import type { AskedWidth } from './asked-width.ts';

/** The band that the eye takes for the height of a line of lettering, as y coordinates in mm. */
export interface LetterBand {
  readonly baseline: number;
  readonly top: number;
  /** For lettering that stands where it would with other letters: the top of its capitals, and whether it may have small ones. */
  readonly even?: { readonly head: number; readonly hasSmall: boolean };
  /** Depth and height that its letters may reach, and the length of a line of typical words. */
  readonly usual: { readonly deep: number; readonly tall: number; readonly long: number };
}

export function mapBand(
  { baseline, top, even, usual }: LetterBand,
  toY: (y: number) => number,
  scaleX: number,
): LetterBand {
  return {
    baseline: toY(baseline),
    top: toY(top),
    ...(even ? { even: { ...even, head: toY(even.head) } } : {}),
    usual: { deep: toY(usual.deep), tall: toY(usual.tall), long: scaleX * usual.long },
  };
}

/** Corners of a stack's member that stick out beside the member it is lapped over. */
export interface Shoulder {
  /** The member that is lapped over the one before it. */
  readonly name: string;
  /** The notches beside the corners. */
  readonly region: Region;
  /** The lap that would hide it, as the spec would give it; `undefined` if none would. */
  readonly hidingLap?: number;
  /** Whether it is no corner, but the ends of both that are lost in each other, such as the barbs of two arrows. */
  readonly losesEnds?: boolean;
}

export interface MadeShape extends Drawn {
  /** The members of a stack, at their places in it. */
  readonly parts?: ReadonlyMap<string, Region>;
  /** For a stack: where its members do not run into each other smoothly. */
  readonly shoulders?: readonly Shoulder[];
  /** For a border: how it was made. */
  readonly border?: Border;
  readonly codes?: readonly Code[];
  /** Only for upright lettering. */
  readonly band?: LetterBand;
  /** For lettering on an arc: the centre of its circle. */
  readonly arcCentre?: Point;
  /** Every text in it, letter by letter. */
  readonly lettering?: readonly Lettering[];
  /** Widths that the spec asks for explicitly. */
  readonly asked?: readonly AskedWidth[];
}

/** A shape drawn along lines as the area burnt along them: once that is changed, the lines no longer describe it. */
export function asArea(made: MadeShape): MadeShape {
  const area: Writable<MadeShape> = { ...made };
  delete area.lines;
  delete area.filled;
  delete area.strokeTexts;
  return area;
}

type Writable<T> = { -readonly [K in keyof T]: T[K] };

/** The solid moved, scaled or rotated; what is meaningless afterwards (the band of rotated lettering) is dropped. */
export function mapShape(made: MadeShape, affine: Affine): MadeShape {
  const { asked, band, border, codes, arcCentre, filled, lettering, lines, parts, shoulders, strokeTexts } = made;
  const upright = affine.b === 0 && affine.c === 0 && affine.d > 0;
  return {
    region: transform(made.region, affine),
    ...(parts ? { parts: new Map([...parts].map(([name, region]) => [name, transform(region, affine)])) } : {}),
    ...(shoulders ? { shoulders: shoulders.map((each) => ({ ...each, region: transform(each.region, affine) })) } : {}),
    ...(border
      ? { border: scaledBorder(border, transform(border.within, affine), Math.sqrt(Math.abs(determinant(affine)))) }
      : {}),
    ...(lines ? { lines: transform(lines, affine) } : {}),
    ...(strokeTexts ? { strokeTexts: strokeTexts.map((each) => scaledText(each, affine)) } : {}),
    ...(filled ? { filled: transform(filled, affine) } : {}),
    ...(codes ? { codes: codes.map((code) => mapCode(code, affine)) } : {}),
    ...(lettering ? { lettering: lettering.map((each) => each.mapped(affine)) } : {}),
    ...(arcCentre ? { arcCentre: applyTo(arcCentre, affine) } : {}),
    ...(asked ? { asked: mapAskedWidths(asked, affine) } : {}),
    ...(band && upright ? { band: mapBand(band, (y) => affine.d * y + affine.f, Math.abs(affine.a)) } : {}),
  };
}

function scaledText(text: StrokeText, { c, d }: Affine): StrokeText {
  return { ...text, height: text.height * Math.hypot(c, d) };
}

/** Height of the middle of a line with small letters and capitals, in capital heights (our own judgement). */
const evenShare = 0.42;

/** Between the middle of small letters and that of capitals, whichever are present. */
export function evenMiddle(baseline: number, { head, hasSmall }: NonNullable<LetterBand['even']>): number {
  return baseline + (hasSmall ? evenShare : 0.5) * (head - baseline);
}

/** The point of a solid that counts as its centre under a rule; `undefined` if there is no material. */
export function centreOf({ region, band, arcCentre }: MadeShape, rule: CentreRule): Point | undefined {
  const bounds = boundsOf(region);
  if (!bounds) return undefined;
  const box = boxCentre(bounds);
  const mass = centroid(region) ?? box;
  if (band?.even && rule !== 'box' && rule !== 'mass') {
    return { x: rule === 'eye' ? seenMiddle(bounds, mass) : box.x, y: evenMiddle(band.baseline, band.even) };
  }
  switch (rule) {
    case 'box':
      return box;
    case 'mass':
      return mass;
    case 'x-height':
      return { x: box.x, y: band ? (band.baseline + band.top) / 2 : box.y };
    case 'eye':
      // Letters round a circle look centred on the circle's centre.
      return arcCentre ?? { x: band ? seenMiddle(bounds, mass) : (box.x + mass.x) / 2, y: (box.y + mass.y) / 2 };
  }
}

/**
 * How far aside of the middle of its box a line of lettering is seen at most, as a share of its height: the eye compares what is free at the ends of
 * a long word. What is higher than wide is seen as a shape. Our own judgement, by looking at 32 words in four faces on plates, each at three places.
 */
const mostAside = 0.035;
const longFrom = 1.5;

/** Where a line of lettering is seen to have its middle: half-way to its centre of gravity, but never far aside. */
function seenMiddle(bounds: Bounds, mass: Point): number {
  const [wide, high] = [bounds.maxX - bounds.minX, bounds.maxY - bounds.minY];
  const middle = (bounds.minX + bounds.maxX) / 2;
  const most = mostAside * high * Math.max(1, (longFrom * high) / wide);
  return middle + Math.max(-most, Math.min(most, (mass.x - middle) / 2));
}

function determinant({ a, b, c, d }: Affine): number {
  return a * d - b * c;
}
