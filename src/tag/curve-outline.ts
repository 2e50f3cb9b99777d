/** A shape before it has its size. */

import { scaling } from '../geometry/affine.ts';
import { curveBounds } from '../geometry/curves.ts';
import { flatten, flattenLines } from '../geometry/flatten.ts';
import type { CurvePath } from '../geometry/curves.ts';
import { normalise, union } from '../geometry/clipper.ts';
import { boundsOf, boxCentre } from '../geometry/measure.ts';
import type { Affine, Bounds, Point, Ring } from '../geometry/types.ts';
import type { YamlPath } from '../core/issue.ts';
import { capHeight, smallHeight } from '../text/single-line-letters.ts';
import { hasSmallLetters } from '../spec/read/evenly.ts';
import type { Checkpoint } from './cache.ts';
import { flattenLetters, Lettering } from './lettering/letters.ts';
import type { LetterCurves } from './lettering/letters.ts';
import { mapBand, mapShape } from './made-shape.ts';
import type { LetterBand, MadeShape } from './made-shape.ts';
import { drawnTogether } from './open-lines.ts';
import type { StrokeText } from './open-lines.ts';
import type { DrawnShape } from './drawing/svg-drawing.ts';

/** Half the width and half the height of an ellipse, in mm. */
export interface HalfAxes {
  readonly a: number;
  readonly b: number;
}

export type RoundSide = 'top' | 'bottom';

/** How far in from the ellipse the line over the top and the one along the bottom run, in mm. */
export interface Sunk extends Readonly<Record<RoundSide, number>> {
  /** At their ends, as a share of that: the less, the flatter they are. */
  readonly aside: number;
}

/** What is free about the middle of an ellipse, which is the origin. */
export interface SpaceAbout {
  readonly minY: number;
  readonly maxY: number;
  /** Whether a ring round the upright line through the middle lies in it. */
  holds(ring: Ring): boolean;
}

/** An ellipse for lines that run round. */
export interface RoundRoom extends HalfAxes {
  /** For straight lines in the middle: all of the ellipse, if left out. */
  readonly middle?: SpaceAbout;
  /** What the lines that run round stay in, where the ellipse reaches beyond it. */
  readonly edge?: SpaceAbout;
}

/** Sets lines round an ellipse whose middle is on the origin; `mm`: height of the largest line's small letters. */
export interface RoundSetter {
  /** Where lines run round. */
  readonly sides: readonly RoundSide[];
  /** The largest such height, up to `most`, with which all have room; 0 where none does. */
  largest(room: RoundRoom, most: number, sunk?: Sunk): number;
  at(room: RoundRoom, mm: number, sunk?: Sunk): { readonly solid: MadeShape };
  /** What runs round at the top or at the bottom, not yet united. */
  outlines(room: RoundRoom, mm: number, sunk: Sunk, side: RoundSide): readonly Ring[];
}

/** Letters slid together at a scale, before they are joined: that takes many times as long, and hardly ever makes them larger. */
export interface SlidLetters {
  /** Of the letters and of the bars and posts to come, before growth. */
  readonly box: Bounds | undefined;
  joined(): Promise<JoinedLetters>;
}

export interface JoinedLetters {
  /** With all that joins them, before growth. */
  readonly box: Bounds | undefined;
  united(): MadeShape;
  /** The same, its region grown with round corners by what its letters expect: for less than uniting them first. */
  readonly grown?: () => MadeShape;
}

export interface CurveOutline {
  /** At its natural size; `undefined` if there is nothing. */
  readonly bounds: Bounds | undefined;
  /** Scale over its natural size if nothing else is asked for; 1 if absent. */
  readonly ownScale?: number;
  /** For letters that slide together, which are sized before they are grown: where they stand at a scale over their natural size. */
  readonly slid?: (scaleX: number, scaleY: number, checkpoint: Checkpoint) => Promise<SlidLetters>;
  /** Heights of letters, for lettering at its natural size. */
  readonly heights?: Readonly<Record<'capitals' | 'small letters', number>>;
  /** Whether another size is more than a mere enlargement. */
  readonly changes?: boolean;
  /** Of lines that run round: what sets them along the edge of what they are fitted into. */
  readonly round?: RoundSetter;
  /**
   * The shape at a scale over its natural size. Curves are only flattened here, so that every size is equally smooth.
   */
  at(scaleX: number, scaleY: number, checkpoint: Checkpoint): MadeShape | Promise<MadeShape>;
}

/** A polygon; it is scaled about the middle of its box, which stays where it is. */
export function polygonOutline(polygon: MadeShape): CurveOutline {
  const bounds = boundsOf(polygon.region);
  return {
    bounds,
    at: (x, y) => (bounds && (x !== 1 || y !== 1) ? mapShape(polygon, scaling(x, y, boxCentre(bounds))) : polygon),
  };
}

/** Shapes that stay where they were drawn, united. */
export function drawnOutline(shapes: readonly DrawnShape[]): CurveOutline {
  return curveOutline(
    shapes.flatMap(({ curves }) => [...curves]),
    (centre) => centre,
    (affine) => ({ region: union(shapes.map(({ curves, rule }) => normalise(flatten(curves, { affine }), rule))) }),
  );
}

/** Curves that stay lines, where they were drawn. */
export function openOutline(curves: CurvePath): CurveOutline {
  return curveOutline(
    curves,
    (centre) => centre,
    (affine) => followed(curves, affine),
  );
}

/** A text in em, with its curves also letter by letter. */
export interface DrawnText {
  readonly curves: CurvePath;
  readonly letters: readonly LetterCurves[];
  readonly xHeight: number;
  readonly path: YamlPath;
  /** Whether its curves are single strokes. */
  readonly isOpen?: boolean;
}

/** Curves with the middle of their box on the origin; `band` is in the curves' own coordinates. */
export function centredOutline(text: DrawnText, band: LetterBand): CurveOutline {
  return curveOutline(
    text.curves,
    () => ({ x: 0, y: 0 }),
    (affine) => ({ ...textAt(text, affine), band: mapBand(band, (y) => y * affine.d + affine.f, affine.a) }),
  );
}

/** Curves round the origin, which stays where it is and is their hub. */
export function outlineAboutOrigin(text: DrawnText): CurveOutline {
  return curveOutline(
    text.curves,
    (centre, scaleX, scaleY) => ({ x: centre.x * scaleX, y: centre.y * scaleY }),
    (affine) => ({ ...textAt(text, affine), arcCentre: { x: 0, y: 0 } }),
  );
}

/** Letters at their size and place; those of single strokes have nothing that could be lost in growing. */
export function textAt(text: DrawnText, affine: Affine): MadeShape {
  if (text.isOpen) return followed(text.curves, affine, [strokeTextAt(text, affine)]);
  return { region: normalise(flatten(text.curves, { affine })), lettering: [letteringAt(text, affine)] };
}

/** Its outlines as the font has them, which may cross; none of single strokes. */
export function outlinesAt({ curves, isOpen }: DrawnText, affine: Affine): readonly Ring[] {
  return isOpen ? [] : flatten(curves, { affine });
}

function followed(curves: CurvePath, affine: Affine, texts: readonly StrokeText[] = []): MadeShape {
  return drawnTogether([], flattenLines(curves, { affine }), texts);
}

function strokeTextAt({ letters, xHeight, path }: DrawnText, { d }: Affine): StrokeText {
  const text = letters.map((letter) => letter.text).join('');
  const height = hasSmallLetters(text) ? xHeight : (xHeight * capHeight) / smallHeight;
  return { path, text, height: height * d };
}

export function letteringAt(
  { letters, xHeight, path }: Pick<DrawnText, 'letters' | 'xHeight' | 'path'>,
  affine: Affine,
): Lettering {
  const about = { path, xHeight: xHeight * affine.d, grow: 0, as: 'material' as const };
  return new Lettering(about, () => flattenLetters(letters, affine));
}

/** `goal` is where the middle of the curves' box goes. */
function curveOutline(
  curves: CurvePath,
  goal: (centre: Point, scaleX: number, scaleY: number) => Point,
  make: (affine: Affine) => MadeShape,
): CurveOutline {
  const bounds = curveBounds(curves);
  const centre = bounds ? boxCentre(bounds) : { x: 0, y: 0 };
  return {
    bounds,
    at: (scaleX, scaleY) => {
      const to = goal(centre, scaleX, scaleY);
      return make({ a: scaleX, b: 0, c: 0, d: scaleY, e: to.x - centre.x * scaleX, f: to.y - centre.y * scaleY });
    },
  };
}
