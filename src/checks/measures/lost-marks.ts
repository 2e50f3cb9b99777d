/** Dots and accents that melt into their own letter, so that an i has no dot, or two dots are one bump. */

import { listedWithCounts } from '../../core/names.ts';
import { clippedToBox } from '../../geometry/clip-to-box.ts';
import { difference, intersection, normalise, offset, union } from '../../geometry/clipper.ts';
import { area, boundsOf, widened } from '../../geometry/measure.ts';
import { simplified } from '../../geometry/simplify.ts';
import type { Region } from '../../geometry/types.ts';
import type { Letter, Lettering } from '../../tag/lettering/letters.ts';
import { hasMarks, marksAbove } from '../../tag/lettering/marks-above.ts';

/** A mark is told from its letter by the white in the notches round it that a disc of this radius, in x-heights, leaves out. */
const discShare = 0.5;

/** Only this near to the mark, in x-heights. */
const nearShare = 0.12;

/**
 * Less white than this, as a share of the marks of a letter, and they are lost: two dots, told from each other as well, need more than a
 * single mark. By eye, on names in fourteen faces (our own judgement).
 */
const leastWhite = { single: 0.015, several: 0.13 } as const;

/** Tolerance of outlines, in x-heights: it changes that share by a hundredth at most. */
const toleranceShare = 0.001;

/**
 * A mark over its letter that has less white than the first on one side, as a share of it, and more than the second on the other, stands far above its
 * letter and is part of the one that it meets there, no more than the third away from it, in x-heights: the same. Near to its letter it has little white on
 * either side and is told from both; and one that meets nothing there but its own neck is seen (“José” in a slanted face).
 */
const beside = { least: 0.005, far: 0.12, near: 0.16 } as const;

/** The letters with marks that are lost in `shape`, what is made of the lettering; only if letters or marks were moved. */
export function lostMarks({ letters, xHeight, grow }: Lettering, shape: Region): Letter[] {
  return letters.filter((letter) => {
    const { text, region, asSet, heldByMark = false } = letter;
    const marks = asSet && hasMarks(text) ? marksAbove(region) : [];
    if (marks.length === 0) return false;
    const { all, sides } = whiteRound(marks, region, shape, { xHeight, grow });
    const isSingle = marks.length === 1;
    const isTaken = Math.min(...sides) < beside.least && Math.max(...sides) > beside.far;
    const meets = (): boolean => meetsOther(marks[0]!, letter, letters, { xHeight, grow });
    if (isSingle && isTaken && (heldByMark || (isOver(marks[0]!, region) && meets()))) return true;
    return all < (isSingle ? leastWhite.single : leastWhite.several);
  });
}

/** Whether a mark is as good as in touch with a letter that is not its own. */
function meetsOther(
  mark: Region,
  own: Letter,
  letters: readonly Letter[],
  { xHeight, grow }: Pick<Lettering, 'xHeight' | 'grow'>,
): boolean {
  const around = offset(mark, 2 * Math.max(0, grow) + beside.near * xHeight, 'round', toleranceShare * xHeight);
  const box = boundsOf(around);
  return letters.some(
    (other) => other !== own && !!box && intersection(around, clippedToBox(other.region, box)).length > 0,
  );
}

/** Whether a mark is over its letter, and not beside it as the caron of a ď is. */
function isOver(mark: Region, letter: Region): boolean {
  const own = new Set(mark);
  const [above, base] = [boundsOf(mark)!, boundsOf(letter.filter((ring) => !own.has(ring)))];
  return !!base && above.minX < base.maxX && above.maxX > base.minX;
}

/**
 * What is white between marks and their letter, and of that what lies to the left and to the right, as shares of the marks; the white of the
 * letter's own bowls, which it has without them, is none.
 */
function whiteRound(
  marks: readonly Region[],
  letter: Region,
  shape: Region,
  { xHeight, grow }: Pick<Lettering, 'xHeight' | 'grow'>,
): { readonly all: number; readonly sides: readonly [number, number] } {
  const disc = discShare * xHeight;
  const tolerance = toleranceShare * xHeight;
  const made = offset(union(marks), grow, 'round', tolerance);
  const near = offset(made, nearShare * xHeight, 'round', tolerance);
  const box = boundsOf(near);
  if (!box) return { all: 0, sides: [0, 0] };
  // What is further off than two discs leaves the notches as they are.
  const about = widened(box, 2 * disc + Math.abs(grow));
  const filled = (region: Region): Region => {
    const drawn = normalise(simplified(clippedToBox(region, about), tolerance));
    return offset(offset(drawn, grow + disc, 'round', tolerance), -disc, 'round', tolerance);
  };
  const own = new Set(marks.flat());
  const bowls = filled(letter.filter((ring) => !own.has(ring)));
  const notches = intersection(difference(filled(letter), [clippedToBox(shape, box), bowls]), near);
  const middle = (box.minX + box.maxX) / 2;
  const shareOf = (region: Region): number => area(region) / area(made);
  const [left, right] = [
    { ...box, maxX: middle },
    { ...box, minX: middle },
  ].map((side) => clippedToBox(notches, side));
  return { all: shareOf(notches), sides: [shareOf(left!), shareOf(right!)] };
}

/** Such as `the dot of the “i” hardly stands out from the letter`. */
export function lostInWords(letters: readonly Letter[]): string {
  const [one] = letters;
  const isOne = one !== undefined && letters.length === 1;
  if (isOne)
    return `${marksOf(one)} of the “${one.text}” hardly ${marksAbove(one.region).length === 1 ? 'stands' : 'stand'} out from the letter`;
  return `the dots or accents of ${listedWithCounts(letters.map(({ text }) => text))} hardly stand out from their letters`;
}

function marksOf({ text, region }: Letter): string {
  const mark = /(?:[ij]|\u0307|\u0308)$/iu.test(text.normalize('NFD')) ? 'dot' : 'accent';
  return `the ${mark}${marksAbove(region).length === 1 ? '' : 's'}`;
}
