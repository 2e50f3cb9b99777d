/** A capital I that the foot of an L runs into: the two are a “U”, and of “LIAM” nothing is left but “LAM”. */

import { clippedToBox } from '../../geometry/clip-to-box.ts';
import { translation, transform } from '../../geometry/affine.ts';
import { area, boundsOf } from '../../geometry/measure.ts';
import type { Region } from '../../geometry/types.ts';
import type { Letter, Lettering } from '../../tag/lettering/letters.ts';
import { isBareStem } from '../../tag/overlap/reading.ts';
import { lineAt, rowAt, rowsOf } from '../../tag/overlap/runs.ts';

/** Rows to an x-height. */
const fine = 60;

/**
 * In heights of the I: up to which height what joins it is a foot. In x-heights: how much wider an I with serifs is than its stem, and the width of the strip beside it that is looked at. So much of that is filled
 * at least. By OCR of nine words in five sans faces, which it reads without: of LIAM, LINA, LIZ and OLIVIA a quarter of the readings are left.
 */
const foot = { high: 0.12, serif: 0.1, strip: 0.03, filled: 0.5 } as const;

/** Behind one of these in the same word the L is read, and the I with it: of FELIX, AMELIA and ELIAS OCR reads nine in ten. */
const telling = /^[EL]$/u;

function isTold(before: Letter | undefined, left: Letter | undefined): boolean {
  return !!before && !!left && !left.opens && before.line === left.line && telling.test(before.text);
}

/** The two letters; `undefined` if there are none. */
export function footedStem({ letters, xHeight, grow }: Lettering, shape: Region): string | undefined {
  const found = letters.find((right, index) => {
    const left = letters[index - 1];
    if (isTold(letters[index - 2], left)) return false;
    if (left?.text !== 'L' || right.text !== 'I' || !right.asSet || right.opens || left.line !== right.line)
      return false;
    if (right.baseline === undefined) return false;
    const rows = rowsOf(transform(right.region, translation(0, -right.baseline)), xHeight / fine);
    const { minX, maxX, maxY } = boundsOf(right.region)!;
    const [from = 0, to = 0] = lineAt(rows, rowAt(rows, (maxY - right.baseline) / 2));
    // With serifs it is an I at once.
    if (!isBareStem(rows, xHeight) || maxX - minX > to - from + foot.serif * xHeight) return false;
    const edge = minX - grow;
    const width = foot.strip * xHeight;
    const height = foot.high * (maxY - right.baseline);
    const strip = { minX: edge - width, maxX: edge, minY: right.baseline, maxY: right.baseline + height };
    return area(clippedToBox(shape, strip)) > foot.filled * width * height;
  });
  return found && `L${found.text}`;
}
