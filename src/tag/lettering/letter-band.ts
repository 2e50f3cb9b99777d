/** How far up and down lettering reaches: of its own letters, and of any letters. */

import { curveBounds } from '../../geometry/curves.ts';
import type { Bounds } from '../../geometry/types.ts';
import { hasSmallLetters } from '../../spec/read/evenly.ts';
import type { Evenly } from '../../spec/model/shape-model.ts';
import type { FontFace } from '../../text/font-face.ts';
import type { TextLayout } from '../../text/text-layout.ts';
import type { LetterBand } from '../made-shape.ts';

/** Letters that descend and ascend as far as most do. */
const deepAndTall = 'gpydH';

/** Length of a line of typical words, in capital heights; our own judgement. */
const usualLength = 4;

/** Extent of letters below the lowest and above the highest baseline, whatever the letters of this very text. */
function usualOf(face: FontFace, lowestLine: number, highestLine: number, evenly: Evenly): LetterBand['usual'] {
  const { deep, high, widest } = evenReach(face, evenly);
  const long = usualLength * face.capHeight;
  return {
    deep: lowestLine - deep,
    tall: highestLine + high,
    long: evenly === 'any words' ? long : Math.min(long, evenly.longest * widest),
  };
}

/** How far below and above the baseline a line reaches whatever letters of those it has, and how wide they are, in em. */
interface Reach {
  readonly deep: number;
  readonly high: number;
  readonly widest: number;
}

/** The same on each tag of a batch. */
const reaches = new WeakMap<FontFace, Map<string, Reach>>();

export function evenReach(face: FontFace, evenly: Evenly): Reach {
  // A line of signs is as high as a capital.
  const letters = evenly === 'any words' ? deepAndTall : `H${evenly.letters}`;
  const known = reaches.get(face) ?? new Map<string, Reach>();
  reaches.set(face, known);
  const reach = known.get(letters) ?? reachOf(face, letters);
  known.set(letters, reach);
  return reach;
}

function reachOf(face: FontFace, letters: string): Reach {
  const { minY, maxY } = inkOf(face, letters);
  const widths = Array.from(letters, (letter) => inkOf(face, letter)).map(({ minX, maxX }) => maxX - minX);
  return { deep: Math.max(0, -minY), high: maxY, widest: Math.max(...widths) };
}

/** Bounds of the ink of some letters, in em from the baseline. */
export function inkOf(face: FontFace, letters: string): Bounds {
  const nothing = { minX: 0, minY: face.descender, maxX: 0, maxY: face.capHeight };
  const glyphs = face.shape({ text: letters, start: 0, end: letters.length, rightToLeft: false, features: new Map() });
  return curveBounds(glyphs.flatMap(({ id }) => face.outline(id))) ?? nothing;
}

/** From the lowest baseline to the x-height of the highest line, or to its capital height if it has only capitals. */
export function letterBand(face: FontFace, { glyphs, xHeight, capHeight }: TextLayout, evenly?: Evenly): LetterBand {
  const inked = glyphs.filter((glyph) => /\S/.test(glyph.text));
  const baselines = inked.length > 0 ? inked.map((glyph) => glyph.y) : [0];
  const hasSmall = inked.some((glyph) => hasSmallLetters(glyph.text));
  const highest = -lowest(baselines.map((y) => -y));
  return {
    baseline: lowest(baselines),
    top: highest + (hasSmall ? xHeight : capHeight),
    ...(evenly
      ? {
          even: {
            head: highest + capHeight,
            hasSmall: hasSmall || evenly === 'any words' || hasSmallLetters(evenly.letters),
          },
        }
      : {}),
    usual: usualOf(face, lowest(baselines), highest, evenly ?? 'any words'),
  };
}

function lowest(values: readonly number[]): number {
  return values.reduce((least, value) => Math.min(least, value));
}
