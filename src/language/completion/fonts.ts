/** Fonts that a spec can name, each with a note. */

import { bundledFonts } from '../../text/bundled-fonts.ts';
import { singleLine } from '../../spec/read/single-line.ts';
import type { FontStyle } from '../../text/font-match.ts';
import type { SystemFonts } from '../../text/system-fonts.ts';
import type { FontNote } from '../workspace-names.ts';

/** Bundled fonts first; `installed` is absent until it has been read. */
export function fontNotes(installed?: SystemFonts): FontNote[] {
  const bundled = bundledFonts.map(({ family, faces }) => ({
    family,
    note: `bundled, SIL Open Font License; ${stylesText(faces)}`,
    ...weightsOf(faces),
  }));
  const own = new Set(bundled.map(({ family }) => family.toLowerCase()));
  const others = (installed?.families ?? []).filter((family) => !own.has(family.toLowerCase()));
  return [
    ...bundled,
    { family: singleLine, note: 'letters of single strokes, to score or to engrave along' },
    ...others.map((family): FontNote => {
      const faces = installed?.byName.get(family.toLowerCase()) ?? [];
      return { family, note: `installed; ${stylesText(faces)}`, ...weightsOf(faces) };
    }),
  ];
}

/** “600, 800, italic”, or “100 to 900” for a variable font. */
function stylesText(faces: readonly FontStyle[]): string {
  const range = faces.map(({ weight }) => weight).find((weight) => typeof weight !== 'number');
  const weights = range ? `${range.min} to ${range.max}` : fixedWeights(faces).join(', ');
  const word = range || fixedWeights(faces).length > 1 ? 'weights' : 'weight';
  return `${word} ${weights}${faces.some(({ italic }) => italic) ? ', italic' : ''}`;
}

function weightsOf(faces: readonly FontStyle[]): Pick<FontNote, 'weights'> {
  const range = faces.map(({ weight }) => weight).find((weight) => typeof weight !== 'number');
  if (!range) return { weights: fixedWeights(faces) };
  const hundreds = [100, 200, 300, 400, 500, 600, 700, 800, 900];
  return { weights: hundreds.filter((weight) => weight >= range.min && weight <= range.max) };
}

function fixedWeights(faces: readonly FontStyle[]): number[] {
  const weights = faces.flatMap(({ weight }) => (typeof weight === 'number' ? [weight] : []));
  return [...new Set(weights)].sort((a, b) => a - b);
}
