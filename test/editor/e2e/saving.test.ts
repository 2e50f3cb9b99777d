import assert from 'node:assert/strict';
import { copyFileSync, existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { FrameLocator } from 'playwright-core';
import { type Editor, eventually, root } from '../editor.ts';
import { withEditor } from './with-editor.ts';

const outline = async (preview: FrameLocator): Promise<string> =>
  (await preview.locator('#world .solid').first().getAttribute('d')) ?? '';

/** The address of a preview's page; it stays the same for as long as that is open. */
const previewTabs = (editor: Editor) => editor.page.locator('.tab', { hasText: /^Preview: / });

/** A tag with these words, all else as it is; gives its preview. */
async function newTag(
  editor: Editor,
  words: string,
  fileName: string,
  { kind = 'Script name', holding = 'Leave it as it is' } = {},
): Promise<FrameLocator> {
  const widget = editor.page.locator('.quick-input-widget');
  await editor.runCommand('Tagwright: New Tag…');
  await widget.locator('.quick-input-title:has-text("What kind of tag?")').waitFor();
  await editor.choose(kind);
  await widget.getByText('The words on it').waitFor();
  await widget.locator('input.input').fill(words);
  await editor.page.keyboard.press('Enter');
  await widget.locator('.quick-input-title:has-text("Which font?")').waitFor();
  await editor.page.keyboard.press('Enter');
  await widget.locator('.quick-input-title:has-text("How wide")').waitFor();
  await editor.page.keyboard.press('Enter');
  // The samples have a workshop's file, with stocks and ties to choose from.
  for (const question of ['What is it cut from?', 'What does it hang on?']) {
    await widget.locator(`.quick-input-title:has-text("${question}")`).waitFor();
    await editor.choose('As the sample has it');
  }
  const named = editor.page.locator(`.tab.active[data-resource-name="${fileName}"]`);
  const hold = widget.locator('.quick-input-title:has-text("A part of it would fall out")');
  await eventually('the last question, or its end', async () => (await hold.isVisible()) || (await named.isVisible()));
  if (await hold.isVisible()) {
    await editor.choose(holding);
    await named.waitFor();
  }
  const preview = editor.preview();
  await preview.locator('#drawing .solid').first().waitFor();
  return preview;
}

/** The preview that shows a file, once the editor has put it in the place of the one before. */
async function previewOf(editor: Editor, fileName: string): Promise<FrameLocator> {
  await previewTabs(editor)
    .filter({ hasText: `Preview: ${fileName}` })
    .waitFor();
  const preview = editor.preview();
  await eventually(`a drawing of ${fileName}`, async () => {
    const source = await preview.locator('body').getAttribute('data-source');
    return source!.endsWith(fileName) && !source!.startsWith('untitled:') && (await outline(preview)) !== '';
  });
  return preview;
}

describe('A tag that is saved', () => {
  const current = withEditor();

  it('for the first time keeps its preview: it follows the typing, the hand and the export', async () => {
    const editor = current();
    await newTag(editor, 'Angelica', 'angelica.tag.yaml');
    await editor.text.focus();
    await editor.save();
    const name = (await editor.page
      .locator('.tab.active[data-resource-name$=".tag.yaml"]')
      .getAttribute('data-resource-name'))!;
    const file = join(editor.folder, name);
    const preview = await previewOf(editor, name);
    await eventually('a single preview', async () => (await previewTabs(editor).count()) === 1);

    const before = await outline(preview);
    await editor.goAfter('text: Angelica');
    await editor.type('s');
    await eventually('the outline of another word', async () => (await outline(preview)) !== before);

    await preview.locator('#stage').focus();
    await eventually('the ring to be taken hold of', async () => {
      if (((await preview.locator('.words').textContent()) ?? '').startsWith('ring')) return true;
      await editor.page.keyboard.press('s');
      return false;
    });
    const unmoved = await outline(preview);
    await editor.page.keyboard.press('Shift+ArrowRight');
    await editor.page.keyboard.press('Enter');
    await eventually('something to have been moved', async () => (await outline(preview)) !== unmoved);
    await editor.focusText();
    await editor.save();
    await editor.written(name, (text) => /Angelicas[^]*nudge: \{right:/.test(text));

    await preview.locator('#export').click();
    await editor.acceptQuickInput('.svg');
    await eventually('the cut file', () => Promise.resolve(existsSync(file.replace('.tag.yaml', '.svg'))));
  });

  it('is named after its words, with what would fall out asked about, and its preview goes along', async () => {
    const editor = current();
    const preview = await newTag(editor, 'Sorrel & Mint', 'sorrel-mint.tag.yaml', {
      kind: 'Cut-out initial',
      holding: 'Slide the letters',
    });
    await previewTabs(editor).filter({ hasText: 'Preview: sorrel-mint.tag.yaml' }).waitFor();
    await eventually('a single preview', async () => (await previewTabs(editor).count()) === 1);
    // The draft of the questions is gone.
    await eventually('a single tag', async () => (await editor.page.locator('.tab.dirty').count()) === 1);
    await eventually('one part', async () => /1 part/.test((await preview.locator('#summary').textContent()) ?? ''));
    await editor.screenshot('new-tag');
  });

  it('is made for each name of a list that is pasted, one on each line, and takes what is typed at once', async () => {
    const editor = current();
    const widget = editor.page.locator('.quick-input-widget');
    await editor.page.context().grantPermissions(['clipboard-read', 'clipboard-write']);
    await editor.runCommand('Tagwright: New Tag…');
    await widget.locator('.quick-input-title:has-text("What kind of tag?")').waitFor();
    await editor.page.keyboard.type('list');
    await widget.locator('.monaco-list-row', { hasText: 'One label for a list of names' }).waitFor();
    await eventually('only that kind', async () => (await widget.locator('.monaco-list-row').count()) === 1);
    await editor.page.keyboard.press('Enter');
    await widget.getByText('The names, separated by commas').waitFor();
    await editor.page.evaluate(() => navigator.clipboard.writeText('Jyoti\nSea Kale\nKwame\n'));
    await editor.page.keyboard.press('ControlOrMeta+V');
    const input = widget.locator('input.input');
    await eventually('the names', async () => /^Jyoti, Sea Kale, Kwame\s*$/.test(await input.inputValue()));
    await eventually('their tags', async () =>
      /1 of 3/.test((await editor.preview().locator('body').textContent()) ?? ''),
    );
    await editor.page.keyboard.press('Escape');
  });

  it('is in a font whose file lies in the folder, and its drawing keeps below the list of them', async () => {
    const editor = current();
    const widget = editor.page.locator('.quick-input-widget');
    copyFileSync(join(root, 'dist', 'fonts', 'GreatVibes_400Regular.ttf'), join(editor.folder, 'of-the-shop.ttf'));
    await editor.runCommand('Tagwright: New Tag…');
    await widget.locator('.quick-input-title:has-text("What kind of tag?")').waitFor();
    await editor.choose('Script name');
    await widget.getByText('The words on it').waitFor();
    await widget.locator('input.input').fill('Dill');
    await editor.page.keyboard.press('Enter');
    await widget.locator('.quick-input-title:has-text("Which font?")').waitFor();
    await widget.locator('input.input').fill('of-the');
    const item = widget.locator('.monaco-list-row', { hasText: 'of-the-shop.ttf' });
    await item.waitFor();
    const preview = editor.preview();
    await eventually('the drawing below the list', async () => {
      const drawn = await preview.locator('#world .solid').first().boundingBox();
      return drawn !== null && drawn.y > 0.4 * editor.page.viewportSize()!.height;
    });
    await item.click();
    await widget.locator('.quick-input-title:has-text("How wide")').waitFor();
    await editor.choose('As it is');
    for (const question of ['What is it cut from?', 'What does it hang on?']) {
      await widget.locator(`.quick-input-title:has-text("${question}")`).waitFor();
      await editor.choose('As the sample has it');
    }
    const named = editor.page.locator('.tab.active[data-resource-name="dill.tag.yaml"]');
    const hold = widget.locator('.quick-input-title:has-text("A part of it would fall out")');
    await eventually(
      'the last question, or its end',
      async () => (await hold.isVisible()) || (await named.isVisible()),
    );
    if (await hold.isVisible()) await editor.choose('Leave it as it is');
    await named.waitFor();
    await editor.text.focus();
    await editor.save();
    await editor.written('dill.tag.yaml', (text) => /text: Dill, font: of-the-shop\.ttf/.test(text));
    await eventually(
      'no unknown font',
      async () => (await preview.locator('[data-pin^="unknown-font"]').count()) === 0,
    );
  });

  it('is not made of empty words or of a width that is none, and leaves nothing when it is called off', async () => {
    const editor = current();
    const widget = editor.page.locator('.quick-input-widget');
    const { keyboard } = editor.page;
    await editor.runCommand('Tagwright: New Tag…');
    await widget.locator('.quick-input-title:has-text("What kind of tag?")').waitFor();
    await editor.choose('Script name');
    await widget.getByText('The words on it').waitFor();
    const input = widget.locator('input.input');
    await input.fill(' ');
    await widget.getByText('Type the words for the tag.').waitFor();
    await keyboard.press('Enter');
    await input.fill('Sage ☃');
    await widget.getByText('“☃”').waitFor();
    await keyboard.press('Enter');
    await widget.locator('.quick-input-title:has-text("Which font?")').waitFor();
    await keyboard.press('Enter');
    await widget.locator('.quick-input-title:has-text("How wide")').waitFor();
    for (const [typed, message] of [
      ['wide', '“wide” is not a length'],
      ['0.5', 'A tag cannot be 0.5 wide'],
    ] as const) {
      await input.fill(typed);
      await widget.getByText(message).waitFor();
      await keyboard.press('Enter');
    }
    await keyboard.press('Escape');
    await eventually('nothing to be open', async () => (await editor.page.locator('.tab').count()) === 0);
  });

  it('under another name takes its preview along, and leaves the file it was as it was', async () => {
    const editor = current();
    const old = '1-jar-initial.tag.yaml';
    await editor.openFile(old);
    const before = readFileSync(join(editor.folder, old), 'utf8');
    await editor.openPreview();
    await editor.focusText();
    await editor.goAfter('height: 48');
    await editor.type('.5');
    await editor.runCommand('File: Save As...');
    const input = editor.page.locator('.quick-input-widget input.input');
    await eventually('a proposal', async () => (await input.inputValue()).endsWith(old));
    await input.fill((await input.inputValue()).replace(old, 'basil.tag.yaml'));
    await input.press('Enter');
    const preview = await previewOf(editor, 'basil.tag.yaml');
    await eventually('a single preview', async () => (await previewTabs(editor).count()) === 1);
    assert.equal(readFileSync(join(editor.folder, old), 'utf8'), before);

    const drawn = await outline(preview);
    await editor.focusText();
    await editor.goAfter('height: 48.5');
    await editor.type('5');
    await eventually('another outline', async () => (await outline(preview)) !== drawn);
  });

  it('nowhere leaves a preview that says so and shows another tag that is open', async () => {
    const editor = current();
    await editor.openFile('1-jar-initial.tag.yaml');
    await newTag(editor, 'Sorrel', 'sorrel.tag.yaml');
    await editor.text.focus();
    await editor.runCommand('View: Revert and Close Editor');
    const preview = editor.preview();
    await preview
      .locator('#gone')
      .getByText(/sorrel\.tag\.yaml was closed without being saved/)
      .waitFor();
    await preview.locator('#drawing').waitFor({ state: 'hidden' });
    await editor.screenshot('closed-without-saving');
    await preview.getByRole('button', { name: 'Show 1-jar-initial.tag.yaml' }).click();
    await previewOf(editor, '1-jar-initial.tag.yaml');
    await preview.locator('#drawing').waitFor();
  });

  it('is told from another that has the same words and stays unsaved', async () => {
    const editor = current();
    await newTag(editor, 'Angelica', 'angelica.tag.yaml');
    await newTag(editor, 'Angelica', 'angelica-2.tag.yaml');
    await eventually('two previews', async () => (await previewTabs(editor).count()) === 2);
    await editor.focusText();
    const name = (await editor.page.locator('.tab.active.dirty').getAttribute('data-resource-name'))!;
    await editor.save();
    await previewOf(editor, name);
    await eventually('a preview of each', async () => {
      const titles = await previewTabs(editor).allTextContents();
      return titles.length === 2 && new Set(titles.map((title) => title.trim())).size === 2;
    });
  });
});
