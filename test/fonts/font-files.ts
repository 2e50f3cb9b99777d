/** Fonts as they lie in their packages, so that tests and tools run without a build. */

import { readFile } from 'node:fs/promises';
import decompress from 'wawoff2/decompress.js';
import { bundledFileName, bundledFonts } from '../../src/text/bundled-fonts.ts';
import type { FontFiles } from '../../src/text/font-files.ts';
import { nodeFontFiles } from '../../src/text/node-font-files.ts';

const modules = new URL('../../node_modules/', import.meta.url);

/** A file of a font package, such as `packagedFont('roboto', 'latin', 400)`. */
export function packagedFont(slug: string, subset = 'latin', weight = 400): Promise<Uint8Array> {
  return readFile(new URL(`@fontsource/${slug}/files/${slug}-${subset}-${weight}-normal.woff`, modules));
}

export function packagedWoff2(slug: string, subset = 'latin', weight = 400): Promise<Uint8Array> {
  return readFile(new URL(`@fontsource/${slug}/files/${slug}-${subset}-${weight}-normal.woff2`, modules));
}

/** A variable font of a test package. */
export function variableWoff2(slug: string): Promise<Uint8Array> {
  return readFile(new URL(`@fontsource-variable/${slug}/files/${slug}-latin-wght-normal.woff2`, modules));
}

export async function variableFont(slug: string): Promise<Uint8Array> {
  return decompress(await variableWoff2(slug));
}

export function bundledFontBytes(family: string, weight: number): Promise<Uint8Array> {
  const font = bundledFonts.find((each) => each.family === family);
  const face = font?.faces.find((each) => each.weight === weight);
  if (!font || !face) throw new Error(`${family} ${weight} is not bundled.`);
  return readFile(new URL(`${font.package}/${face.file}`, modules));
}

/** The bundled fonts, without those of the computer, which differ from one to the next. */
export function packagedFontFiles(): FontFiles {
  return {
    ...nodeFontFiles(''),
    bundled: (name) => {
      for (const font of bundledFonts) {
        const face = font.faces.find((each) => bundledFileName(each) === name);
        if (face) return readFile(new URL(`${font.package}/${face.file}`, modules));
      }
      throw new Error(`No package has ${name}.`);
    },
    systemFonts: () => Promise.resolve([]),
  };
}
