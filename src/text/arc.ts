/**
 * Sets a text on a circle. Each letter stands on it with the middle of its advance, turned as a whole. Letters side by
 * side on a circle spread at their tops and crowd at their feet, or the other way round; at a height in between,
 * advances and kerning are the same as in a straight line.
 */

import { chain, rotation, translation } from '../geometry/affine.ts';
import { transformCurves, type CurveCommand, type CurvePath } from '../geometry/curves.ts';
import type { Affine } from '../geometry/types.ts';
import { Ellipse } from './ellipse.ts';
import type { TextLayout } from './text-layout.ts';

export interface BaselineArc {
  /** `top`: outside the circle, tops outwards. `bottom`: inside, tops inwards, so that it also reads left to right. */
  readonly at: 'top' | 'bottom';
  /**
   * Radius of the first baseline's circle, in em, > 0. Further lines stand below: on smaller circles at the top, larger
   * ones at the bottom.
   */
  readonly radius: number;
}

export type BentText =
  | {
      readonly curves: CurvePath;
      /** The curves of each glyph, in the order of the layout. */
      readonly glyphs: readonly CurvePath[];
      /** The rotation of each glyph. */
      readonly turns: readonly Affine[];
    }
  /** `no-room`: a circle would have no radius. `overlap`: a line goes more than once round its circle. */
  | { readonly problem: 'no-room' | 'overlap' };

/**
 * The height at which advances are kept, in x-heights. The strokes of joined scripts meet between these two; each side
 * takes the one at which the rest crowd rather than spread, so that they still meet. Of 15 words in each of six
 * scripts, on circles of four em, 4 of 90 came apart at the top and 1 at the bottom, by our own measurement; with
 * advances kept at the baseline, 33 and 4.
 */
const keptAt = { top: 1 / 2, bottom: 1 / 4 };

/** Allows for rounding, so that a text may go round exactly once. */
const fullTurn = 2 * Math.PI * (1 + 1e-9);

/** The centre of the circle is at the origin; the middle of the widest line is straight above it, or straight below. */
export function bendText(
  layout: TextLayout,
  align: 'left' | 'center' | 'right',
  { at, radius }: BaselineArc,
): BentText {
  const outwards = at === 'top' ? 1 : -1;
  const kept = outwards * keptAt[at] * layout.xHeight;
  const share = { left: 0, center: 0.5, right: 1 }[align];
  const anchor = share * layout.advance;
  const anchorAngle = ((share - 0.5) * layout.advance) / (radius + kept);
  const ends = lineEnds(layout);
  const glyphs: CurvePath[] = [];
  const turns: Affine[] = [];
  for (const glyph of layout.glyphs) {
    const circle = radius + outwards * glyph.baselinePoint.y;
    const spaced = circle + kept;
    if (!(Math.min(circle, spaced) > 0)) return { problem: 'no-room' };
    const { start, end } = ends.get(glyph.line)!;
    if (end - start > fullTurn * spaced) return { problem: 'overlap' };
    const angle = anchorAngle + (glyph.baselinePoint.x - anchor) / spaced;
    const upright = translation(-glyph.baselinePoint.x, -glyph.baselinePoint.y + outwards * circle);
    const turn = rotation((outwards * angle * 180) / Math.PI, { x: 0, y: 0 });
    glyphs.push(transformCurves(glyph.curves, chain(upright, turn)));
    turns.push(turn);
  }
  return { curves: glyphs.flatMap((glyph): readonly CurveCommand[] => glyph), glyphs, turns };
}

/** The ellipse that a line stands on, in em: half its width and half its height. */
export interface Oval {
  readonly at: 'top' | 'bottom';
  readonly a: number;
  readonly b: number;
}

/** How far outside the feet of a line its letters are as far apart as in a straight one, in em. */
export function keptHeight(at: Oval['at'], xHeight: number): number {
  return (at === 'top' ? 1 : -1) * keptAt[at] * xHeight;
}

/** The ellipse along which the letters of a line are as far apart as in a straight one; `undefined` where it has no room. */
export function spacedOval({ xHeight }: Pick<TextLayout, 'xHeight'>, { at, a, b }: Oval): Ellipse | undefined {
  const kept = keptHeight(at, xHeight);
  return Math.min(a, b, a + kept, b + kept) > 0 ? new Ellipse(a + kept, b + kept) : undefined;
}

/** As on a circle: one line, its middle straight above the middle of the ellipse, or straight below it. */
export function bendRound(layout: TextLayout, oval: Oval): BentText {
  const { at } = oval;
  const ellipse = spacedOval(layout, oval);
  if (!ellipse) return { problem: 'no-room' };
  if (layout.advance > ellipse.perimeter) return { problem: 'overlap' };
  const kept = keptAt[at] * layout.xHeight;
  const glyphs: CurvePath[] = [];
  const turns: Affine[] = [];
  for (const { curves, baselinePoint } of layout.glyphs) {
    const { point, outwards } = ellipse.placeAt(baselinePoint.x - layout.advance / 2, at);
    const up = at === 'top' ? outwards : { x: -outwards.x, y: -outwards.y };
    const turn = rotation((Math.atan2(up.x, up.y) * 180) / Math.PI, { x: 0, y: 0 });
    const foot = translation(point.x - kept * up.x, point.y - kept * up.y);
    glyphs.push(transformCurves(curves, chain(chain(translation(-baselinePoint.x, 0), turn), foot)));
    turns.push(turn);
  }
  return { curves: glyphs.flatMap((glyph): readonly CurveCommand[] => glyph), glyphs, turns };
}

/** The radius in em on which a text covers the given angle of its circle, in radians. */
export function radiusForSweep(layout: TextLayout, at: BaselineArc['at'], radians: number): number {
  return layout.advance / radians - keptHeight(at, layout.xHeight);
}

/** Start and end of each line along its baseline, by line number. */
function lineEnds({ glyphs }: TextLayout): Map<number, { start: number; end: number }> {
  const ends = new Map<number, { start: number; end: number }>();
  for (const { line, x, advance } of glyphs) {
    const known = ends.get(line) ?? { start: Infinity, end: -Infinity };
    ends.set(line, { start: Math.min(known.start, x), end: Math.max(known.end, x + advance) });
  }
  return ends;
}
