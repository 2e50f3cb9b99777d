/** The letters of single strokes as a font: its outlines are open lines, to be followed and not filled. */

import type { CurvePath } from '../geometry/curves.ts';
import { boundsOf } from '../geometry/measure.ts';
import type { Point } from '../geometry/types.ts';
import type { FontFace } from './font-face.ts';
import { fractionOf } from './fractions.ts';
import { capHeight, smallHeight, strokeLetter, strokesOf } from './single-line-letters.ts';
import type { StrokeLetter } from './single-line-letters.ts';

/** The em in units of the letters, and the line height in em. */
const em = 30;
const lineHeight = 1.15;

/** Reach of brackets above the baseline and below it, in units of the letters. */
const highest = 25;
const deepest = -7;

/** Distance of an accent above its letter. */
const accentGap = 3;

/** Accents placed over the middle of a letter, by their combining characters; our own. */
const above: Readonly<Record<string, string>> = {
  '\u0300': '-3,4 1,0',
  '\u0301': '-1,0 3,4',
  '\u0302': '-4,0 0,4 4,0',
  '\u0303': '-5,1 -3,3 -1,3 1,1 3,1 5,3',
  '\u0304': '-4,2 4,2',
  '\u0306': '-4,4 -3,1 -1,0 1,0 3,1 4,4',
  '\u0307': '0,0 -1,1 0,2 1,1 0,0',
  '\u0308': '-4,1 -3,0 -2,1 -3,2 -4,1;2,1 3,0 4,1 3,2 2,1',
  '\u030A': '0,0 2,1 3,3 2,5 0,6 -2,5 -3,3 -2,1 0,0',
  '\u030B': '-4,0 -1,4;1,0 4,4',
  '\u030C': '-4,4 0,0 4,4',
};

/** Marks from the baseline down, likewise: cedilla, comma and hook. */
const below: Readonly<Record<string, string>> = {
  '\u0327': '0,0 2,-2 1,-4 -2,-4',
  '\u0326': '1,-2 1,-4 -1,-6',
  '\u0328': '0,0 -2,-2 -2,-4 0,-5 2,-4',
};

/** Signs that are drawn like others. */
const alike: Readonly<Record<string, string>> = {
  '’': "'",
  '‘': "'",
  '“': '"',
  '”': '"',
  '–': '-',
  '—': '-',
  '\u00A0': ' ',
  '\u2044': '/',
};

/** Letters that the table lacks, of our own: the advance, the letter they are based on, and their strokes. */
const own: Readonly<Record<string, readonly [advance: number, of: string, strokes: string]>> = {
  '°': [12, '', '6,16 8,17 9,19 8,21 6,22 4,21 3,19 4,17 6,16'],
  '×': [22, '', '6,4 16,14;6,14 16,4'],
  '·': [10, '', '5,8 6,9 5,10 4,9 5,8'],
  '…': [24, '', '4,2 3,1 4,0 5,1 4,2;12,2 11,1 12,0 13,1 12,2;20,2 19,1 20,0 21,1 20,2'],
  ß: [20, '', '5,0 5,16 6,19 8,21 11,21 14,20 15,18 15,15 13,12 11,12;13,12 16,10 17,7 17,4 15,1 12,0 9,0'],
  ø: [19, 'o', '5,-2 19,16'],
  Ø: [22, 'O', '3,-2 20,23'],
  ł: [8, 'l', '1,8 7,13'],
  Ł: [17, 'L', '1,8 12,14'],
  đ: [19, 'd', '13,17 22,17'],
  Đ: [21, 'D', '3,11 12,11'],
  þ: [19, 'p', '7,14 7,21'],
  Þ: [21, '', '7,21 7,0;7,16 16,16 19,15 20,14 21,12 21,9 20,7 19,6 16,5 7,5'],
  ð: [19, 'o', '15,13 11,18 6,22;6,17 15,21'],
  æ: [
    30,
    '',
    '6,12 8,14 13,14 15,12 15,3 13,1 11,0 8,0 6,2 6,5 8,8 15,8;15,8 26,8 26,11 24,13 22,14 19,14 17,13 15,11;15,3 17,1 19,0 22,0 24,1 26,3',
  ],
  œ: [31, 'o', '19,8 28,8 28,10 27,12 26,13 24,14 22,14 20,12 19,8;19,6 20,3 22,1 23,0 25,0 26,1 28,3'],
  Æ: [29, '', '4,0 14,21;14,21 14,0;7,7 14,7;14,21 26,21;14,11 22,11;14,0 26,0'],
  Œ: [
    30,
    '',
    '16,21 12,21 10,20 8,18 7,16 6,13 6,8 7,5 8,3 10,1 12,0 16,0;16,21 16,0;16,21 27,21;16,11 23,11;16,0 27,0',
  ],
  ı: [8, '', '4,14 4,0'],
};

/** Fractions: the size of their figures, and the width and distance of the slash between them; our own. */
const fractionScale = 0.6;
const slash = { wide: 10, after: -1, before: 5 };

/** ½ and its like, of their figures and a slash; `undefined` if the sign is no fraction. */
function fraction(sign: string): StrokeLetter | undefined {
  const sides = fractionOf(sign);
  if (!sides) return undefined;
  const [over, under] = [smallFigures(sides[0]), smallFigures(sides[1])];
  const foot = over.advance + slash.after;
  const below = foot + slash.before;
  return {
    advance: below + under.advance,
    strokes: [
      ...moved(over.strokes, 0, capHeight * (1 - fractionScale)),
      [
        { x: foot, y: 0 },
        { x: foot + slash.wide, y: capHeight },
      ],
      ...moved(under.strokes, below, 0),
    ],
  };
}

function smallFigures(figures: string): StrokeLetter {
  let advance = 0;
  const strokes: Point[][] = [];
  for (const figure of figures) {
    const letter = strokeLetter(figure)!;
    const small = letter.strokes.map((stroke) =>
      stroke.map(({ x, y }) => ({ x: x * fractionScale, y: y * fractionScale })),
    );
    strokes.push(...moved(small, advance, 0));
    advance += letter.advance * fractionScale;
  }
  return { advance, strokes };
}

function moved(strokes: StrokeLetter['strokes'], right: number, up: number): Point[][] {
  return strokes.map((stroke) => stroke.map(({ x, y }) => ({ x: x + right, y: y + up })));
}

const letters = new Map<number, StrokeLetter | undefined>();

/** `undefined` if it is neither in the table nor composed from it. */
function letterOf(codePoint: number): StrokeLetter | undefined {
  if (!letters.has(codePoint)) letters.set(codePoint, composed(String.fromCodePoint(codePoint)));
  return letters.get(codePoint);
}

function composed(written: string): StrokeLetter | undefined {
  const sign = alike[written] ?? written;
  const made = own[sign];
  if (made) {
    const [advance, of, strokes] = made;
    return { advance, strokes: [...(strokeLetter(of)?.strokes ?? []), ...strokesOf(strokes)] };
  }
  const parted = fraction(sign);
  if (parted) return parted;
  const [base = '', ...marks] = Array.from(sign.normalize('NFD'));
  const letter = strokeLetter(base);
  if (!letter || marks.length === 0) return letter;
  if (!marks.every((mark) => mark in above || mark in below)) return undefined;
  const isTopped = marks.some((mark) => mark in above);
  // The dot gives way to an accent.
  const body = isTopped && (base === 'i' || base === 'j') ? letter.strokes.slice(1) : letter.strokes;
  const box = boundsOf(body)!;
  const middle = (box.minX + box.maxX) / 2;
  const put = (accent: string, y: number): Point[][] => moved(strokesOf(accent), middle, y);
  return {
    advance: letter.advance,
    strokes: [
      ...body,
      ...marks.flatMap((mark) => (mark in above ? put(above[mark]!, box.maxY + accentGap) : put(below[mark]!, 0))),
    ],
  };
}

const outlines = new Map<number, CurvePath>();

/** In em. */
function outlineOf(glyph: number): CurvePath {
  let outline = outlines.get(glyph);
  if (!outline) {
    outline = strokesAt(glyph, 1 / em);
    outlines.set(glyph, outline);
  }
  return outline;
}

function strokesAt(glyph: number, scale: number): CurvePath {
  const { strokes = [] } = letterOf(glyph) ?? {};
  return strokes.flatMap((stroke) =>
    stroke.map(({ x, y }, nth) => ({ type: nth === 0 ? ('M' as const) : ('L' as const), x: x * scale, y: y * scale })),
  );
}

const advanceOf = (glyph: number): number => letterOf(glyph)?.advance ?? 0;

/** Its glyphs are numbered by code point. Features and direction change nothing: it has Latin letters alone. */
export const singleLineFace: FontFace = {
  id: 'single line',
  family: 'single strokes',
  style: 'Regular',
  weight: 400,
  italic: false,
  licence: {},
  unitsPerEm: em,
  ascender: highest / em,
  descender: deepest / em,
  lineHeight,
  xHeight: smallHeight / em,
  capHeight: capHeight / em,
  covers: (codePoint) => letterOf(codePoint) !== undefined,
  shape: ({ text, start, end }) => {
    let cluster = start;
    return Array.from(text.slice(start, end), (letter) => {
      const id = letter.codePointAt(0)!;
      const glyph = { id, cluster, advance: advanceOf(id), dx: 0, dy: 0 };
      cluster += letter.length;
      return glyph;
    });
  },
  advanceOf,
  outlineOf: (glyph) => strokesAt(glyph, 1),
  outline: outlineOf,
};
