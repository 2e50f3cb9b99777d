/** Stand-ins for fonts and drawings that cannot be loaded, to show where their shapes would be. */

import type { TagModel } from '../spec/model/model.ts';
import type { TextGenerator } from '../spec/model/shape-model.ts';
import type { FontFace } from '../text/font-face.ts';
import type { FontLibrary } from '../text/font-library.ts';
import { everyShape, type Loaded } from './load.ts';
import type { LoadedDrawing } from './resources.ts';
import { parseSvgDrawing } from './drawing/svg-drawing.ts';

/** A plain face, so that nobody takes it for the one that was asked for; it is bundled. */
const plainFamily = 'Nunito';

/** Nothing is known of such a drawing except that there is to be one. */
const frameSvg = '<svg width="30mm" height="30mm" viewBox="0 0 30 30"><path d="M0 0H30V30H0ZM2 2V28H28V2Z"/></svg>';

/** The loaded files with stand-ins for missing ones; `undefined` if none is missing. */
export async function withSubstitutes(
  model: TagModel,
  loaded: Loaded,
  library: FontLibrary,
): Promise<Loaded | undefined> {
  const fonts = new Map<TextGenerator, FontFace>(loaded.fonts);
  const drawings = new Map(loaded.drawings);
  for (const { generator } of everyShape(model)) {
    if (generator.kind === 'text' && !fonts.has(generator)) {
      const { weight, italic } = generator;
      const answer = await library.load({ family: plainFamily, weight, italic });
      if ('face' in answer) fonts.set(generator, answer.face);
    } else if (generator.kind === 'drawing' && !drawings.has(generator.file)) drawings.set(generator.file, frame());
  }
  const isWhole = fonts.size === loaded.fonts.size && drawings.size === loaded.drawings.size;
  return isWhole ? undefined : { ...loaded, fonts, drawings };
}

function frame(): LoadedDrawing {
  const drawing = parseSvgDrawing(frameSvg);
  return { id: 'stand-in', shapes: [], lines: [], leftOut: {}, ...('problem' in drawing ? {} : drawing) };
}
