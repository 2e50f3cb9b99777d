import type { Frame, FrameLocator } from 'playwright-core';
import { type Editor, eventually } from '../editor.ts';
import { withEditor } from './with-editor.ts';

/** Every preview that can be seen, by the address of its page, which stays the same while it is open. */
async function previews(editor: Editor): Promise<Map<string, Frame>> {
  const found = new Map<string, Frame>();
  for (const frame of editor.page.frames()) {
    const drawings = await frame
      .locator('#drawing .solid')
      .count()
      .catch(() => 0);
    if (drawings > 0) found.set(frame.url(), frame);
  }
  return found;
}

async function outline(preview: Frame | FrameLocator): Promise<string> {
  return (await preview.locator('#world .solid').first().getAttribute('d')) ?? '';
}

describe('Previews', () => {
  const current = withEditor();

  it('of two specs are open at once, and each follows its own', async () => {
    const editor = current();
    await editor.openFile('1-jar-initial.tag.yaml');
    await editor.openPreview();
    await editor.openFile('6-bed-arrow.tag.yaml');
    await editor.runCommand('Tagwright: Open Preview to the Side');
    // Both lie in the column beside; dragged apart they are seen together.
    await editor.page.locator('.tab', { hasText: 'Preview: 6-bed-arrow' }).click();
    await editor.runCommand('View: Move Editor into Next Group');
    // The move makes the page again, and what is asked of it meanwhile says nothing.
    const before = new Map<string, string>();
    await eventually('two different tags', async () => {
      before.clear();
      for (const [name, frame] of await previews(editor)) before.set(name, await outline(frame));
      return before.size === 2 && new Set(before.values()).size === 2;
    });

    await editor.page.locator('.tab[data-resource-name="6-bed-arrow.tag.yaml"]').first().click();
    await editor.text.focus();
    await editor.goAfter('length: 12');
    await editor.type('1');
    await eventually('one of the two to change', async () => {
      const now = await previews(editor);
      const changed = [...now].map(async ([page, frame]) => (await outline(frame)) !== before.get(page));
      return (await Promise.all(changed)).filter(Boolean).length === 1;
    });
  });

  // Last, since a reloaded editor has everything to compile anew.
  it('come back after the window is reloaded, and go on following the text', async () => {
    const editor = current();
    await editor.openFile('2-script-name.tag.yaml');
    const before = await outline(await editor.openPreview());

    // The editor's own command, which first keeps what is open; the browser's reload may come before that.
    await Promise.all([editor.page.waitForEvent('load'), editor.runCommand('Developer: Reload Window')]);
    const revived = editor.preview();
    await eventually('the same outline', async () => (await outline(revived)) === before);

    await editor.openFile('2-script-name.tag.yaml');
    await editor.goAfter('text: Angelica');
    await editor.type('s');
    await eventually('the outline of another word', async () => (await outline(revived)) !== before);
  });
});
