import { Editor, type OpenOptions } from '../editor.ts';

/** A fresh editor for each test of the suite it is called in, with a picture of it when the test fails. */
export function withEditor(options?: OpenOptions): () => Editor {
  let editor: Editor;

  beforeEach(async () => {
    editor = await Editor.open(options);
  });

  afterEach(async function () {
    if (this.currentTest?.state === 'failed') await editor.screenshot(`failed - ${this.currentTest.title}`);
    await editor.close();
  });

  return () => editor;
}
