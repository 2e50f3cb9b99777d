/**
 * `npm run icon`: renders the extension's icon from `src/vscode/listing/icon.svg` in the format that the editor
 * requires.
 */

import { Resvg } from '@resvg/resvg-js';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

const folder = join(import.meta.dirname, '..', 'vscode', 'listing');

/** In pixels: twice the size in the list of extensions, for dense screens. */
const iconSize = 256;

export function iconPng(): Uint8Array {
  const svg = readFileSync(join(folder, 'icon.svg'), 'utf8');
  return new Resvg(svg, { fitTo: { mode: 'width', value: iconSize } }).render().asPng();
}

if (process.argv[1] === import.meta.filename) writeFileSync(join(folder, 'icon.png'), iconPng());
