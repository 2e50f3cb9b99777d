import assert from 'node:assert/strict';
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { FrameLocator } from 'playwright-core';
import { eventually } from '../editor.ts';
import { measured } from './measured.ts';
import { withEditor } from './with-editor.ts';

/** Stands for the outline of the whole tag as the preview draws it; the outline itself is too long to print. */
async function drawn(preview: FrameLocator): Promise<string> {
  const data = await preview.locator('#world .solid').first().getAttribute('d');
  assert.ok(data, 'there is an outline');
  return createHash('sha256').update(data).digest('hex');
}

describe('The editor, as a person uses it', () => {
  const current = withEditor();

  it('redraws the tag while its text is typed, and keeps the last drawing while the spec is broken', async () => {
    const editor = current();
    await editor.openFile('2-script-name.tag.yaml');
    const preview = await editor.openPreview();
    const before = await drawn(preview);

    await editor.goAfter('text: Angelica');
    await editor.type('s');
    await eventually('the outline of another word', async () => (await drawn(preview)) !== before);
    await preview.locator('#banner').waitFor({ state: 'hidden' });
    const longer = await drawn(preview);

    await editor.goAfter('name: {');
    await editor.type('{');
    await preview.locator('#banner').waitFor();
    assert.equal(await drawn(preview), longer, 'the drawing is that of the last good spec');

    await editor.page.keyboard.press('Backspace');
    await preview.locator('#banner').waitFor({ state: 'hidden' });
    assert.equal(await drawn(preview), longer);
  });

  it('takes Enter for a new line after a value that is typed in full, though it is still suggested', async () => {
    const editor = current();
    await editor.openFile('2-script-name.tag.yaml');
    await editor.goAfter('tagwright: 1');
    await editor.page.keyboard.press('Control+Backspace');
    await editor.page.keyboard.press('Backspace');
    await editor.type(' 1');
    await editor.page.locator('.suggest-widget.visible').waitFor();
    await editor.page.keyboard.press('Enter');
    await editor.type('units: mm');
    await editor.page.locator('.suggest-widget.visible').waitFor();
    await editor.page.keyboard.press('Enter');
    await editor.save();
    await editor.written('2-script-name.tag.yaml', (text) => /tagwright: 1\nunits: mm\n/.test(text));
  });

  it('lists what is weak in Problems and pins it on the drawing', async () => {
    const editor = current();
    await editor.openFile('7-weak-on-purpose.tag.yaml');
    const preview = await editor.openPreview();
    await editor.problem('The hole is 2.80 mm');
    await eventually('as many beside the drawing', async () => {
      return (await preview.locator('#issues li').count()) === (await editor.problems()).length;
    });
    await preview.locator('#pins > *').first().waitFor({ state: 'attached' });
    await editor.screenshot('weak-on-purpose');
  });

  it('puts right what is weak by the quick fix offered at its line', async () => {
    const editor = current();
    await editor.openFile('7-weak-on-purpose.tag.yaml');
    const preview = await editor.openPreview();
    const small = preview.locator('#issues li', { hasText: 'The hole is 2.80 mm' });
    await small.waitFor();
    await editor.goAfter('diameter: 2.8');
    await editor.quickFix('Make the hole larger:');
    await small.waitFor({ state: 'detached' });
    await editor.save();
    // Twine of 2.5 mm, doubled, takes 3.75 mm.
    await editor.written(
      '7-weak-on-purpose.tag.yaml',
      (text) => Number(/diameter: ([\d.]+) mm/.exec(text)?.[1]) >= 3.75,
    );
  });

  it('exports the tag as an SVG file in true millimetres', async () => {
    const editor = current();
    await editor.openFile('2-script-name.tag.yaml');
    const preview = await editor.openPreview();
    // Cut lengths are told to 0.1 mm, once the text has rested.
    await preview.locator('#takes dl', { hasText: /Cut\d+(\.\d)? mm/ }).waitFor({ state: 'attached' });
    await editor.runCommand('Tagwright: Export SVG…');
    await editor.acceptQuickInput('2-script-name.svg');
    const svg = await editor.written('2-script-name.svg', (text) => text.endsWith('</svg>\n'));

    const summary = (await preview.locator('#summary').textContent()) ?? '';
    const finished = /([\d.]+) × ([\d.]+) mm/.exec(summary)!.slice(1).map(Number);
    // The beam takes half its width on either side, and the preview rounds to 0.1 mm.
    const kerf = 0.16;
    (await measured(editor, svg)).forEach((cut, axis) => {
      assert.ok(Math.abs(cut - finished[axis]! - kerf) <= 0.06, `${cut} mm are cut for ${finished[axis]!} mm`);
    });
  });

  describe('A pin of the preview', () => {
    it('offers the fixes of its problem, and one of them mends it as one step that can be undone', async () => {
      const editor = current();
      const file = '7-weak-on-purpose.tag.yaml';
      await editor.openFile(file);
      const saved = readFileSync(join(editor.folder, file), 'utf8');
      const preview = await editor.openPreview();
      const row = preview.locator('#issues li', { hasText: 'The hole is 2.80 mm' });
      const pin = preview.getByLabel(/^warning: The hole is 2\.80 mm/).first();
      await pin.click();
      const fix = preview.locator('#fix-menu .fix', { hasText: 'Make the hole larger:' });
      await fix.waitFor();
      await editor.screenshot('fix-from-a-pin');
      await fix.click();
      await row.waitFor({ state: 'detached' });
      await editor.page.locator(`.tab[data-resource-name="${file}"]`).first().click();
      await editor.save();
      const mended = await editor.written(file, (text) => text.includes('diameter: 5 mm}}'));
      assert.equal(mended.replace('diameter: 5 mm', 'diameter: 2.8 mm'), saved, 'nothing else is touched');
      await editor.page.keyboard.press('Control+z');
      await row.waitFor();
      await editor.save();
      await editor.written(file, (text) => text === saved);
    });

    it('is reached, opened and mended with the keyboard alone', async () => {
      const editor = current();
      await editor.openFile('7-weak-on-purpose.tag.yaml');
      const preview = await editor.openPreview();
      const { keyboard } = editor.page;
      const small = preview.locator('#issues li', { hasText: 'The hole is 2.80 mm' });
      await small.waitFor();
      await preview.locator('#stage').focus();
      await eventually('the pin of the hole', async () => {
        const focused = await preview
          .locator('body')
          .evaluate(() => document.activeElement?.getAttribute('aria-label') ?? '');
        if (focused.startsWith('warning: The hole is 2.80 mm')) return true;
        await keyboard.press('n');
        return false;
      });
      await keyboard.press('f');
      await preview.locator('#fix-menu .fix', { hasText: 'Make the hole larger:' }).waitFor();
      await keyboard.press('Enter');
      await small.waitFor({ state: 'detached' });
      await eventually('the keyboard to be still on the page', () =>
        preview.locator('body').evaluate(() => document.hasFocus()),
      );
    });
  });

  describe('The samples, as a person uses them', () => {
    it('are shown with their preview while the list is gone through, and leave nothing when none is wanted', async () => {
      const editor = current();
      const { page } = editor;
      await editor.runCommand('Tagwright: Browse Samples…');
      const title = async () => editor.preview().locator('#title').textContent();
      await eventually('the first', async () => (await title()) === 'Jar initial');
      await page.keyboard.press('ArrowDown');
      await eventually('the one that is pointed at', async () => (await title()) === 'Angelica, script name');
      await page.keyboard.press('Escape');
      await eventually('nothing of it', async () => (await page.locator('.tab').count()) === 0);

      await editor.runCommand('Tagwright: Browse Samples…');
      await eventually('the first', async () => (await title()) === 'Jar initial');
      await page.keyboard.press('ArrowDown');
      await page.keyboard.press('Enter');
      await page.locator('.tab', { hasText: 'Preview: script-name' }).waitFor();
      await eventually('the copy and its preview, and nothing else', async () => {
        const ofCopy = await page.locator('.tab', { hasText: 'script-name.tag.yaml' }).count();
        return ofCopy === 2 && (await page.locator('.tab').count()) === 2;
      });
    });

    it('have a view of their own, as tall as the window', async () => {
      const { page } = current();
      await page.locator('.activitybar [aria-label^="Tagwright"]').first().click();
      const view = page.locator('.sidebar .pane-body').first();
      await view.waitFor();
      const { height } = (await view.boundingBox())!;
      assert.ok(height > 0.75 * page.viewportSize()!.height, `${height}`);
    });
  });
});
