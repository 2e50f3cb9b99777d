/** Everything in `dist/` that is not a bundle: WebAssembly, fonts, the guide, the grammar, the extension's icon. */

import { cpSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { bundledFileName, bundledFonts } from '../text/bundled-fonts.ts';
import { samplesFolder, specsIn } from './samples-table.ts';

const root = join(import.meta.dirname, '..', '..');

export function copyAssets(dist: string): void {
  const modules = join(root, 'node_modules');
  // The bundle looks for it at `new URL('harfbuzz.wasm', import.meta.url)`.
  cpSync(join(modules, 'harfbuzzjs/dist/harfbuzz.wasm'), join(dist, 'harfbuzz.wasm'));
  cpSync(join(modules, '@resvg/resvg-wasm/index_bg.wasm'), join(dist, 'resvg.wasm'));
  writeFileSync(join(dist, 'samples.json'), JSON.stringify(specsIn(samplesFolder)));
  cpSync(join(root, 'src', 'guide'), join(dist, 'guide'), { recursive: true });
  cpSync(join(root, 'src', 'vscode', 'listing', 'icon.png'), join(dist, 'icon.png'));
  cpSync(join(root, 'src', 'vscode', 'grammar'), join(dist, 'grammar'), { recursive: true });
  for (const { package: name, faces, licence, licenceFile } of bundledFonts) {
    const fonts = join(dist, 'fonts');
    for (const face of faces) cpSync(join(modules, name, face.file), join(fonts, bundledFileName(face)));
    cpSync(join(modules, name, licence), join(fonts, licenceFile));
  }
}
