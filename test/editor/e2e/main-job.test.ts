import assert from 'node:assert/strict';
import { Editor } from '../editor.ts';

describe('The editor, as a person uses it', function () {
  let editor: Editor;

  before(async () => {
    editor = await Editor.open();
  });

  after(async () => {
    await editor.close();
  });

  afterEach(async function () {
    if (this.currentTest?.state === 'failed') await editor.screenshot(`failed ${this.currentTest.title}`);
  });

  it('draws the spec that is open beside it', async () => {
    await editor.openFile('sorrel.tag.yaml');
    const preview = await editor.openPreview();
    assert.ok(await preview.locator('#drawing .solid').first().getAttribute('d'));
  });
});
