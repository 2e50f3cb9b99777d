/** The bundled fonts as they lie in their packages, so that tests and tools run without a build. */

import { readFile } from 'node:fs/promises';
import { bundledFonts } from '../../src/text/bundled-fonts.ts';
import type { FontFiles } from '../../src/text/font-files.ts';
import { nodeFontFiles } from '../../src/text/node-font-files.ts';

const modules = new URL('../../node_modules/', import.meta.url);

/** A file of a font package, such as `fontFile('roboto', 'latin', 400)`. */
export function packagedFont(slug: string, subset = 'latin', weight = 400): Promise<Uint8Array> {
  return readFile(new URL(`@fontsource/${slug}/files/${slug}-${subset}-${weight}-normal.woff`, modules));
}

/** Without the fonts of the computer, which differ from one to the next. */
export function packagedFontFiles(): FontFiles {
  const node = nodeFontFiles('');
  return {
    ...node,
    bundled: (name) => {
      const font = bundledFonts.find(({ faces }) => faces.some(({ files }) => files.includes(name)));
      if (!font) throw new Error(`No package has ${name}.`);
      return readFile(new URL(`${font.package}/files/${name}`, modules));
    },
    systemFonts: () => Promise.resolve([]),
  };
}
