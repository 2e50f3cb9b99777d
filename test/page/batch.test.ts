import assert from 'node:assert/strict';
import type { SceneMessage } from '../../src/protocol/preview.ts';
import { sceneMessage, source } from './scenes.ts';
import { usePreview } from './use-preview.ts';

/** `more`: a finding of the third tag, beside those of the first. */
function ofBatch(row: number, labels = ['Sorrel', 'Borage', '<b>Sea Kale</b>']): SceneMessage {
  const message = sceneMessage();
  const elsewhere = {
    ...message.pins.at(-1)!,
    id: 'elsewhere',
    points: [],
    row: 2,
    message: '“Sea Kale”: Weak bridge.',
  };
  return { ...message, batch: { labels, row }, pins: [...message.pins, elsewhere] };
}

describe('The tags of a batch, in the preview', () => {
  const preview = usePreview();
  const asked = async () => (await preview.messages()).filter(({ type }) => type === 'show-row');

  it('stand in a strip by name, and the one that is shown is chosen', async () => {
    await preview.open({}, ofBatch(1));
    const strip = preview.page.getByRole('listbox', { name: 'Tag that is shown' });
    assert.deepEqual(await strip.locator('.name').allTextContents(), ['Sorrel', 'Borage', '<b>Sea Kale</b>']);
    const chosen = strip.locator('[aria-selected=true] .name');
    assert.equal(await chosen.textContent(), 'Borage');
    assert.equal(await preview.page.locator('#batch-count').textContent(), '2 of 3');
    await strip.getByRole('option', { name: 'Sorrel' }).click();
    assert.deepEqual(await asked(), [{ type: 'show-row', source, row: 0 }]);
    // The drawing follows what the host sends, and so does the strip.
    await preview.send(ofBatch(0));
    assert.equal(await chosen.textContent(), 'Sorrel');
    assert.equal(await preview.page.locator('#batch-count').textContent(), '1 of 3');
  });

  it('stand in the middle of what the open panel leaves, from the first step on', async () => {
    await preview.open({}, ofBatch(0));
    await preview.send(ofBatch(1));
    await preview.transform();
    const shape = (await preview.page.locator('.shape[data-id="back/body-0"]').boundingBox())!;
    const stage = (await preview.page.locator('#stage').boundingBox())!;
    assert.ok((await preview.page.locator('#dock').boundingBox())!.height > 40, 'the list is open');
    const off = shape.y + shape.height / 2 - stage.y - stage.height / 2;
    assert.ok(Math.abs(off) < 12, `${off} px off the middle`);
    // What opens later moves nothing.
    const before = await preview.transform();
    await preview.send(ofBatch(1));
    assert.equal(await preview.transform(), before);
  });

  it('are said to be checked as long as the others are, and to have no problems only then', async () => {
    const well = { ...ofBatch(0), pins: [] };
    await preview.open({}, { ...well, toCheck: 39 });
    const summary = preview.page.locator('#summary');
    assert.match(await summary.innerText(), /Checking 39 more/);
    assert.doesNotMatch(await summary.innerText(), /No problems/);
    await preview.send({ ...well, toCheck: 0 });
    assert.match(await summary.innerText(), /No problems/);
    assert.doesNotMatch(await summary.innerText(), /Checking/);
  });

  it('are one stop of the Tab key, and arrows choose', async () => {
    await preview.open({}, ofBatch(0));
    assert.equal(await preview.page.locator('#batch-rows [tabindex="0"]').count(), 1);
    await preview.page.locator('#batch-rows [tabindex="0"]').focus();
    await preview.page.keyboard.press('ArrowRight');
    await preview.send(ofBatch(1));
    assert.equal(await preview.page.evaluate(() => document.activeElement!.getAttribute('title')), 'Borage');
    await preview.page.keyboard.press('End');
    await preview.page.keyboard.press('Home');
    assert.deepEqual(
      (await asked()).map((message) => 'row' in message && message.row),
      [1, 2, 0],
    );
    assert.equal(await preview.page.locator('#stage').evaluate((stage) => stage === document.activeElement), false);
  });

  it('are gone through as often as a key is pressed, however long a drawing takes', async () => {
    const labels = ['Sorrel', 'Borage', 'Sea Kale', 'Lovage', 'Rue'];
    await preview.open({}, ofBatch(0, labels));
    const count = preview.page.locator('#batch-count');
    for (let press = 0; press < 3; press++) await preview.page.keyboard.press('PageDown');
    assert.deepEqual(
      (await asked()).map((message) => 'row' in message && message.row),
      [1, 2, 3],
    );
    assert.equal(await count.textContent(), '4 of 5');
    // Drawings of what was passed come late.
    await preview.send(ofBatch(1, labels));
    await preview.send(ofBatch(0, labels));
    assert.equal(await count.textContent(), '4 of 5');
    await preview.page.keyboard.press('PageUp');
    await preview.send(ofBatch(2, labels));
    assert.equal(await count.textContent(), '3 of 5');
    // Chosen elsewhere, such as by the cursor.
    await preview.send(ofBatch(0, labels));
    assert.equal(await count.textContent(), '1 of 5');
    await preview.page.keyboard.press('PageDown');
    await preview.send(ofBatch(4, labels));
    assert.equal(await count.textContent(), '5 of 5');
  });

  it('show a picture, a size and a mark each, once all are known, which stay while one types', async () => {
    await preview.open({}, ofBatch(0));
    const picture = {
      size: { width: 144, height: 60 },
      paths: [{ use: 'material', data: 'M2 2L142 2L142 58Z' }],
    } as const;
    const sized = { picture, width: 80, height: 30, problems: 0, isHardToRead: false, isTall: false };
    const tags = [
      { ...sized, problems: 2, severity: 'error', isHardToRead: true },
      { ...sized, height: 64, isTall: true },
      { problems: 1, severity: 'error', isHardToRead: false, isTall: false },
    ] as const;
    await preview.send({ type: 'batch', source, version: 1, tags });
    await preview.page.locator('#batch-rows path.material').first().waitFor();
    const options = preview.page.getByRole('option');
    const titles = await options.evaluateAll((all) => all.map((each) => each.getAttribute('title')));
    assert.deepEqual(titles, [
      'Sorrel, 80.0 × 30.0 mm, 2 problems, hard to read',
      'Borage, 80.0 × 64.0 mm, much taller than the others',
      '<b>Sea Kale</b>, no drawing, 1 problem',
    ]);
    assert.equal(await options.first().locator('.size').textContent(), 'hard to read');
    const marks = await options.evaluateAll((all) =>
      all.map((each) => {
        const mark = each.querySelector<SVGElement>('.severity')!;
        return mark.checkVisibility() ? mark.dataset['severity'] : undefined;
      }),
    );
    assert.deepEqual(marks, ['error', 'info', 'error']);
    await preview.send({ ...ofBatch(0), version: 2 });
    assert.equal(await preview.page.locator('#batch-rows path.material').count(), 2);
    await preview.send({ type: 'batch', source, version: 1, tags: [] });
    await preview.send(ofBatch(0, ['Sorrel', 'Borage', 'Dill']));
    assert.equal(
      await preview.page.locator('#batch-rows path').filter({ visible: true }).count(),
      0,
      'of another list',
    );
  });

  it('are whole, with their sizes in inches, however wide the panel is', async () => {
    const labels = ['I', 'Gig', 'Ångström', 'MCMXCVIII', 'Dill', 'Rue'];
    for (const width of [320, 500, 730, 900]) {
      const message = ofBatch(0, labels);
      await preview.open({ width }, { ...message, scene: { ...message.scene!, units: 'in' } });
      const tag = { width: 69.85, height: 28.575, problems: 0, isHardToRead: false, isTall: false };
      await preview.send({ type: 'batch', source, version: 1, tags: labels.map(() => tag) });
      const size = preview.page.locator('#batch-rows .size').first();
      await preview.page.waitForFunction(() => document.querySelector('#batch-rows .size')?.textContent !== '');
      assert.equal(await size.textContent(), '2.75 × 1.125 in');
      const cut = await preview.page.locator('#batch-rows').evaluate((list) => {
        const { left, right } = list.getBoundingClientRect();
        return [...list.querySelectorAll('[role=option]')].filter((option) => {
          const box = option.getBoundingClientRect();
          const size = option.querySelector('.size')!;
          const isSeen = box.left < right - 3 && box.right > left + 3;
          return isSeen && (box.right > right + 1 || size.scrollWidth > size.clientWidth);
        }).length;
      });
      assert.equal(cut, 0, `${width} px`);
      await preview.close();
    }
    await preview.open();
  });

  it('leave two thirds of the height to the drawing, also where the panel is narrow', async () => {
    for (const [width, height] of [
      [900, 700],
      [430, 600],
      [300, 420],
    ] as const) {
      await preview.open({ width, height }, { ...ofBatch(0), pins: [] });
      const share = await preview.page.evaluate(
        () => document.querySelector('main')!.getBoundingClientRect().height / window.innerHeight,
      );
      assert.ok(share > 0.66, `${width} × ${height}: ${share}`);
      const right = await preview.page.locator('#batch-count').evaluate((count) => count.getBoundingClientRect().right);
      assert.ok(right <= width, `${right}`);
      await preview.close();
    }
  });

  it('are gone through one after another, round and round, by buttons and keys', async () => {
    await preview.open({}, ofBatch(2));
    await preview.page.getByRole('button', { name: 'Next tag' }).click();
    await preview.page.getByRole('button', { name: 'Previous tag' }).click();
    await preview.page.locator('#stage').focus();
    await preview.page.keyboard.press('PageUp');
    await preview.page.keyboard.press('PageDown');
    assert.deepEqual(
      (await asked()).map((message) => 'row' in message && message.row),
      [0, 2, 1, 2],
    );
  });

  it('are not spoken of where there is one, or no batch', async () => {
    await preview.open();
    assert.equal(await preview.page.locator('#batch').isVisible(), false);
    await preview.page.locator('#stage').focus();
    await preview.page.keyboard.press('PageDown');
    await preview.send(ofBatch(0, ['Sorrel']));
    assert.equal(await preview.page.locator('#batch').isVisible(), false);
    assert.deepEqual(await asked(), []);
  });

  it('are shown by a click on what was found on them, which has no pin on this one', async () => {
    await preview.open({}, ofBatch(0));
    assert.equal(await preview.page.locator('#pins [data-pin="elsewhere"]').count(), 0);
    await preview.page.locator('#issues button[data-pin="elsewhere"]').first().click();
    assert.deepEqual(await asked(), [{ type: 'show-row', source, row: 2 }]);
  });
});
