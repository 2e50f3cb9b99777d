/** Text set in a font, at the size that the shape will have. */

import { mm } from '../../core/figures.ts';
import { applyToVector } from '../../geometry/affine.ts';
import { curveBounds, transformCurves } from '../../geometry/curves.ts';
import type { CurveCommand, CurvePath } from '../../geometry/curves.ts';
import type { Affine } from '../../geometry/types.ts';
import type { Shape, Wording } from '../../spec/model/shape-model.ts';
import { bendRound, bendText, radiusForSweep } from '../../text/arc.ts';
import type { Oval } from '../../text/arc.ts';
import type { FontFace } from '../../text/font-face.ts';
import { layoutText } from '../../text/text-layout.ts';
import type { MissingLetter, PlacedGlyph, TextLayout } from '../../text/text-layout.ts';
import type { LetterCurves, LetterGlyphs } from './letters.ts';
import type { LetterBand } from '../made-shape.ts';
import { letterBand } from './letter-band.ts';
import { tightLineHeight } from './tight-lines.ts';

export interface SetText {
  /** In em; on an arc, with the centre of its circle on the origin. */
  readonly curves: CurvePath;
  /** The same, letter by letter. */
  readonly letters: readonly LetterCurves[];
  readonly missing: readonly MissingLetter[];
  /** Only for straight text. */
  readonly band?: LetterBand;
  /** For text on an arc: the circle of its first baseline, in em. */
  readonly arc?: { readonly at: 'top' | 'bottom'; readonly radius: number };
}

export interface SetTextProblem {
  /** The key of the shape that cannot be met, and one below it. */
  readonly at: readonly string[];
  readonly problem: string;
}

/** The modifiers of a shape that its lettering depends on. */
type LetteringSize = Pick<Shape['modifiers'], 'width' | 'height' | 'grow'>;

/** Rounds of settling the em if letter spacing is given in mm: each leaves under a tenth of the error. */
const spacingRounds = 4;

/** Largest em that can fit a circle, in radii of it: a full stop of a narrow font would go round more than once. */
const largestEm = 64;

/** Halvings of the em on a circle of given radius, down to a hundred-millionth of it. */
const arcRounds = 32;

/** Whether the layout changes with the size, because something in it is given in mm. */
export function dependsOnSize({ letterSpacingMm, arc }: Wording): boolean {
  return letterSpacingMm !== 0 || (arc !== undefined && 'radius' in arc);
}

/** Millimetres per em, if the size is given by the font's own measures. Growth adds to capitals at top and bottom. */
export function emOf(face: FontFace, { size }: Wording, { grow = 0 }: LetteringSize): number | undefined {
  if (!size) return undefined;
  if (size.of === 'em') return size.mm;
  return (size.mm - 2 * grow) / (size.of === 'capitals' ? face.capHeight : face.xHeight);
}

export function setText(face: FontFace, text: Wording, size: LetteringSize): SetText | SetTextProblem {
  const { arc } = text;
  if (arc && 'radius' in arc) return setOnCircle(face, text, arc, size);
  let set = setAt(face, text, Infinity);
  if (text.letterSpacingMm === 0 || 'problem' in set) return set;
  const em = emOf(face, text, size);
  for (let round = 0; round < spacingRounds; round++) {
    const mmPerEm = em ?? emBySpan(set.curves, size);
    if (!(mmPerEm > 0)) return set;
    set = setAt(face, text, mmPerEm);
    if ('problem' in set) return set;
  }
  return set;
}

/** The text set at an em of `mmPerEm`; if that is infinite, lengths in mm become 0. */
export function setAt(face: FontFace, text: Wording, mmPerEm: number): SetText | SetTextProblem {
  const letterSpacing = text.letterSpacingMm / mmPerEm;
  const layout = laidOut(face, text, letterSpacing);
  const { curves, missing, glyphs } = layout;
  if (!text.arc) {
    const letters = lettersOf(
      glyphs,
      glyphs.map((glyph) => glyph.curves),
      letterSpacing,
    );
    return { curves, letters, missing, band: letterBand(face, layout, text.evenly) };
  }
  const { at } = text.arc;
  const radius =
    'radius' in text.arc ? text.arc.radius / mmPerEm : radiusForSweep(layout, at, (text.arc.sweep * Math.PI) / 180);
  const bent = bendText(layout, text.align, { at, radius });
  if ('curves' in bent) {
    return {
      curves: bent.curves,
      letters: lettersOf(glyphs, bent.glyphs, letterSpacing, bent.turns),
      missing,
      arc: { at, radius },
    };
  }
  const key = 'radius' in text.arc ? 'radius' : 'sweep';
  const problem =
    bent.problem === 'no-room'
      ? 'The circle is too small for letters of this size, or for this many lines.'
      : `The text goes around its circle more than once; ${key === 'radius' ? 'use a larger radius or smaller letters' : 'use a smaller sweep'}.`;
  return { at: ['arc', key], problem };
}

/** Straight lines stand as close as their ink allows, unless their distance is given; on an arc, as far apart as the font has them. */
function laidOut(face: FontFace, text: Wording, letterSpacing: number): TextLayout {
  const { lineHeight, align, features } = text;
  const spec = { text: text.text, letterSpacing, align, features };
  if (lineHeight !== undefined) return layoutText(face, { ...spec, lineHeight });
  const layout = layoutText(face, spec);
  if (layout.lineCount < 2 || text.arc) return layout;
  return layoutText(face, { ...spec, lineHeight: tightLineHeight(face, layout, text.evenly) });
}

/** As `setAt`, straight, with the layout: what a line along an ellipse is made of. */
export function straightLine(face: FontFace, text: Wording, mmPerEm: number): TextLayout {
  const letterSpacing = text.letterSpacingMm / mmPerEm;
  return layoutText(face, { text: text.text, letterSpacing, align: 'center', features: text.features });
}

/** One line along an ellipse, whose middle is on the origin; `undefined` where it has no room. */
export function setRound(layout: TextLayout, letterSpacing: number, oval: Oval): SetText | undefined {
  const bent = bendRound(layout, oval);
  if ('problem' in bent) return undefined;
  const { glyphs, missing } = layout;
  return { curves: bent.curves, letters: lettersOf(glyphs, bent.glyphs, letterSpacing, bent.turns), missing };
}

/**
 * On a circle of given radius, larger letters bend more, so the em that gives a width is searched for: the shape widens
 * with it as long as the text does not go round more than once.
 */
function setOnCircle(
  face: FontFace,
  text: Wording,
  { radius }: { readonly radius: number },
  size: LetteringSize,
): SetText | SetTextProblem {
  const em = emOf(face, text, size);
  if (em !== undefined) return setAt(face, text, em);
  const key = size.width === undefined ? 'height' : 'width';
  const goal = size[key]! - 2 * (size.grow ?? 0);
  // Too large whatever the text: its smallest letter would be as large as the circle.
  let [low, high] = [0, largestEm * radius];
  let best: { readonly set: SetText; readonly span: number } | undefined;
  for (let round = 0; round < arcRounds; round++) {
    const middle = (low + high) / 2;
    const set = setAt(face, text, middle);
    const span = 'problem' in set ? Infinity : middle * spanOf(set.curves, key);
    if (span > goal) high = middle;
    else {
      low = middle;
      if (!('problem' in set)) best = { set, span };
    }
  }
  if (best && best.span > goal * (1 - 1e-4)) return best.set;
  const most = mm((best?.span ?? 0) + 2 * (size.grow ?? 0), 1);
  return { at: [key], problem: `On this circle the text cannot reach this ${key}: maximum ${most}.` };
}

function emBySpan(curves: CurvePath, size: LetteringSize): number {
  const key = size.width === undefined ? 'height' : 'width';
  const mm = size[key];
  return mm === undefined ? 0 : (mm - 2 * (size.grow ?? 0)) / spanOf(curves, key);
}

function spanOf(curves: CurvePath, key: 'width' | 'height'): number {
  const bounds = curveBounds(curves);
  if (!bounds) return 0;
  return key === 'width' ? bounds.maxX - bounds.minX : bounds.maxY - bounds.minY;
}

/** The glyphs of each letter together: all at the same place, with the curves of each. */
function lettersOf(
  glyphs: readonly PlacedGlyph[],
  curves: readonly CurvePath[],
  letterSpacing: number,
  turns?: readonly Affine[],
): LetterCurves[] {
  const groups: number[][] = [];
  for (const [index, { text, baselinePoint, line }] of glyphs.entries()) {
    const before = glyphs[index - 1];
    const isSame = before?.baselinePoint.x === baselinePoint.x && before.line === line && before.text === text;
    if (isSame) groups.at(-1)!.push(index);
    else groups.push([index]);
  }
  return groups.map((group): LetterCurves => {
    const own = group.map((index) => glyphs[index]!);
    const { text, line, baselinePoint } = own[0]!;
    const along = { x: letterSpacing, y: 0 };
    return {
      text,
      line,
      baseline: baselinePoint.y,
      curves: group.flatMap((index): readonly CurveCommand[] => curves[index]!),
      ...(turns ? {} : { drawn: glyphsTogether(own) }),
      ...(letterSpacing === 0 ? {} : { spaced: turns ? applyToVector(along, turns[group[0]!]!) : along }),
    };
  });
}

/** Tolerance for the offsets of marks from their letter, in em, as sums along the line are rounded. */
const evenEm = 1e-6;

function glyphsTogether(glyphs: readonly PlacedGlyph[]): LetterGlyphs {
  const [first] = glyphs;
  const even = (em: number): number => Math.round(em / evenEm) * evenEm;
  const places = glyphs.map(({ x, y }) => ({ x: even(x - first!.x), y: even(y - first!.baselinePoint.y) }));
  return {
    key: glyphs.map(({ id }, index) => [id, places[index]!.x, places[index]!.y].join()).join(' '),
    // The font's own outline where that is all: what is made of it is found again in other words.
    curves:
      glyphs.length === 1 && places[0]!.y === 0
        ? first!.outline
        : glyphs.flatMap(({ outline }, index): readonly CurveCommand[] => {
            const { x, y } = places[index]!;
            return x === 0 && y === 0 ? outline : transformCurves(outline, { a: 1, b: 0, c: 0, d: 1, e: x, f: y });
          }),
    origin: { x: first!.x, y: first!.baselinePoint.y },
  };
}
