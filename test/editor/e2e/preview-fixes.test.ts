import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { eventually } from '../editor.ts';
import { withEditor } from './with-editor.ts';

describe('A pin of the preview', () => {
  const current = withEditor();

  it('offers the fixes of its problem, and one of them mends it as one step that can be undone', async () => {
    const editor = current();
    const file = '7-weak-on-purpose.tag.yaml';
    await editor.openFile(file);
    const saved = readFileSync(join(editor.folder, file), 'utf8');
    const preview = await editor.openPreview();
    const row = preview.locator('#issues li', { hasText: 'The hole is 2.80 mm' });
    const pin = preview.getByLabel(/^warning: The hole is 2\.80 mm/).first();
    await pin.click();
    const fix = preview.locator('#fix-menu .fix', { hasText: 'Make the hole larger' });
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
    await preview.locator('#fix-menu .fix', { hasText: 'Make the hole larger' }).waitFor();
    await keyboard.press('Enter');
    await small.waitFor({ state: 'detached' });
    await eventually('the keyboard to be still on the page', () =>
      preview.locator('body').evaluate(() => document.hasFocus()),
    );
  });
});
