/** Strokes of two letters that become one: drawn together until their serifs meet, narrow letters have nothing white left between them. */

import { translation, transform } from '../../geometry/affine.ts';
import { boundsOf } from '../../geometry/measure.ts';
import type { Region } from '../../geometry/types.ts';
import type { Lettering } from '../../tag/lettering/letters.ts';
import { lineAt, rowAt, rowsOf } from '../../tag/overlap/runs.ts';

/** Rows to an x-height. */
const fine = 40;

/** In x-heights: between which heights two strokes are looked at, and how far they were apart in the font. */
const band = { from: 0.15, to: 0.85, apart: 0.06 } as const;

/** They are one if so much of that height, where they were apart, is filled from the one to the other. By eye, in fourteen faces (our own judgement). */
const filledShare = 0.9;

/** They were apart in so much of it at least: no bowls or arms that only come near each other. */
const apartShare = 0.8;

/** So many pairs, and this share of all, make a word a fence of strokes; a single one is read. */
const many = { pairs: 2, share: 1 / 3 } as const;

/** The pairs of letters, where they are many. */
export function mergedStrokes(lettering: Lettering, shape: Region): string[] {
  const pairs = mergedPairs(lettering, shape);
  return pairs.length >= many.pairs && pairs.length >= many.share * (lettering.letters.length - 1) ? pairs : [];
}

function mergedPairs({ letters, xHeight }: Lettering, shape: Region): string[] {
  const pitch = xHeight / fine;
  return letters.flatMap((right, index): string[] => {
    const left = letters[index - 1];
    if (!left?.asSet || !right.asSet || right.opens || left.line !== right.line || right.baseline === undefined)
      return [];
    const base = right.baseline;
    const scanned = (region: Region, up = 0) => rowsOf(transform(region, translation(0, up - base)), pitch);
    const setUp = boundsOf(right.region)!.minY - boundsOf(right.asSet)!.minY;
    const [one, other] = [scanned(left.region), scanned(right.region)];
    const [oneSet, otherSet] = [scanned(left.asSet, setUp), scanned(right.asSet, setUp)];
    const rows = Array.from({ length: Math.round((band.to - band.from) * fine) }, (_, k) => {
      return rowAt(one, band.from * xHeight) + k;
    });
    const apart = rows.filter((row) => {
      const [end, start] = [lineAt(oneSet, row).at(-1), lineAt(otherSet, row)[0]];
      return end !== undefined && start !== undefined && start - end > band.apart * xHeight;
    });
    if (apart.length < apartShare * rows.length) return [];
    const made = scanned(shape);
    const filled = apart.filter((row) => {
      const [end = Infinity, start = -Infinity] = [lineAt(one, row).at(-1), lineAt(other, row)[0]];
      const line = lineAt(made, row);
      return line.some(
        (from, k) => k % 2 === 0 && from <= Math.min(end, start) && line[k + 1]! >= Math.max(end, start),
      );
    });
    return filled.length > filledShare * apart.length ? [`${left.text}${right.text}`] : [];
  });
}
