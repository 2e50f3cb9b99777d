/** Lines of lettering stacked as close as their ink allows. */

import { unionOfWhole } from '../../geometry/clipper.ts';
import { curveBounds } from '../../geometry/curves.ts';
import { boundsOf, boxCentre } from '../../geometry/measure.ts';
import type { Bounds } from '../../geometry/types.ts';
import type { YamlPath } from '../../core/issue.ts';
import type { TextLine, Wording } from '../../spec/model/shape-model.ts';
import type { FontFace } from '../../text/font-face.ts';
import { singleLineFace } from '../../text/single-line-face.ts';
import { hasSmallLetters } from '../../spec/read/evenly.ts';
import { inkDrop, usualDrop, usualGap } from './ink-drop.ts';
import type { LineInk } from './ink-drop.ts';
import { evenReach } from './letter-band.ts';
import { setAt } from './lettering.ts';
import type { SetText } from './lettering.ts';
import { mapBand } from '../made-shape.ts';
import type { MadeShape } from '../made-shape.ts';
import { textAt } from '../curve-outline.ts';
import type { CurveOutline, DrawnText } from '../curve-outline.ts';
import { areasIn, drawnTogether, strokeTextsOf } from '../open-lines.ts';

export interface LineInput extends TextLine {
  readonly face: FontFace;
  readonly text: Wording;
  readonly path: YamlPath;
}

export interface LineSpacing {
  /** The largest share among all that stand together, where these are not all of them. */
  readonly most?: number;
  /** Distance between the ink of two lines, in mm. */
  readonly gap?: number;
}

/** A line at its place; in units of which the small letters of the largest line are one high. */
export interface PlacedLine {
  readonly line: LineInput;
  readonly set: SetText;
  /** Units per em. */
  readonly em: number;
  /** Origin of the first letter. */
  readonly x: number;
  readonly y: number;
}

/**
 * The lines at natural size: the x-height of the largest line is 1 mm. `undefined` if one of the lines cannot be set.
 */
export function linesOutline(lines: readonly LineInput[], spacing: LineSpacing): CurveOutline | undefined {
  const natural = placedLines(lines, spacing, undefined);
  if (!natural) return undefined;
  const changes = spacing.gap !== undefined || lines.some(({ text }) => text.letterSpacingMm !== 0);
  return {
    bounds: boundsOfLines(natural),
    heights: heightsOf(lines),
    changes,
    at: (scaleX, scaleY) => {
      const placed = changes ? placedLines(lines, spacing, scaleY) : undefined;
      return shapeOfLines(placed ?? natural, scaleX, scaleY);
    },
  };
}

/** Of the largest line's letters. */
export function heightsOf(lines: readonly LineInput[]): NonNullable<CurveOutline['heights']> {
  const { face } = lines.reduce((most, line) => (line.share > most.share ? line : most));
  return { 'small letters': 1, capitals: face.capHeight / face.xHeight };
}

/** @param mmPerUnit What is given in mm counts for nothing where there is none. */
export function placedLines(
  lines: readonly LineInput[],
  { gap, most = Math.max(...lines.map(({ share }) => share)) }: LineSpacing,
  mmPerUnit: number | undefined,
): PlacedLine[] | undefined {
  const sets: { readonly line: LineInput; readonly set: SetText; readonly em: number; readonly box: Bounds }[] = [];
  for (const line of lines) {
    const em = line.share / most / line.face.xHeight;
    const set = setAt(line.face, line.text, mmPerUnit === undefined ? Infinity : em * mmPerUnit);
    const box = 'problem' in set ? undefined : curveBounds(set.curves);
    if ('problem' in set) return undefined;
    // A line without ink takes no room.
    if (box) sets.push({ line, set, em, box });
  }
  const width = Math.max(...sets.map(({ em, box }) => em * (box.maxX - box.minX)));
  const placed: PlacedLine[] = [];
  for (const { line, set, em, box } of sets) {
    const free = width - em * (box.maxX - box.minX);
    const x = { left: 0, center: 0.5, right: 1 }[line.align] * free - em * box.minX;
    const above = placed.at(-1);
    const here = { line, set, em, x, y: 0 };
    const mean = (topOf(here) + topOf(above ?? here)) / 2;
    const between = gap !== undefined && mmPerUnit !== undefined ? gap / mmPerUnit : usualGap * mean;
    const drop = above
      ? line.text.evenly
        ? evenDrop(above, here) + between
        : gap !== undefined && mmPerUnit !== undefined
          ? inkDrop(inkIn(above), inkIn(here), width, between)
          : usualDrop(inkIn(above), inkIn(here), width)
      : 0;
    placed.push({ ...here, y: (above?.y ?? 0) - drop });
  }
  return placed;
}

export function boundsOfLines(lines: readonly PlacedLine[]): Bounds | undefined {
  return boundsOf(
    lines.map(({ set, em, x, y }) => {
      const box = curveBounds(set.curves)!;
      return [
        { x: x + em * box.minX, y: y + em * box.minY },
        { x: x + em * box.maxX, y: y + em * box.maxY },
      ];
    }),
  );
}

/** Distance from baseline to baseline whatever the letters: from the deepest letter to the highest. */
function evenDrop(above: PlacedLine, below: PlacedLine): number {
  const reach = ({ line: { face, text } }: PlacedLine) => evenReach(face, text.evenly ?? 'any words');
  return above.em * reach(above).deep + below.em * reach(below).high;
}

/** Height of its small letters, or of its capitals if there are no others. */
function topOf({ set, em }: PlacedLine): number {
  return em * (set.band?.top ?? 0);
}

function inkIn(placed: PlacedLine): LineInk {
  const { line, set, em, x } = placed;
  return {
    curves: set.curves,
    affine: { a: em, b: 0, c: 0, d: em, e: x, f: 0 },
    isOpen: line.face === singleLineFace,
    top: topOf(placed),
    hasSmall: hasSmallLetters(line.text.text),
  };
}

export function drawnLine({ face, path }: LineInput, { curves, letters }: SetText): DrawnText {
  return { curves, letters, xHeight: face.xHeight, path, isOpen: face === singleLineFace };
}

/** Lines of lettering as one shape. */
export function textsTogether(texts: readonly MadeShape[]): MadeShape {
  const lettering = texts.flatMap((text) => text.lettering ?? []);
  return {
    ...drawnTogether(
      unionOfWhole(texts.map(areasIn)),
      texts.flatMap(({ lines = [] }) => lines),
      strokeTextsOf(texts),
    ),
    ...(lettering.length > 0 ? { lettering } : {}),
  };
}

/** With the middle of its box on the origin. */
export function shapeOfLines(lines: readonly PlacedLine[], scaleX: number, scaleY: number): MadeShape {
  const box = boundsOfLines(lines);
  if (!box) return { region: [] };
  const middle = boxCentre(box);
  const made = lines.map(({ line, set, em, x, y }) => {
    const affine = {
      a: em * scaleX,
      b: 0,
      c: 0,
      d: em * scaleY,
      e: (x - middle.x) * scaleX,
      f: (y - middle.y) * scaleY,
    };
    return {
      text: textAt(drawnLine(line, set), affine),
      ...mapBand(set.band!, (value) => affine.f + value * affine.d, affine.a),
    };
  });
  const [first, last] = [made[0]!, made.at(-1)!];
  return {
    ...textsTogether(made.map(({ text }) => text)),
    band: {
      baseline: last.baseline,
      top: first.top,
      ...(first.even ? { even: first.even } : {}),
      usual: { deep: last.usual.deep, tall: first.usual.tall, long: Math.max(...made.map(({ usual }) => usual.long)) },
    },
  };
}
