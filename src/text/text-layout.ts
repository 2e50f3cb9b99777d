/** Sets a text in a font: from words to outlines in place. */

import { transformCurves, type CurveCommand, type CurvePath } from '../geometry/curves.ts';
import type { Point } from '../geometry/types.ts';
import type { FontFace } from './font-face.ts';
import { itemise } from './itemise.ts';

export interface TextSpec {
  /** Lines end at a line feed (or any other mandatory break in Unicode). Spaces at the end of a line take no room. */
  readonly text: string;
  /** Extra space after each letter, in em; negative values tighten it. */
  readonly letterSpacing?: number;
  /** Distance between baselines, in em; the font's own if absent. */
  readonly lineHeight?: number;
  readonly align: 'left' | 'center' | 'right';
  /** OpenType features by tag: on, off, or a number. A tag that is not four ASCII characters is ignored. */
  readonly features?: Readonly<Record<string, boolean | number>>;
}

/** A laid-out text, in em throughout: x from the left edge of the widest line, y up from the first baseline. */
export interface TextLayout {
  /** All glyphs together. Letters that overlap are not united; every outer contour runs counter-clockwise. */
  readonly curves: CurvePath;
  /** In visual order, line by line. */
  readonly glyphs: readonly PlacedGlyph[];
  /** Advance of the widest line. */
  readonly advance: number;
  readonly lineCount: number;
  readonly ascender: number;
  readonly descender: number;
  readonly xHeight: number;
  readonly capHeight: number;
  /** Each occurrence of a letter that the font lacks or has nothing to draw for. A gap is left in its place. */
  readonly missing: readonly MissingLetter[];
}

export interface PlacedGlyph {
  /** Number in the font. */
  readonly id: number;
  /** The letters it stands for: more than one for a ligature, and the same for all glyphs of one letter. */
  readonly text: string;
  readonly line: number;
  /** Origin of the glyph. */
  readonly x: number;
  readonly y: number;
  /** Point where its letter stands: on the baseline, in the middle of the letter's advance. */
  readonly baselinePoint: Point;
  readonly advance: number;
  /** In place; empty for a space. */
  readonly curves: CurvePath;
  /** The outline at the origin, as the font has it. */
  readonly outline: CurvePath;
}

export interface MissingLetter {
  readonly text: string;
  /** UTF-16 offset in the text given. */
  readonly index: number;
}

/** Characters that should leave ink; if one does not, it is damaged, or left blank by the font. */
const visible = /[\p{L}\p{N}\p{P}\p{S}](?<!\p{Default_Ignorable_Code_Point})/u;

/** The mandatory breaks of UAX #14. */
const lineBreak = /\r\n|[\n\v\f\r\u0085\u2028\u2029]/g;

export function layoutText(face: FontFace, spec: TextSpec): TextLayout {
  const lines = splitLines(spec.text).map((line) => setLine(face, spec, line));
  const advance = lines.reduce((widest, line) => Math.max(widest, line.advance), 0);
  const lineHeight = spec.lineHeight ?? face.lineHeight;
  const glyphs = lines.flatMap((line, number) => {
    const shift = { left: 0, center: 0.5, right: 1 }[spec.align] * (advance - line.advance);
    return line.glyphs.map((glyph): PlacedGlyph => {
      const x = glyph.x + shift;
      const y = glyph.y - number * lineHeight;
      return {
        ...glyph,
        line: number,
        x,
        y,
        baselinePoint: { x: glyph.baselineX + shift, y: -number * lineHeight },
        curves: transformCurves(glyph.outline, { a: 1, b: 0, c: 0, d: 1, e: x, f: y }),
      };
    });
  });
  return {
    curves: glyphs.flatMap((glyph): readonly CurveCommand[] => glyph.curves),
    glyphs,
    advance,
    lineCount: lines.length,
    ascender: face.ascender,
    descender: face.descender,
    xHeight: face.xHeight,
    capHeight: face.capHeight,
    missing: lines.flatMap((line) => line.missing).sort((a, b) => a.index - b.index),
  };
}

interface SourceLine {
  readonly text: string;
  readonly index: number;
}

function splitLines(text: string): SourceLine[] {
  const lines: SourceLine[] = [];
  let index = 0;
  for (const match of [...text.matchAll(lineBreak), undefined]) {
    lines.push({ text: text.slice(index, match?.index).trimEnd(), index });
    if (match) index = match.index + match[0].length;
  }
  return lines;
}

/** A glyph before it is placed; `baselineX` is the position of its letter. */
type SetGlyph = Omit<PlacedGlyph, 'line' | 'baselinePoint' | 'curves'> & { readonly baselineX: number };

interface SetLine {
  readonly glyphs: readonly SetGlyph[];
  readonly advance: number;
  readonly missing: readonly MissingLetter[];
}

function setLine(face: FontFace, spec: TextSpec, line: SourceLine): SetLine {
  const { text, origin, runs } = itemise(line.text, (codePoint) => face.covers(codePoint));
  const letterSpacing = spec.letterSpacing ?? 0;
  const features = featureValues(spec, letterSpacing);
  const glyphs: SetGlyph[] = [];
  const missing: MissingLetter[] = [];
  const source = (start: number, end: number): string => line.text.slice(origin[start], origin[end]);
  const em = (units: number): number => units / face.unitsPerEm;
  let pen = 0;

  for (const run of runs) {
    if (run.missing) {
      missing.push({ text: source(run.start, run.end), index: line.index + origin[run.start]! });
      pen += em(face.advanceOf(0)) + letterSpacing;
      continue;
    }
    const { start, end, level } = run;
    const shaped = face.shape({ text, start, end, rightToLeft: level % 2 === 1, features });
    const clusterEnds = endsOfClusters(shaped, end);
    let drawn = false;
    let letter: Omit<SetGlyph, 'baselineX'>[] = [];
    let letterStart = pen;
    shaped.forEach(({ id, cluster, advance, dx, dy }, i) => {
      const letters = source(cluster, clusterEnds.get(cluster)!);
      const outline = id === 0 ? [] : face.outline(id);
      letter.push({ id, text: letters, x: pen + em(dx), y: em(dy), advance: em(advance), outline });
      pen += em(advance);
      drawn ||= outline.length > 0;
      // Once per letter, however many glyphs draw it.
      if (shaped[i + 1]?.cluster === cluster) return;
      const baselineX = (letterStart + pen) / 2;
      glyphs.push(...letter.map((glyph) => ({ ...glyph, baselineX })));
      letter = [];
      pen += letterSpacing;
      letterStart = pen;
      if (!drawn && visible.test(letters)) missing.push({ text: letters, index: line.index + origin[cluster]! });
      drawn = false;
    });
  }
  // Spacing is between letters, not after the last.
  const advance = runs.length > 0 ? pen - letterSpacing : 0;
  return { glyphs, advance: Math.max(0, advance), missing };
}

/**
 * CSS Text 3, `letter-spacing`: with spacing, optional ligatures are off, required ones are not. Features that the spec
 * sets by tag come last and therefore win.
 */
function featureValues(spec: TextSpec, letterSpacing: number): Map<string, number> {
  const values = new Map<string, number>(
    letterSpacing === 0
      ? []
      : [
          ['liga', 0],
          ['clig', 0],
        ],
  );
  for (const [tag, value] of Object.entries(spec.features ?? {})) {
    if (/^[\x20-\x7e]{4}$/.test(tag)) values.set(tag, Number(value));
  }
  return values;
}

/** The end of each cluster's characters: the start of the next cluster of the run. */
function endsOfClusters(shaped: readonly { readonly cluster: number }[], runEnd: number): Map<number, number> {
  const starts = [...new Set(shaped.map((glyph) => glyph.cluster))].sort((a, b) => a - b);
  return new Map(starts.map((start, i) => [start, starts[i + 1] ?? runEnd]));
}
