/** Materials that must not be laser cut, and those of which it must be known what they are. */

import type { Finding } from '../core/issue.ts';
import { memoizeRecent } from '../core/recent.ts';
import type { Check } from './check.ts';
import { plainName, wholeWords } from './measures/material-names.ts';
import { stockPath } from './measures/stock-path.ts';
import { askedMaterials, unsafeMaterials } from './measures/unsafe-words.ts';
import type { UnsafeMaterial } from './measures/unsafe-words.ts';

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
      `(no|non|not|without|free (of|from)|ohne|keine?|nicht|sans|pas|sin|senza|zonder|geen|niet) (any )?${listed}`,
    'gu',
  );
  return name.replace(denied, ' ');
}

let denied: RegExp | undefined;

export const unsafeMaterial: Check = ({ stock, pieces }): Finding[] => {
  const found = dangerOf(stock.material ?? '');
  if (found === undefined) return [];
  const { why, mustNot } = found;
  const [first, last] = mustNot
    ? ['Do not laser cut this: ', 'If you are not sure what a sheet is, do not cut it; your']
    : ['', 'Your'];
  return [
    {
      code: 'unsafe-material',
      severity: mustNot ? 'error' : 'info',
      path: stockPath(pieces, 'material'),
      message: `${first}“${stock.material}” ${why}. ${last} machine’s manual and your supplier’s data sheet say more.`,
    },
  ];
};

const dangerOf = memoizeRecent(50, (material): { why: string; mustNot: boolean } | undefined => {
  const name = plainName(material);
  const found = (materials: readonly UnsafeMaterial[]) => {
    const named = (words: string) =>
      materials.find(
        (each) => each.words.test(words) && (each.beside?.test(words) ?? true) && !(each.unless?.test(name) ?? false),
      );
    return named(name) && named(withoutDenied(name))?.why;
  };
  const why = found(unsafeMaterials);
  if (why !== undefined) return { why, mustNot: true };
  const question = found(askedMaterials);
  return question === undefined ? undefined : { why: question, mustNot: false };
});
