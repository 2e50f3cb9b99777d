/** Remedies that set lettering in another font: the last resort, because it changes the look. */

import type { Shape } from '../../spec/model.ts';
import { bundledFonts } from '../../text/bundled-fonts.ts';
import type { Case, Remedy } from '../candidate.ts';
import { shapeTitle, setting } from '../candidate.ts';

/** The bundled families; each looks different, so each is offered separately. */
export function otherFonts(at: Case, shape: Shape | undefined): Remedy[] {
  if (shape?.generator.kind !== 'text') return [];
  const now = shape.generator.font.trim().toLowerCase();
  return bundledFonts
    .filter(({ family }) => family.toLowerCase() !== now)
    .map(({ family }) => ({
      words: `Set ${shapeTitle(shape)} in another font`,
      candidates: setting(at, shape.path, 'font', family),
    }));
}
