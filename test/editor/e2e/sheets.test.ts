import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { eventually } from '../editor.ts';
import { withEditor } from './with-editor.ts';

const job = 'plant-swap/swap.job.yaml';

describe('The sheets of a job, as a person uses them', () => {
  const current = withEditor();

  it('pin a piece that is dragged, go round it, and let go of it by the editor’s own undo', async () => {
    const editor = current();
    const before = readFileSync(join(editor.folder, job), 'utf8');
    await editor.openFile(job);
    await editor.runCommand('Tagwright: Show Sheets to the Side');
    const view = editor.preview();
    const sheet = view.getByRole('group', { name: /^ply3 sheet 1/ });
    await sheet.waitFor({ state: 'attached' });
    await view.locator('#progress').waitFor({ state: 'hidden' });
    const middle = async () => {
      const box = (await sheet.getByRole('option').last().locator('use').boundingBox())!;
      return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
    };
    const { x, y } = await middle();
    await editor.page.mouse.click(x, y);
    await view.locator('#card').waitFor();
    await editor.page.mouse.move(x, y);
    await editor.page.mouse.down();
    await editor.page.mouse.move(x - 5, y - 40, { steps: 5 });
    await editor.page.mouse.up();
    const pinned = view.getByRole('option', { name: /, pinned$/ });
    await pinned.waitFor({ state: 'attached' });
    assert.equal(await pinned.getAttribute('aria-selected'), 'true', 'it is the one that was dragged');
    await editor.focusText();
    await editor.page.keyboard.press('Control+s');
    const text = await editor.written(job, (now) => now !== before);
    assert.ok(text.startsWith(before), 'nothing else has changed');
    assert.match(
      text.slice(before.length),
      /^\nfixed:\n {2}- \{spec: pot-label\.tag\.yaml, order: \d+.*sheet: 1, at: \[[\d.]+ mm, [\d.]+ mm\]\}\n$/,
    );
    await editor.page.keyboard.press('Control+z');
    await pinned.waitFor({ state: 'detached' });
  });

  it('and the text find each other', async () => {
    const editor = current();
    await editor.openFile(job);
    await editor.runCommand('Tagwright: Show Sheets to the Side');
    const view = editor.preview();
    const piece = view.getByRole('option', { name: /order 103/i }).first();
    await piece.waitFor({ state: 'attached' });
    await view.locator('#progress').waitFor({ state: 'hidden' });
    const { x, y, width, height } = (await piece.locator('use').boundingBox())!;
    await editor.page.mouse.click(x + width / 2, y + height / 2);
    // The line of the job that names the table of orders.
    await editor.page.locator('.active-line-number', { hasText: /^9$/ }).waitFor();
    await view.locator('#stage').press('Enter');
    // The row of the order.
    await editor.page.locator('.statusbar-item', { hasText: 'Ln 5,' }).waitFor();
    await editor.goTo(3, 1);
    await eventually('the pieces of that row', async () => (await view.locator('.lit.line').count()) === 6);
  });
});
