/** Apostrophes and closing marks that are no longer read as such once they are joined to small letters: as an accent, as the stem of a “d”, or as nothing. */

import { offset } from '../../geometry/clipper.ts';
import { translation, transform } from '../../geometry/affine.ts';
import type { Region } from '../../geometry/types.ts';
import type { Letter, Lettering } from '../../tag/lettering/letters.ts';
import { isAsTall } from '../../tag/overlap/hanging-signs.ts';
import { columnsOf, rowsOf } from '../../tag/overlap/runs.ts';
import { signReading } from '../../tag/overlap/sign-reading.ts';
import { isApostrophe } from './fused-marks.ts';

/** Rows and columns to an x-height. */
const fine = 60;

/** A sign is an accent if its foot stands so far over a letter, in x-heights, and lost if so much of its height is one with one. By eye, on names in fifteen faces (our own judgement). */
const limits = { inside: 0.12, merged: 0.6 } as const;

export interface MisreadSign {
  /** The letter beside it. */
  readonly letter: string;
  readonly as: 'accent' | 'part';
}

/** Of letters that were moved; beside a letter as tall as itself a sign is read. */
export function misreadSigns({ letters, xHeight, grow }: Lettering): MisreadSign[] {
  return letters.flatMap((letter, index): MisreadSign[] => {
    const { text, asSet, baseline, line, opens } = letter;
    if (!asSet || baseline === undefined || !isApostrophe(text)) return [];
    const pitch = xHeight / fine;
    const scanned = (each: Letter) => {
      const base: Region = transform(offset(each.region, grow, 'round', pitch / 4), translation(0, -baseline));
      return { base, rows: rowsOf(base, pitch), columns: columnsOf(base, pitch), at: { x: 0, y: 0 } };
    };
    const [before, after] = [letters[index - 1], letters[index + 1]];
    const sign = scanned(letter);
    const besideIt = (other: Letter | undefined, isApart = false) => {
      if (!other || isApart || other.line !== line) return undefined;
      const beside = scanned(other);
      return isAsTall(beside, sign) ? undefined : beside;
    };
    const sides = { before: besideIt(before, opens), after: besideIt(after, after?.opens) };
    const { inside, merged, over } = signReading(sign, { x: 0, y: 0 }, sides, xHeight);
    const beside = (over === 'after' ? after : before) ?? after;
    if (!beside || (inside <= limits.inside && merged <= limits.merged)) return [];
    return [{ letter: beside.text, as: inside > limits.inside ? 'accent' : 'part' }];
  });
}

/** Such as `the apostrophe reads as an accent of the “s”`. */
export function misreadSignsInWords([first, ...others]: readonly MisreadSign[]): string {
  const more = others.length > 0 ? ', and so does another' : '';
  return `the apostrophe reads as ${first!.as === 'accent' ? 'an accent' : 'a part'} of the “${first!.letter}”${more}`;
}
