/** Materials that must not be laser cut. */

import type { Finding } from '../core/issue.ts';
import { memoizeRecent } from '../core/recent.ts';
import type { Check } from './check.ts';
import { stockPath } from './stock-path.ts';
import { unsafeMaterials, wholeWords } from './unsafe-words.ts';

/** A single word, or one of the listed names of several words. */
const thing = `${unsafeMaterials.map(({ words }) => words.source).join('|')}|\\p{L}+`;
const listed = `(${thing})( n?(or|oder|ou|und|and|y|o|e|of|en) (${thing}))*`;

/**
 * Exclusions in the name of a material: “PVC-free”, “no vinyl”, “ohne PVC oder Epoxid”. Compiling the expression takes
 * longer than making a tag, and few names need it.
 */
function withoutDenied(name: string): string {
  denied ??= wholeWords(
    `(${thing}) (free|frei\\p{L}*|vrije?)(?! (of|from|standing))|` +
      `(no|non|not|without|free (of|from)|ohne|keine?|sans|sin|senza|zonder) (any )?${listed}`,
    'gu',
  );
  return name.replace(denied, ' ');
}

let denied: RegExp | undefined;

export const unsafeMaterial: Check = ({ stock, pieces }): Finding[] => {
  const why = dangerOf(stock.material ?? '');
  if (why === undefined) return [];
  return [
    {
      code: 'unsafe-material',
      severity: 'error',
      path: stockPath(pieces, 'material'),
      message: `Do not laser cut this: “${stock.material}” ${why}. If you are not sure what a sheet is, do not cut it; your machine’s manual and your supplier’s data sheet say more.`,
    },
  ];
};

const dangerOf = memoizeRecent(50, (material): string | undefined => {
  const name = material
    .normalize('NFKC')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, ' ');
  const unsafeIn = (words: string) => unsafeMaterials.find((each) => each.words.test(words));
  return unsafeIn(name) && unsafeIn(withoutDenied(name))?.why;
});
