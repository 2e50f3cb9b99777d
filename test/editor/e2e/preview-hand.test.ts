import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { FrameLocator } from 'playwright-core';
import { eventually, type Editor } from '../editor.ts';
import { withEditor } from './with-editor.ts';

const saved = (editor: Editor, file: string): string => readFileSync(join(editor.folder, file), 'utf8');

/** On the screen, of something drawn. */
async function middleOf(preview: FrameLocator, selector: string): Promise<[number, number]> {
  const { x, y, width, height } = (await preview.locator(selector).first().boundingBox())!;
  return [x + width / 2, y + height / 2];
}

/** Once all has followed that moves the drawing on the page, such as a caution below it. */
async function settled(preview: FrameLocator): Promise<void> {
  await preview.locator('#takes dl dd').first().waitFor({ state: 'attached' });
}

async function centreOf(preview: FrameLocator, selector: string): Promise<[number, number]> {
  return preview
    .locator(selector)
    .first()
    .evaluate((element) => {
      const { x, y, width, height } = (element as SVGGraphicsElement).getBBox();
      return [x + width / 2, y + height / 2] as [number, number];
    });
}

describe('The hand in the preview', () => {
  const current = withEditor();

  it('drags a ring: it is drawn anew on the way, written as one step with the comments kept, and Ctrl+Z takes it back', async () => {
    const editor = current();
    const file = '2-script-name.tag.yaml';
    await editor.openFile(file);
    const before = saved(editor, file);
    const preview = await editor.openPreview();
    const ring = '[data-id="tag/hanger-0"]';
    const [fromX] = await centreOf(preview, ring);
    await settled(preview);
    const [x, y] = await middleOf(preview, ring);
    const { mouse, keyboard } = editor.page;
    await mouse.move(x, y);
    await mouse.down();
    await mouse.move(x + 8, y + 12, { steps: 3 });
    await mouse.move(x + 24, y + 40, { steps: 4 });
    await eventually(
      'the ring to be drawn where the hand is',
      async () => (await centreOf(preview, ring))[0] > fromX + 2,
    );
    await editor.screenshot('dragging-a-ring');
    assert.equal(saved(editor, file), before, 'the text waits');
    await mouse.up();
    await editor.page.locator(`.tab.dirty[data-resource-name="${file}"]`).first().waitFor();
    await editor.page.locator(`.tab[data-resource-name="${file}"]`).first().click();
    await editor.save();
    const nudge = /, nudge: \{right: ([\d.]+) mm, down: ([\d.]+) mm\}/;
    const after = await editor.written(file, (text) => nudge.test(text));
    assert.equal(after.replace(nudge, ''), before, 'nothing else is touched');

    await preview.locator('#stage').click({ position: { x: 5, y: 5 } });
    await keyboard.press('Control+z');
    await eventually(
      'the ring at its own place',
      async () => Math.abs((await centreOf(preview, ring))[0] - fromX) < 0.01,
    );
    await eventually('the keyboard to be back here', () => preview.locator('body').evaluate(() => document.hasFocus()));
    await editor.page.locator(`.tab[data-resource-name="${file}"]`).first().click();
    await editor.save();
    // One step takes the whole drag back.
    await editor.written(file, (text) => text === before);
  });

  it('leaves everything as it was when Escape is pressed on the way', async () => {
    const editor = current();
    const file = '5-stacked-plate.tag.yaml';
    await editor.openFile(file);
    const preview = await editor.openPreview();
    await settled(preview);
    const name = '[data-id="tag/mark-0"]';
    const from = await centreOf(preview, name);
    // A stroke of the first letter, not the room between letters.
    const [x, y] = await preview.locator(`${name} .hit`).evaluate((path) => {
      const { left, top } = (path as SVGPathElement).ownerSVGElement!.getBoundingClientRect();
      const [, px, py] = /M([-\d.]+) ([-\d.]+)/.exec(path.getAttribute('d')!)!;
      const at = new DOMPoint(Number(px), Number(py)).matrixTransform((path as SVGPathElement).getCTM()!);
      return [at.x + left, at.y + top] as [number, number];
    });
    const frame = (await preview.owner().boundingBox())!;
    const { mouse, keyboard } = editor.page;
    await mouse.move(frame.x + x, frame.y + y);
    await mouse.down();
    await mouse.move(frame.x + x + 30, frame.y + y - 20, { steps: 5 });
    await eventually('the name to be drawn elsewhere', async () => (await centreOf(preview, name))[0] > from[0] + 1);
    await keyboard.press('Escape');
    await eventually(
      'the name where it was',
      async () => Math.abs((await centreOf(preview, name))[0] - from[0]) < 0.01,
    );
    await mouse.up();
    assert.equal(await editor.page.locator('.tab.dirty').count(), 0);
  });

  it('moves by the arrow keys and changes the width, in steps that are written into the text', async () => {
    const editor = current();
    const file = '5-stacked-plate.tag.yaml';
    await editor.openFile(file);
    const before = saved(editor, file);
    const preview = await editor.openPreview();
    const { keyboard } = editor.page;
    await preview.locator('#stage').focus();
    await eventually('the name to be taken hold of', async () => {
      if ((await preview.locator('.words').textContent()) === 'name') return true;
      await keyboard.press('s');
      return false;
    });
    await editor.screenshot('taken-hold-of');
    await keyboard.press('Shift+ArrowUp');
    await keyboard.press('ArrowLeft');
    await keyboard.press('ArrowLeft');
    const written = async (pattern: RegExp) => {
      await eventually(`${pattern} in the text`, async () => {
        await editor.page.locator(`.tab[data-resource-name="${file}"]`).first().click();
        await keyboard.press('Control+s');
        return pattern.test(saved(editor, file));
      });
    };
    await written(/\n {4}nudge: \{left: 0\.2 mm, up: 1 mm\}\n/);
    await preview.locator('#stage').focus();
    await keyboard.press('Control+Shift+ArrowRight');
    await written(/\n {4}width: 63 mm\n/);
    assert.equal(
      saved(editor, file).replace('    nudge: {left: 0.2 mm, up: 1 mm}\n', '').replace('63 mm', '62 mm'),
      before,
    );
  });

  it('widens a shape by its handle', async () => {
    const editor = current();
    const file = '5-stacked-plate.tag.yaml';
    await editor.openFile(file);
    const preview = await editor.openPreview();
    const { mouse, keyboard } = editor.page;
    await preview.locator('#stage').focus();
    await eventually('the name to be taken hold of', async () => {
      if ((await preview.locator('.words').textContent()) === 'name') return true;
      await keyboard.press('s');
      return false;
    });
    const name = '[data-id="tag/mark-0"]';
    const widthOf = () =>
      preview
        .locator(name)
        .first()
        .evaluate((element) => (element as SVGGraphicsElement).getBBox().width);
    const before = await widthOf();
    const [x, y] = await middleOf(preview, '.handle[data-axis=width]');
    await mouse.move(x, y);
    await mouse.down();
    await mouse.move(x + 20, y, { steps: 4 });
    await eventually('a wider name while the handle is held', async () => (await widthOf()) > before + 1);
    await editor.screenshot('widening-by-a-handle');
    await mouse.up();
    await eventually('another width in the text', async () => {
      await editor.page.locator(`.tab[data-resource-name="${file}"]`).first().click();
      await keyboard.press('Control+s');
      return Number(/\n {4}width: ([\d.]+) mm/.exec(saved(editor, file))?.[1]) > 63;
    });
  });
});
