import assert from 'node:assert/strict';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { unzipSync } from 'fflate';
import { packagedWoff2 } from '../../fonts/font-files.ts';
import { eventually } from '../editor.ts';
import { measured } from './measured.ts';
import { withEditor } from './with-editor.ts';

describe('The editor without a server', () => {
  const current = withEditor({ inBrowser: true });

  it('runs the extension in the browser, draws, completes and checks the specs of the folder', async () => {
    const editor = current();
    await editor.openFile('2-script-name.tag.yaml');
    const preview = await editor.openPreview();
    await preview.locator('#summary', { hasText: /[\d.]+ × [\d.]+ mm/ }).waitFor();

    await editor.goAfter('grow: 0.5 mm');
    await editor.type(', ');
    await editor.page.keyboard.press('Control+Space');
    await editor.page.locator('.suggest-widget .monaco-list-row', { hasText: 'letter_spacing' }).first().waitFor();
    await editor.page.keyboard.press('Escape');

    // Of a file that is not open.
    await editor.problem('The hole is 2.80 mm');

    // The editor's own word for where an extension runs.
    assert.match(await editor.running(), /web worker/);
  });

  it('exports the tag into the folder: as an SVG file in true millimetres, and as a pack with every format', async () => {
    const editor = current();
    await editor.openFile('5-stacked-plate.tag.yaml');
    await editor.openPreview();
    await editor.runCommand('Tagwright: Export SVG…');
    await editor.acceptQuickInput('5-stacked-plate.svg');
    const svg = await editor.written('5-stacked-plate.svg', (text) => text.endsWith('</svg>\n'));
    // A plate of 84 mm by 52 mm as the spec says, and half a kerf of 0.18 mm all around.
    const [width, height] = await measured(editor, svg);
    assert.ok(Math.abs(width - 84.18) < 0.02, `${width} mm`);
    assert.ok(Math.abs(height - 52.18) < 0.02, `${height} mm`);

    await editor.runCommand('Tagwright: Make a Pack…');
    await editor.choose('This tag');
    await editor.choose('An archive');
    await editor.acceptQuickInput('5-stacked-plate.zip');
    const archive = join(editor.folder, '5-stacked-plate.zip');
    let files: Record<string, Uint8Array> = {};
    await eventually(`${archive} is written`, () => {
      try {
        files = unzipSync(readFileSync(archive));
      } catch {
        // Not there, or not all of it.
      }
      return Promise.resolve(Object.keys(files).length > 0);
    });
    const begins = Object.entries(files).map(
      ([name, content]) => [/\w+$/.exec(name)![0], new TextDecoder('latin1').decode(content.slice(0, 5))] as const,
    );
    const { svg: drawing, dxf, pdf, png } = Object.fromEntries(begins);
    assert.equal(drawing, '<?xml');
    assert.match(dxf ?? '', /^999/);
    assert.equal(pdf, '%PDF-');
    assert.equal(png?.slice(1, 4), 'PNG');
  });

  it('reads a packed font beside the spec, and lists the samples', async () => {
    const editor = current();
    writeFileSync(join(editor.folder, 'mine.woff2'), await packagedWoff2('caveat'));
    const spec =
      'tagwright: 1\nshapes: {name: {text: Sorrel, font: mine.woff2, width: 60 mm}}\npieces: {tag: {body: [name]}}\n';
    writeFileSync(join(editor.folder, 'mine.tag.yaml'), spec);
    await editor.openFile('mine.tag.yaml');
    const preview = await editor.openPreview();
    await preview.locator('#summary', { hasText: /^60\.0 × / }).waitFor();

    await editor.runCommand('Tagwright: Browse Samples…');
    await editor.page.locator('.quick-input-widget .monaco-list-row', { hasText: 'Angelica, script name' }).waitFor();
  });
});
