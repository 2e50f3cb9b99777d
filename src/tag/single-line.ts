/** Sets a text in letters of single strokes. */

import { translation } from '../geometry/affine.ts';
import { curveBounds, transformCurves } from '../geometry/curves.ts';
import type { CurveCommand } from '../geometry/curves.ts';
import { boundsOf, boxCentre } from '../geometry/measure.ts';
import type { Point } from '../geometry/types.ts';
import type { StrokesGenerator } from '../spec/model.ts';
import { capHeight, smallHeight, strokeLetter, strokesOf } from '../text/single-line-letters.ts';
import type { StrokeLetter } from '../text/single-line-letters.ts';
import { openOutline } from './curve-outline.ts';
import type { CurveOutline } from './curve-outline.ts';

/** The em in units of the letters, and the default line height in em. */
const em = 30;
const usualLineHeight = 1.15;

/** Depth of the descenders, and length of a line of typical words, in units of the letters. */
const deepest = -7;
const usualLength = 4 * capHeight;

/** Distance of an accent above its letter. */
const accentGap = 3;

/** Accents placed over the middle of a letter, by their combining characters; our own. */
const accents: Readonly<Record<string, string>> = {
  '\u0300': '-3,4 1,0',
  '\u0301': '-1,0 3,4',
  '\u0302': '-4,0 0,4 4,0',
  '\u0303': '-5,1 -3,3 -1,3 1,1 3,1 5,3',
  '\u0308': '-4,1 -3,0 -2,1 -3,2 -4,1;2,1 3,0 4,1 3,2 2,1',
  '\u030A': '0,0 2,1 3,3 2,5 0,6 -2,5 -3,3 -2,1 0,0',
  '\u030C': '-4,4 0,0 4,4',
};

/** From the baseline down. */
const cedilla = '0,0 2,-2 1,-4 -2,-4';

/** Signs that are drawn like others. */
const alike: Readonly<Record<string, string>> = {
  '’': "'",
  '‘': "'",
  '“': '"',
  '”': '"',
  '–': '-',
  '—': '-',
  '…': '...',
  '\u00A0': ' ',
};

/** Letters that the table lacks, of our own: the advance, the letter they are based on, and their strokes. */
const own: Readonly<Record<string, readonly [advance: number, of: string, strokes: string]>> = {
  '°': [12, '', '6,16 8,17 9,19 8,21 6,22 4,21 3,19 4,17 6,16'],
  '×': [22, '', '6,4 16,14;6,14 16,4'],
  '·': [10, '', '5,8 6,9 5,10 4,9 5,8'],
  ß: [20, '', '5,0 5,16 6,19 8,21 11,21 14,20 15,18 15,15 13,12 11,12;13,12 16,10 17,7 17,4 15,1 12,0 9,0'],
  ø: [19, 'o', '5,-2 19,16'],
  Ø: [22, 'O', '3,-2 20,23'],
};

/** The outline, and the letters that are not in the table, which are left out. */
export function strokesOutline({ text, size, lineHeight = usualLineHeight, align }: StrokesGenerator): {
  readonly outline: CurveOutline;
  readonly missing: readonly string[];
} {
  const missing = new Set<string>();
  const lines = text
    .trim()
    .split(/\r\n|[\n\u2028\u2029]/)
    .map((line) => lineOf(line.trim(), missing));
  const longest = Math.max(...lines.map(({ width }) => width));
  const share = { left: 0, center: 0.5, right: 1 }[align];
  const curves = lines.flatMap(({ strokes, width }, index) =>
    strokes.flatMap((stroke) => {
      const right = share * (longest - width);
      return stroke.map(({ x, y }, nth): CurveCommand => {
        return { type: nth === 0 ? 'M' : 'L', x: x + right, y: y - index * lineHeight * em };
      });
    }),
  );
  const box = curveBounds(curves);
  const middle = box ? boxCentre(box) : { x: 0, y: 0 };
  // Like all lettering, it has the middle of its box on the origin.
  const open = openOutline(transformCurves(curves, translation(-middle.x, -middle.y)));
  const lowest = (1 - lines.length) * lineHeight * em;
  const top = /\p{Ll}/u.test(text) ? smallHeight : capHeight;
  const outline: CurveOutline = {
    ...open,
    at: async (scaleX, scaleY, checkpoint) => {
      const y = (at: number): number => (at - middle.y) * scaleY;
      const usual = { deep: y(lowest + deepest), tall: y(capHeight), long: usualLength * scaleX };
      return { ...(await open.at(scaleX, scaleY, checkpoint)), band: { baseline: y(lowest), top: y(top), usual } };
    },
    heights: { capitals: capHeight, 'small letters': smallHeight },
    ...(size ? { ownScale: size.mm / { em, capitals: capHeight, 'small letters': smallHeight }[size.of] } : {}),
  };
  return { outline, missing: [...missing] };
}

function lineOf(line: string, missing: Set<string>): { readonly strokes: readonly Point[][]; readonly width: number } {
  const strokes: Point[][] = [];
  let x = 0;
  for (const sign of Array.from(line.normalize('NFC')).flatMap((letter) => Array.from(alike[letter] ?? letter))) {
    const letter = letterOf(sign);
    if (!letter) {
      missing.add(sign);
      continue;
    }
    const from = x;
    strokes.push(...letter.strokes.map((stroke) => stroke.map((point) => ({ x: from + point.x, y: point.y }))));
    x += letter.advance;
  }
  return { strokes, width: x };
}

/** The strokes of a letter; `undefined` if it is neither in the table nor composed from it. */
function letterOf(sign: string): StrokeLetter | undefined {
  const made = own[sign];
  if (made) {
    const [advance, of, strokes] = made;
    return { advance, strokes: [...(strokeLetter(of)?.strokes ?? []), ...strokesOf(strokes)] };
  }
  const [base = '', ...marks] = Array.from(sign.normalize('NFD'));
  const letter = strokeLetter(base);
  if (!letter || marks.length === 0) return letter;
  const above = marks.filter((mark) => mark in accents);
  const isBelow = marks.includes('\u0327');
  if (above.length + (isBelow ? 1 : 0) < marks.length) return undefined;
  // The dot gives way to an accent.
  const body = above.length > 0 && (base === 'i' || base === 'j') ? letter.strokes.slice(1) : letter.strokes;
  const box = boundsOf(body)!;
  const middle = (box.minX + box.maxX) / 2;
  const put = (accent: string, y: number): Point[][] =>
    strokesOf(accent).map((stroke) => stroke.map((point) => ({ x: middle + point.x, y: y + point.y })));
  return {
    advance: letter.advance,
    strokes: [
      ...body,
      ...above.flatMap((mark) => put(accents[mark]!, box.maxY + accentGap)),
      ...(isBelow ? put(cedilla, 0) : []),
    ],
  };
}
