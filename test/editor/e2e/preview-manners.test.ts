import assert from 'node:assert/strict';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { FrameLocator } from 'playwright-core';
import { eventually } from '../editor.ts';
import { withEditor } from './with-editor.ts';

async function outline(preview: FrameLocator): Promise<string> {
  return (await preview.locator('#world .solid').first().getAttribute('d')) ?? '';
}

const transform = (preview: FrameLocator): Promise<string> =>
  preview.locator('#world').evaluate((world) => (world as SVGElement).style.transform);

/** By the menu: a panel beside the editor has no room for pills. */
async function switchLayer(preview: FrameLocator, layer: string): Promise<void> {
  const name = await preview.locator(`[data-layer=${layer}]`).textContent();
  await preview.locator('#layers-button').click();
  await preview.getByRole('menuitemcheckbox', { name: new RegExp(`^${name!}`) }).click();
  await preview.locator('#layers-button').click();
}

describe('A preview', () => {
  const current = withEditor();

  it('gives its memory back while it is hidden, and comes back as it was', async () => {
    const editor = current();
    await editor.openFile('4-glued-letters.tag.yaml');
    const preview = await editor.openPreview();
    await switchLayer(preview, 'score');
    await preview.getByRole('button', { name: 'Exploded' }).click();
    await preview.locator('.leaders[d*=M]').waitFor({ state: 'attached' });
    // Once all has followed that changes the height of the drawing, such as a caution below it.
    await preview.locator('#takes dl dd').first().waitFor({ state: 'attached' });
    const fitted = await transform(preview);
    // By its key: beside three arrangements a narrow row has no room for the button.
    await preview.locator('#stage').press('+');
    await eventually('the zoom', async () => (await transform(preview)) !== fitted);
    const before = await transform(preview);
    // Another tab over it.
    await editor.runCommand('File: New Untitled Text File');
    await editor.page.locator('iframe.webview').waitFor({ state: 'detached' });
    await editor.page.locator('.tab', { hasText: 'Preview: 4-glued-letters' }).click();
    const again = editor.preview();
    await again.locator('#drawing .solid').first().waitFor();
    await eventually('the same view', async () => (await transform(again)) === before);
    await again.locator('[data-layer=score][aria-pressed=false]').waitFor({ state: 'attached' });
    await again.locator('[data-arrangement=exploded][aria-pressed=true]').waitFor({ state: 'attached' });
  });

  it('remembers for a file what it shows, also when it is closed and opened again', async () => {
    const editor = current();
    await editor.openFile('3-engraved-backing.tag.yaml');
    const preview = await editor.openPreview();
    await switchLayer(preview, 'engrave');
    await switchLayer(preview, 'grid');
    await editor.page.locator('.tab', { hasText: 'Preview: 3-engraved-backing' }).click();
    await editor.runCommand('View: Close Editor');
    await editor.page.locator('iframe.webview').waitFor({ state: 'detached' });
    await editor.page.locator('.tab[data-resource-name="3-engraved-backing.tag.yaml"]').first().click();
    const again = await editor.openPreview();
    for (const layer of ['engrave', 'grid']) {
      await again.locator(`[data-layer=${layer}][aria-pressed=false]`).waitFor({ state: 'attached' });
    }
  });

  it('follows its file when something else changes that on the disk', async () => {
    const editor = current();
    const file = join(editor.folder, '1-jar-initial.tag.yaml');
    await editor.openFile('1-jar-initial.tag.yaml');
    const preview = await editor.openPreview();
    const before = await outline(preview);
    writeFileSync(file, readFileSync(file, 'utf8').replace('height: 48 mm', 'height: 40 mm'));
    await eventually('a smaller letter', async () => (await outline(preview)) !== before);
  });

  it('goes along with the editor if it is told to, and else stays with its file', async () => {
    const editor = current();
    await editor.openFile('1-jar-initial.tag.yaml');
    await editor.openPreview();
    const tab = (name: string) => editor.page.locator('.tab', { hasText: `Preview: ${name}` });
    await editor.page.locator('.tab[data-resource-name="1-jar-initial.tag.yaml"]').first().click();
    await editor.openFile('6-bed-arrow.tag.yaml');
    assert.equal(await tab('1-jar-initial').count(), 1, 'it stays');

    const preview = editor.preview();
    await preview.locator('#more').click();
    await preview.getByRole('menuitemcheckbox', { name: /^Follow/ }).click();
    await preview.locator('#more').click();
    await editor.page.locator('.tab[data-resource-name="6-bed-arrow.tag.yaml"]').first().click();
    await editor.openFile('2-script-name.tag.yaml');
    await tab('2-script-name').waitFor();
    await preview.locator('#title', { hasText: 'Angelica, script name' }).waitFor();
    await preview.locator('#more[data-follows=true]').waitFor();
    assert.equal(await tab('1-jar-initial').count(), 0);
  });

  it('measures a plate of 84 × 52 mm from corner to corner of its box, and shows the path of the beam', async () => {
    const editor = current();
    await editor.openFile('5-stacked-plate.tag.yaml');
    const preview = await editor.openPreview();
    await switchLayer(preview, 'beam');
    await preview.locator('.beam .middle').first().waitFor({ state: 'attached' });
    await preview.locator('#measure').click();
    const { x, y, width, height } = (await preview.locator('[data-id="tag/body-0"]').first().boundingBox())!;
    const middle = y + height * 0.6;
    for (const at of [x, x + width]) {
      await editor.page.mouse.move(at, middle);
      await editor.page.mouse.click(at, middle);
    }
    await eventually('the width', async () =>
      ((await preview.locator('.ruler-tool text').textContent()) ?? '').startsWith('84.00 mm'),
    );
    await editor.screenshot('measuring');
  });
});
