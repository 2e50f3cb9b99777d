/** Words in the name of a material that are a slip of the hand: “brich” for birch, “vynil” for vinyl. */

import { memoizeRecent } from '../../core/recent.ts';
import { withoutAccents } from '../../core/names.ts';
import { webDefaults } from '../../spec/model/min-web-defaults.ts';
import { isMeantAs, nearestWords } from '../../spec/schema/suggest.ts';

/** Materials that must not be cut, by the word that is misspelt in them. */
const unsafeWords =
  'vinyl polycarbonate neoprene chloroprene polyurethane styrofoam fibreglass fiberglass teflon epoxy melamine';

/** Shorter words have too many neighbours. */
const fewestLetters = 5;

const known = [
  ...new Set([...webDefaults.flatMap(({ names }) => names.flat()), ...unsafeWords.split(' '), 'laminate']),
].filter((word) => word.length >= fewestLetters);

/** Words that are right, near as they are to another: of colours, of other materials, and of other languages. */
const right = new Set(
  [
    'linen grass class umber elder march marble popular grape brass canvas plane plain',
    'papier papel bambou bambu linde olivo ceder acrilico acrilica acrylique sapelli bamboe mahagoni sycomore',
  ]
    .join(' ')
    .split(' '),
);

export interface MaterialSlip {
  /** The first such word. */
  readonly written: string;
  readonly meant: string;
  /** The name with all of its words as they are meant. */
  readonly name: string;
}

/** `undefined` if all words of a material's name are right, or are nothing like a known one. */
export const slipInMaterial = memoizeRecent(50, (material: string): MaterialSlip | undefined => {
  let first: Pick<MaterialSlip, 'written' | 'meant'> | undefined;
  const name = material.replace(/\p{L}+/gu, (written) => {
    const meant = meantBy(withoutAccents(written.toLowerCase()));
    if (meant === undefined) return written;
    first ??= { written, meant };
    return meant;
  });
  return first && { ...first, name };
});

function meantBy(word: string): string | undefined {
  if (word.length < fewestLetters || right.has(word) || known.some((each) => isFormOf(word, each))) return undefined;
  const near = known.filter((each) => {
    const isAsLong = Math.abs(each.length - word.length) <= 1;
    return isAsLong && each[0] === word[0] && isMeantAs(alike(word), alike(each));
  });
  return nearestWords(word, near)[0] ?? near[0];
}

/** A y and an i are mistaken for each other so often that they count as one. */
function alike(word: string): string {
  return word.replaceAll('y', 'i');
}

/** “Maples”, “plywoods”; and what is written as one word, such as “cherrywood”. */
function isFormOf(word: string, base: string): boolean {
  return word.startsWith(base) || word.endsWith(base);
}
