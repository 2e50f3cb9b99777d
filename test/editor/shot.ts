/**
 * A picture of the real editor, for looking at what a person sees:
 *
 *     npm run shot -- --open sorrel.tag.yaml --preview --out sorrel.png
 *
 * `--folder DIR` (the samples), `--size 1600x1000`, `--theme "Default Dark Modern"`, and `--script FILE.mjs`, whose default
 * export `async (page, editor)` may do anything before the picture is taken. `--no-build` takes `dist/` as it is.
 */

import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { parseArgs } from 'node:util';
import type { Page } from 'playwright-core';
import { buildAll } from '../../src/dev/build.ts';
import { Editor, root } from './editor.ts';

const { values } = parseArgs({
  options: {
    folder: { type: 'string', default: join(root, 'samples') },
    open: { type: 'string' },
    preview: { type: 'boolean', default: false },
    out: { type: 'string', default: 'shot.png' },
    size: { type: 'string', default: '1600x1000' },
    theme: { type: 'string', default: 'Default Light Modern' },
    script: { type: 'string' },
    'no-build': { type: 'boolean', default: false },
  },
});

if (!values['no-build']) await buildAll();
const [width, height] = values.size.split('x').map(Number);
const editor = await Editor.open({
  folder: resolve(values.folder),
  size: { width: width!, height: height! },
  settings: { 'workbench.colorTheme': values.theme },
});
try {
  if (values.open) await editor.openFile(values.open);
  if (values.preview) await editor.openPreview();
  if (values.script) {
    const script = (await import(pathToFileURL(resolve(values.script)).href)) as {
      default: (page: Page, editor: Editor) => Promise<void>;
    };
    await script.default(editor.page, editor);
  }
  await editor.screenshot(resolve(values.out));
  console.log(resolve(values.out));
} catch (error) {
  await editor.screenshot(resolve(values.out));
  console.error(editor.log.join('\n'));
  throw error;
} finally {
  await editor.close();
}
