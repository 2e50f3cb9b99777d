import assert from 'node:assert/strict';
import { eventually } from '../editor.ts';
import { withEditor } from './with-editor.ts';

describe('The samples, as a person uses them', () => {
  const current = withEditor();

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
