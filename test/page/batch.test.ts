import assert from 'node:assert/strict';
import type { SceneMessage } from '../../src/preview/protocol.ts';
import { sceneMessage, source } from './scenes.ts';
import { usePreview } from './use-preview.ts';

/** `more`: a finding of the third tag, beside those of the first. */
function ofBatch(row: number, labels = ['Sorrel', 'Borage', '<b>Sea Kale</b>']): SceneMessage {
  const message = sceneMessage();
  const elsewhere = { ...message.pins[0]!, id: 'elsewhere', points: [], row: 2, message: '“Sea Kale”: Weak bridge.' };
  return { ...message, batch: { labels, row }, pins: [...message.pins, elsewhere] };
}

describe('The tags of a batch, in the preview', () => {
  const preview = usePreview();
  const asked = async () => (await preview.messages()).filter(({ type }) => type === 'show-row');

  it('are listed by name, and the one that is shown is chosen', async () => {
    await preview.open({}, ofBatch(1));
    const list = preview.page.getByRole('combobox', { name: 'Tag that is shown' });
    assert.deepEqual(await list.locator('option').allTextContents(), ['Sorrel', 'Borage', '<b>Sea Kale</b>']);
    assert.equal(await list.inputValue(), 'Borage');
    assert.equal(await preview.page.locator('#batch-count').textContent(), '2 of 3');
    await list.selectOption('Sorrel');
    assert.deepEqual(await asked(), [{ type: 'show-row', source, row: 0 }]);
    // The drawing follows what the host sends, and so does the list.
    await preview.send(ofBatch(0));
    assert.equal(await preview.page.locator('#batch-count').textContent(), '1 of 3');
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
      [0, 1, 1, 0],
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
