/** A word of a text that is plainly spoiled, where the text as a whole is not: its other words do not make it readable. */

import type { Letter, Lettering } from '../../tag/lettering/letters.ts';
import { areAllClosed, isPlainlySpoiled, readability } from './readability.ts';
import type { BeamEffect, Readability } from './readability.ts';

/** What parts words for the eye without a space between them. */
const parting = /^[\p{Pd}&+/·]$/u;

export interface SpoiledWord {
  readonly word: string;
  readonly read: Readability;
}

/** @param whole What the whole text reads as: only where it has closed counters has a word any. */
export function spoiledWord(lettering: Lettering, effect: BeamEffect, whole: Readability): SpoiledWord | undefined {
  if (whole.counters.drawn - whole.counters.open < 2) return undefined;
  const words = wordsOf(lettering.letters);
  if (words.length < 2) return undefined;
  const { xHeight, grow, slid, hairline } = lettering;
  for (const letters of words) {
    const read = readability({ letters, xHeight, grow, slid, hairline }, effect);
    if (read && areAllClosed(read) && isPlainlySpoiled(read))
      return { word: letters.map(({ text }) => text).join(''), read };
  }
  return undefined;
}

function wordsOf(letters: readonly Letter[]): Letter[][] {
  const words: Letter[][] = [];
  let isOpen = false;
  for (const letter of letters) {
    if (parting.test(letter.text)) isOpen = false;
    else if (isOpen && !letter.opens) words.at(-1)!.push(letter);
    else {
      words.push([letter]);
      isOpen = true;
    }
  }
  return words;
}
