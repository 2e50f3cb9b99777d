/** Names of materials, made alike, and how words are looked for in them. */

import { withoutAccents } from '../../core/names.ts';

/** In lower case, without accents, with single spaces between runs of letters and digits. */
export function plainName(name: string): string {
  return withoutAccents(name.toLowerCase())
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim();
}

/**
 * Matches whole words, bounded by anything but letters: “3 mm PVC” and “PVC3” are PVC, an “abstract oak” is not ABS. An
 * “ä” of the words stands for “a” and “ae”, as German is written without its dots.
 */
export function wholeWords(words: string, flags = 'u'): RegExp {
  const plain = withoutAccents(words.replace(/[äöü]/g, (letter) => `${letter}e?`));
  return new RegExp(`(?<!\\p{L})(${plain})(?!\\p{L})`, flags);
}

/** Stems that count within longer words, as German and Dutch glue them: “Glasfaserplatte”; not “glasfaserfrei”. */
export function inAnyWord(...stems: readonly string[]): string {
  return `\\p{L}*(?:${stems.join('|')})(?!\\p{L}*(?:frei|vrij))\\p{L}*`;
}
