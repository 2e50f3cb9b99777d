import assert from 'node:assert/strict';
import { appendFileSync, existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { eventually, type Editor } from '../editor.ts';
import { withEditor } from './with-editor.ts';

const spec = '10-seedling-names.tag.yaml';
const job = 'plant-swap/swap.job.yaml';

/** With two of its six names: how densely many are laid out is tested elsewhere, and takes both cores meanwhile. */
const withFewNames = ({ folder }: Editor): string =>
  readFileSync(join(folder, spec), 'utf8').replaceAll(/ {2}- \{name: (?!Sorrel|Sea Kale).*\n/g, '');

describe('A batch, as a person uses it', () => {
  const current = withEditor();

  it('shows the tag whose row the cursor is in, or that is chosen, and checks them all', async () => {
    const editor = current();
    await editor.openFile(spec);
    const preview = await editor.openPreview();
    const shown = preview.locator('#batch-count');
    const title = preview.locator('#title');
    await eventually('the first tag', async () => {
      return `${await shown.textContent()}, ${await title.textContent()}` === '1 of 6, Seedling label, Sorrel';
    });

    await editor.goAfter('name: Lovage');
    await eventually('the tag of that row', async () => (await title.textContent()) === 'Seedling label, Lovage');
    await preview.locator('#batch-next').click();
    await eventually('the next one', async () => (await title.textContent()) === 'Seedling label, Chives');
    await editor.focusText();
    // So long that its second line becomes too small, though it is not the one that is looked at.
    await editor.goAfter('name: Sweet Cicely');
    await editor.type(' of the Far Fields');
    await editor.goAfter('name: Sorrel');
    const found = preview.locator('#issues li', { hasText: '“Sweet Cicely of the Far Fields”' });
    await found.first().waitFor();
    await eventually('the tag of that row', async () => (await title.textContent()) === 'Seedling label, Sorrel');
    await editor.problem('“Sweet Cicely of the Far Fields”: “sown in November” is too small');
    await found.first().getByRole('button').first().click();
    await eventually('the one it was found on', async () => (await shown.textContent()) === '5 of 6');
    // Where only another is looked at, what is known of the others stays.
    await preview.locator('#batch-next').click();
    await eventually(
      'the last one',
      async () => (await title.textContent()) !== 'Seedling label, Sweet Cicely of the Far Fields',
    );
    assert.ok((await found.count()) > 0);
    assert.doesNotMatch(await preview.locator('#summary').innerText(), /No problems|Checking/);
  });

  it('lays its tags out on sheets beside it, and anew as the list grows', async () => {
    const editor = current();
    writeFileSync(join(editor.folder, 'few.tag.yaml'), withFewNames(editor));
    await editor.openFile('few.tag.yaml');
    await editor.runCommand('Tagwright: Show Sheets to the Side');
    const view = editor.preview();
    const sheets = (pieces: number) =>
      view.getByRole('group', { name: new RegExp(`300 × 200 mm.* ${pieces} pieces$`) }).waitFor({ state: 'attached' });
    await sheets(4);
    await editor.focusText();
    await editor.goAfter('{name: Sea Kale, sown: April}');
    await editor.type('\n- {name: Rue, sown: May}');
    await sheets(6);
    await view.getByRole('button', { name: 'Export…' }).click();
    await editor.page.getByPlaceholder('Which formats?').waitFor();
  });

  it('says which tag of a sheet has an error, and leads to its line', async () => {
    const editor = current();
    // Letters by the dozen are laid out around one another for long where there are two of each tag.
    const loose = withFewNames(editor)
      .replace(', copies: 2', '')
      .replace('engrave: [words]', 'body: [plate, words]')
      .replace('    body: [plate]\n', '')
      .replace(/fit: .*/, 'x_height: 5.5 mm\n    place: {on: plate}');
    writeFileSync(
      join(editor.folder, 'loose.tag.yaml'),
      loose.replace('name: Sorrel', 'name: Sorrel from the Far Fields'),
    );
    await editor.openFile('loose.tag.yaml');
    await editor.runCommand('Tagwright: Show Sheets to the Side');
    const problems = editor.preview().locator('.problems li');
    await problems.filter({ hasText: 'Sorrel from the Far Fields' }).first().waitFor();
    const line = problems.first().getByRole('button');
    const number = /\d+/.exec((await line.textContent())!)![0];
    await line.click();
    await editor.page.locator('.statusbar-item', { hasText: `Ln ${number},` }).waitFor();
  });

  it('offers sizes of sheets where the spec has none; a click writes the line, and Undo takes it back', async () => {
    const editor = current();
    await editor.openFile('3-engraved-backing.tag.yaml');
    await editor.runCommand('Tagwright: Show Sheets to the Side');
    const view = editor.preview();
    const size = view.getByRole('button', { name: '400 × 300 mm' });
    await size.click();
    await view.getByRole('group', { name: /400 × 300 mm/ }).waitFor({ state: 'attached' });
    await editor.focusText();
    await editor.page.keyboard.press('Control+z');
    await size.waitFor();
  });

  it('follows a table beside the spec, and exports a file for every row', async () => {
    const editor = current();
    const at = (name: string) => join(editor.folder, name);
    const table = at('swap.csv');
    writeFileSync(table, 'name,sown\nSorrel,March\nSea Kale,April\n');
    const text = readFileSync(at(spec), 'utf8');
    writeFileSync(at('swap.tag.yaml'), text.replace(/batch:\n(?: {2}-.*\n)+/, 'batch: swap.csv\n'));
    await editor.openFile('swap.tag.yaml');
    const preview = await editor.openPreview();
    await preview.locator('#batch-count', { hasText: '1 of 2' }).waitFor();
    writeFileSync(table, 'name,sown\nSorrel,March\nSea Kale,April\nBorage,May\n');
    await preview.locator('#batch-count', { hasText: '1 of 3' }).waitFor();

    await editor.openFile('swap.csv');
    await editor.goTo(3, 1);
    await preview.locator('#batch-count', { hasText: '2 of 3' }).waitFor();
    await editor.openFile('swap.tag.yaml');

    await editor.runCommand('Tagwright: Export…');
    await editor.choose('All 3 tags of the batch');
    await editor.page.getByPlaceholder('Which formats?').waitFor();
    await editor.page.locator('.quick-input-widget').getByRole('button', { name: 'OK' }).click();
    await editor.acceptQuickInput('/samples/');
    // In a folder of their own.
    const made = () => (existsSync(at('cut')) ? readdirSync(at('cut')) : []);
    await eventually('three files', () => Promise.resolve(made().length === 3));
    assert.deepEqual(made().sort(), ['swap-borage.svg', 'swap-sea-kale.svg', 'swap-sorrel.svg']);
  });

  describe('The sheets of a job, as a person uses them', () => {
    /** Its text, with so little effort that the processors are free for the editor. */
    const soonLaidOut = ({ folder }: Editor): string => {
      appendFileSync(join(folder, job), 'effort: 0.1\n');
      return readFileSync(join(folder, job), 'utf8');
    };

    it('pin a piece that is dragged, go round it, and let go of it by the editor’s own undo', async () => {
      const editor = current();
      const before = soonLaidOut(editor);
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
      const text = await editor.written(job, (now) => now !== '' && now !== before);
      assert.equal(text.slice(0, before.length), before, 'nothing else has changed');
      assert.match(
        text.slice(before.length),
        /^\nfixed:\n {2}- \{spec: pot-label\.tag\.yaml, order: \d+.*sheet: 1, at: \[[\d.]+ mm, [\d.]+ mm\]\}\n$/,
      );
      await editor.page.keyboard.press('Control+z');
      await pinned.waitFor({ state: 'detached' });
    });

    it('lead from a line that is left out to its cell in the table', async () => {
      const editor = current();
      soonLaidOut(editor);
      const table = join(editor.folder, 'plant-swap/orders.csv');
      writeFileSync(table, readFileSync(table, 'utf8').replace('Borage,April,6', 'Borage,April,six'));
      const lines = readFileSync(table, 'utf8').split('\n');
      const row = lines.findIndex((line) => line.includes('six'));
      const column = lines[row]!.indexOf('six') + 1;
      await editor.openFile(job);
      await editor.runCommand('Tagwright: Show Sheets to the Side');
      const item = editor.preview().locator('.problems li', { hasText: '“six” is not a quantity' });
      await item.getByRole('button', { name: `orders.csv, line ${row + 1}`, exact: true }).click();
      await editor.page.locator('.tab.active[data-resource-name="orders.csv"]').waitFor();
      await editor.page.locator('.statusbar-item', { hasText: `Ln ${row + 1}, Col ${column}` }).waitFor();
    });

    it('are exported without a line that cannot be made only where that is chosen, into a folder of their own', async () => {
      const editor = current();
      const at = (name: string) => join(editor.folder, 'plant-swap', name);
      // One tag of one spec, and what nothing makes.
      const few = soonLaidOut(editor)
        .replace('orders.csv', 'few.csv')
        .replace(/ {2}- \{spec: table.*\n/, '');
      writeFileSync(at('few.job.yaml'), few);
      writeFileSync(at('few.csv'), 'order,name,sown,quantity\n101,Sorrel,March,1\n102,Borage,April,six\n');
      await editor.openFile('plant-swap/few.job.yaml');
      const asked = async () => {
        await editor.runCommand('Tagwright: Export Job…');
        await editor.acceptQuickInput('/plant-swap/');
        const question = editor.page.locator('.monaco-dialog-box', { hasText: 'Not all of the job can be cut.' });
        await question.waitFor();
        return question;
      };
      const question = await asked();
      assert.match((await question.textContent())!, /102, Borage: “six” is not a quantity/);
      await eventually('the safe answer to have the keyboard', () =>
        question.getByRole('button', { name: 'Show the Problem' }).evaluate((each) => each.matches(':focus')),
      );
      await editor.screenshot('job-left-out');
      await editor.page.keyboard.press('Enter');
      await editor.page.locator('.tab.active[data-resource-name="few.csv"]').waitFor();
      assert.ok(!existsSync(at('cut')));
      await editor.openFile('plant-swap/few.job.yaml');
      await asked();
      await editor.answer(/Not all of the job/, 'Export the Rest');
      // All of them are there once it is said.
      await editor.runCommand('Notifications: Show Notifications');
      await editor.page.locator('.notification-list-item', { hasText: /Exported \d+ files: few-/ }).waitFor();
      assert.ok(readdirSync(at('cut')).includes('few-pieces.csv'));
    });

    it('are cut as they are shown, which ends the search for better ones, and compared with others figure by figure', async () => {
      const editor = current();
      // To its end the search would take many minutes.
      appendFileSync(join(editor.folder, job), 'effort: 100\n');
      await editor.openFile(job);
      await editor.runCommand('Tagwright: Show Sheets to the Side');
      const view = editor.preview();
      await view.locator('#progress').getByRole('button', { name: 'Stop' }).click();
      await view.locator('#progress').getByText('Stopped. Export cuts these sheets.').waitFor();
      const open = view.locator('#summary[aria-expanded="false"]');
      if ((await open.count()) > 0) await open.click();
      // The facts of what is shown.
      await view.locator('dl dt', { hasText: 'Pieces' }).waitFor();
      await view.getByRole('button', { name: 'Keep to Compare' }).click();
      const row = view.getByRole('row', { name: /^Sheets/ });
      await row.waitFor();
      assert.match((await row.innerText()).replaceAll(/\s+/g, ' '), /^Sheets (\d+) \1 same$/);
      await view.locator('#progress').getByRole('button', { name: 'Continue' }).click();
      await view.locator('#progress').getByText('Looking for a better layout…').waitFor();
      await view.locator('#export').click();
      await editor.acceptQuickInput('/plant-swap/');
      const cut = join(editor.folder, 'plant-swap', 'cut');
      await eventually('the files', () =>
        Promise.resolve(existsSync(cut) && readdirSync(cut).includes('swap-pieces.csv')),
      );
      await view.locator('#progress').getByText('Stopped. Export cuts these sheets.').waitFor();
      const sheets = await view.locator('#summary').innerText();
      const written = readdirSync(cut).filter((name) => name.endsWith('.svg'));
      assert.equal(written.length, Number(/(\d+) sheets?/.exec(sheets)![1]));
    });

    it('and the text find each other', async () => {
      const editor = current();
      soonLaidOut(editor);
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
});
