import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
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
    const mended = readFileSync(join(editor.folder, file), 'utf8');
    assert.match(mended, /opening: 5 mm\}\}/);
    assert.equal(mended.replace('opening: 5 mm', 'opening: 2.8 mm'), saved, 'nothing else is touched');
    await editor.page.keyboard.press('Control+z');
    await row.waitFor();
    await editor.save();
    assert.equal(readFileSync(join(editor.folder, file), 'utf8'), saved);
  });
});
