/** The danger of cutting a material, by its name. */

import type { Severity } from '../../core/issue-kinds.ts';
import { memoizeRecent } from '../../core/recent.ts';
import { plainName, wholeWords } from './material-names.ts';
import { slipInMaterial } from './material-slips.ts';
import type { MaterialSlip } from './material-slips.ts';
import { askedMaterials, unsafeMaterials } from './unsafe-words.ts';
import type { UnsafeMaterial } from './unsafe-words.ts';

export interface Danger {
  /** The text that follows “PVC …”. */
  readonly why: string;
  /** An error if it must not be cut; otherwise it must be known better. */
  readonly severity: Severity;
  /** The word that was taken for another. */
  readonly slip?: MaterialSlip;
}

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

const namedDanger = (material: string): Danger | undefined => {
  const name = plainName(material);
  const found = (materials: readonly UnsafeMaterial[]) => {
    const named = (words: string) =>
      materials.find(
        (each) => each.words.test(words) && (each.beside?.test(words) ?? true) && !(each.unless?.test(name) ?? false),
      );
    return named(name) && named(withoutDenied(name));
  };
  const unsafe = found(unsafeMaterials);
  if (unsafe) return { why: unsafe.why, severity: 'error' };
  const asked = found(askedMaterials);
  return asked && { why: asked.why, severity: asked.severity ?? 'info' };
};

/** Also of a name with a slip of the hand in it: “vynil” is likely vinyl. */
export const dangerOf = memoizeRecent(50, (material: string): Danger | undefined => {
  const danger = namedDanger(material);
  if (danger) return danger;
  const slip = slipInMaterial(material);
  const meant = slip && namedDanger(slip.name);
  return slip && meant?.severity === 'error' ? { ...meant, slip } : undefined;
});
