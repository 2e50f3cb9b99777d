/** Remedies that set lettering in another font: the last resort, because it changes the look. */

import { samePath } from '../../core/values.ts';
import { withLines } from '../../spec/model/shape-model.ts';
import type { Shape } from '../../spec/model/shape-model.ts';
import { withFractionsInFigures } from '../../text/fractions.ts';
import { bundledFonts } from '../../text/bundled-fonts.ts';
import type { Case, Remedy } from '../candidate.ts';
import { setting, shapeTitle, valueAt } from '../candidate.ts';

/** A font that has the letters that are missing, for those alone or for all; or other letters that say the same. */
export function withMissingLetters(at: Case): Remedy[] {
  const path = at.issue.path.slice(0, -1);
  const shape = withLines(at.tag.made.keys()).find((each) => samePath(each.path, path));
  return [...fallbackFonts(at, shape), ...equalWriting(at, shape), ...otherFonts(at, shape)];
}

/** Takes letters that the font lacks from a bundled one, the plainest first; all others stay as they are. */
function fallbackFonts(at: Case, shape: Shape | undefined): Remedy[] {
  if (shape?.generator.kind !== 'text') return [];
  const { source } = at.report;
  const path = [...shape.path, 'font'];
  const { start, end } = source.range(path);
  const isWritten = valueAt(at, path) !== undefined;
  const written = isWritten ? source.text.slice(start, end) : shape.generator.font;
  // A name that would end early within brackets.
  if (!written.startsWith('[') && /^[^"'].*[,[\]{}#]/.test(written)) return [];
  const known = new Set([shape.generator.font, ...(shape.generator.fallbacks ?? [])].map((name) => name.toLowerCase()));
  const others = bundledFonts.map(({ family }) => family).filter((family) => !known.has(family.toLowerCase()));
  return others
    .sort((a, b) => Number(b === plainest) - Number(a === plainest))
    .map((family) => ({
      words: 'Take the missing letters from another font',
      candidates: setting(
        at,
        shape.path,
        'font',
        written.startsWith('[') ? `${written.slice(0, -1)}, ${family}]` : `[${written}, ${family}]`,
      ),
    }));
}

/** Fractions and letters that are joined in one sign, as their figures and letters (Unicode, compatibility decomposition). */
function equalWriting(at: Case, shape: Shape | undefined): Remedy[] {
  if (!shape) return [];
  const written = valueAt(at, [...shape.path, 'text']);
  if (typeof written !== 'string') return [];
  const text = withFractionsInFigures(written).replace(/\P{ASCII}/gu, (sign) => {
    const parted = sign.normalize('NFKD');
    return parted !== sign.normalize('NFD') && /^\p{L}+$/u.test(parted) ? parted : sign;
  });
  if (text === written) return [];
  return [{ words: 'Write it in other letters', candidates: setting(at, shape.path, 'text', JSON.stringify(text)) }];
}

/** The one that goes with any other. */
const plainest = 'Nunito';

/** The bundled families; each looks different, so each is offered separately. */
export function otherFonts(at: Case, shape: Shape | undefined): Remedy[] {
  const { generator } = shape ?? {};
  if (!shape || (generator?.kind !== 'text' && generator?.kind !== 'strokes')) return [];
  const now = generator.kind === 'text' ? generator.font.trim().toLowerCase() : undefined;
  return bundledFonts
    .filter(({ family }) => family.toLowerCase() !== now)
    .map(({ family }) => ({
      words: `Set ${shapeTitle(shape)} in another font`,
      candidates: setting(at, shape.path, 'font', family),
    }));
}
