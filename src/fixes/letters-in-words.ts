/** What has become of the letters of a text, as a maker would say it. */

import { listed } from '../core/names.ts';

export interface LettersChange {
  /** How many letters there are. */
  readonly of: number;
  /** Those of another shape. */
  readonly redrawn: readonly string[];
  /** Those whose dots or accents alone have moved. */
  readonly marked: readonly string[];
  /** How much larger; negative where they are smaller. */
  readonly larger: number;
  readonly heavier: number;
  readonly spaced?: 'closer together' | 'further apart' | undefined;
}

/** Below these shares nobody would notice. */
export const seenShare = 0.02;

/** More letters than this are not counted off. */
const mostNamed = 3;

/** Whether most letters are drawn otherwise, as in another font: then they are other letters, not the same ones changed. */
export function areOthers(redrawn: readonly string[], of: number): boolean {
  return redrawn.length > of / 2;
}

/** Such as “letters 9 % heavier and closer together”; empty where nobody would notice. */
export function lettersInWords(change: LettersChange): string[] {
  const { of, redrawn, marked, larger, heavier, spaced } = change;
  const isWhole = areOthers(redrawn, of);
  const all = [
    ...(isWhole ? ['of another shape'] : []),
    ...share(larger, 'larger', 'smaller'),
    ...share(heavier, 'heavier', 'lighter'),
    ...(spaced && !isWhole ? [spaced] : []),
  ];
  return [
    ...(all.length > 0 ? [`letters ${listed(all)}`] : []),
    ...(isWhole || redrawn.length === 0 ? [] : [some(redrawn)]),
    ...(marked.length > 0 ? [marks(marked)] : []),
  ];
}

function share(by: number, more: string, less: string): string[] {
  return Math.abs(by) < seenShare ? [] : [`${Math.round(100 * Math.abs(by))} % ${by > 0 ? more : less}`];
}

function some(letters: readonly string[]): string {
  const names = [...new Set(letters)].map((letter) => `“${letter}”`);
  if (names.length > mostNamed) return 'some letters of another shape';
  return `${listed(names)} of another shape`;
}

function marks(letters: readonly string[]): string {
  const dots = letters.filter((letter) => /[ij]/i.test(letter)).length;
  const what = dots === 0 ? 'accent' : dots === letters.length ? 'dot' : 'dot or accent';
  return letters.length === 1 ? `${what} of “${letters[0]!}” moved` : `${what.replace(' or ', 's and ')}s moved`;
}
