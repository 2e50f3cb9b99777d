import assert from 'node:assert/strict';
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { isDeepStrictEqual } from 'node:util';
import { type Editor, eventually } from '../editor.ts';
import { withEditor } from './with-editor.ts';

const mine = 'not made by this extension';

/** Through the questions for the tag that is open, into its own folder; `more`: a format to tick beside those of the last time. */
async function exportTag(editor: Editor, more?: string): Promise<void> {
  await editor.runCommand('Tagwright: Export…');
  await editor.choose('This tag');
  await editor.page.getByPlaceholder('Which formats?').waitFor();
  if (more !== undefined) await editor.choose(more);
  await editor.page.locator('.quick-input-widget').getByRole('button', { name: 'OK' }).click();
  await editor.acceptQuickInput('/samples/');
}

describe('Export, as a person is asked', () => {
  const current = withEditor();

  it('writes over another file, and a tag with errors, only once that is said', async () => {
    const editor = current();
    const at = (name: string) => join(editor.folder, name);
    const read = (name: string) => readFileSync(at(name), 'utf8');
    writeFileSync(at('2-script-name.svg'), mine);
    await editor.openFile('2-script-name.tag.yaml');

    await exportTag(editor, 'DXF');
    await editor.answer(/2-script-name\.svg is there already/, 'Leave It');
    await eventually('the other file is written', () => Promise.resolve(existsSync(at('2-script-name.dxf'))));
    assert.equal(read('2-script-name.svg'), mine);

    await exportTag(editor);
    await editor.answer(/2-script-name\.svg is there already/, 'Cancel');
    assert.equal(read('2-script-name.svg'), mine);

    await exportTag(editor);
    await editor.answer(/2-script-name\.svg is there already/, 'Replace');
    await editor.written('2-script-name.svg', (text) => /^<\?xml[^]*<\/svg>\n$/.test(text));

    await editor.openFile('7-weak-on-purpose.tag.yaml');
    await exportTag(editor);
    const safe = editor.page.locator('.monaco-dialog-box').getByRole('button', { name: 'Show the Problem' });
    await safe.waitFor();
    await eventually('Enter to export nothing', () => safe.evaluate((button) => button === document.activeElement));
    await editor.answer(/7-weak-on-purpose has an error/, 'Show the Problem');
    await editor.page.locator('.line-numbers.active-line-number', { hasText: /^9$/ }).waitFor();
    await exportTag(editor);
    assert.ok(!existsSync(at('7-weak-on-purpose.svg')), 'the first time, none was made');
    await editor.answer(/7-weak-on-purpose has an error/, 'Export Anyway');
    await editor.written('7-weak-on-purpose.svg', (text) => text.includes('DO NOT CUT') && text.endsWith('</svg>\n'));
    await editor.written('7-weak-on-purpose.dxf', (text) => text.trimEnd().endsWith('EOF'));
    await eventually('nothing half written', () =>
      Promise.resolve(readdirSync(editor.folder).every((name) => !name.endsWith('.part'))),
    );
  });

  it('names the files, offers to open one, and says why a paper is not made', async () => {
    const editor = current();
    const { page } = editor;
    await editor.openFile('2-script-name.tag.yaml');
    await editor.runCommand('Tagwright: Export…');
    await editor.choose('This tag');
    await page.getByPlaceholder('Which formats?').waitFor();
    // Those of the last time are ticked.
    for (const row of await page.locator('.quick-input-widget .monaco-list-row').all()) {
      const isWanted = /^(SVG|DXF|Assembly sheet)/.test((await row.textContent())!);
      if ((await row.getAttribute('aria-checked')) !== `${isWanted}`) await row.click();
    }
    await page.locator('.quick-input-widget').getByRole('button', { name: 'OK' }).click();
    await editor.acceptQuickInput('/samples/');
    await editor.written('2-script-name.dxf', (text) => text.trimEnd().endsWith('EOF'));
    await editor.runCommand('Notifications: Show Notifications');
    const said = (text: string) => page.locator('.notification-list-item', { hasText: text });
    await said('No assembly sheet of 2-script-name: nothing is glued.').waitFor();
    const done = said('Exported 2 files: 2-script-name.svg and 2-script-name.dxf.');
    await done.waitFor();
    await editor.screenshot('exported-files');
    await done.getByRole('button', { name: 'Open…' }).click();
    await editor.choose('2-script-name.svg');
    await page.locator('.tab.active[data-resource-name="2-script-name.svg"]').waitFor();
  });

  it('makes packs, over another file only once that is said, and none once they are called off', async () => {
    const editor = current();
    const archive = join(editor.folder, '5-stacked-plate.zip');
    const begins = () => readFileSync(archive, 'latin1').slice(0, 4);
    writeFileSync(archive, mine);
    const before = readdirSync(editor.folder);
    await editor.openFile('5-stacked-plate.tag.yaml');
    const pack = async (scope: string, kind: string) => {
      await editor.runCommand('Tagwright: Make a Pack…');
      await editor.choose(scope);
      if (scope === 'A folder…') await editor.acceptQuickInput('/samples/');
      await editor.choose(kind);
    };
    const input = editor.page.locator('.quick-input-widget', { hasText: 'already exists' });

    await pack('This tag', 'An archive');
    await editor.acceptQuickInput('5-stacked-plate.zip');
    await input.getByRole('button', { name: 'Cancel' }).click();
    await input.waitFor({ state: 'hidden' });
    assert.equal(readFileSync(archive, 'utf8'), mine);

    await editor.runCommand('Notifications: Show Notifications');
    await pack('A folder…', 'A folder');
    await editor.acceptQuickInput('/samples/');
    await editor.answer(/7-weak-on-purpose has an error/, 'Leave It Out');
    const progress = editor.page.locator('.notification-list-item', { hasText: 'Exporting tags' });
    await progress.getByRole('button', { name: 'Cancel' }).click();
    await progress.waitFor({ state: 'detached' });
    assert.deepEqual(readdirSync(editor.folder), before);

    await pack('This tag', 'An archive');
    await editor.acceptQuickInput('5-stacked-plate.zip');
    await input.getByRole('button', { name: 'OK' }).click();
    // The format's specification: a local file header begins with PK and 3, 4.
    await eventually('the archive', () => Promise.resolve(begins() === 'PK\u0003\u0004'));
    await eventually('nothing beside it', () => Promise.resolve(isDeepStrictEqual(readdirSync(editor.folder), before)));
  });

  describe('The kerf, from a test that was cut', () => {
    it('is asked for in widths, each slip told while it is typed, and written into the spec', async () => {
      const editor = current();
      await editor.openFile('4-glued-letters.tag.yaml');
      await editor.runCommand('Tagwright: Set Kerf from a Test…');
      const widget = editor.page.locator('.quick-input-widget');
      const input = widget.locator('input.input');
      await widget.getByText('How wide are the slots?').waitFor();
      await input.fill('10.16, 20.15, 30.17');
      await input.press('Enter');
      await widget.getByText('fell out of them').waitFor();
      await input.fill('10.5, 19.85, 29.83');
      const slip = widget.getByText('Slot 1 should be a little wider than its piece.');
      await slip.waitFor();
      await input.fill('9.84, 19.85, 29.83');
      await slip.waitFor({ state: 'hidden' });
      await input.press('Enter');
      await editor.page.locator('.tab.active.dirty').waitFor();
      await editor.save();
      // The mean of 0.32, 0.30 and 0.34 mm, halved.
      await editor.written('4-glued-letters.tag.yaml', (text) => text.includes('thickness: 3 mm, kerf: 0.16 mm'));
    });
  });
});
