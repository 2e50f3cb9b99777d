import assert from 'node:assert/strict';
import { createHash } from 'node:crypto';
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
    await editor.quickFix('Make the hole larger');
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
});
