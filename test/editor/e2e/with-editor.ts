import { Editor, type OpenOptions } from '../editor.ts';

/**
 * One editor for the suite it is called in, cleared before each test, with a picture of it when a test fails. After a test
 * that failed, and where it cannot be cleared, it is another one.
 */
export function withEditor(options?: OpenOptions): () => Editor {
  let editor: Editor | undefined;
  let failure: unknown;

  const end = async (): Promise<void> => {
    const ended = editor;
    editor = undefined;
    await ended?.close();
  };

  beforeEach(async function () {
    failure = undefined;
    if (editor)
      try {
        await editor.clear();
      } catch (error) {
        console.log(`  Not cleared, so another editor is opened: ${String(error)}`);
        await editor.screenshot(`not cleared - ${this.currentTest!.title}`);
        await end();
      }
    try {
      editor ??= await Editor.open(options);
    } catch (error) {
      // A hook has no second attempt, and takes the rest of the suite with it; a test has one.
      failure = error;
    }
  });

  afterEach(async function () {
    // A test that will have a second attempt is neither passed nor failed yet.
    if (this.currentTest!.state === 'passed') return;
    try {
      await editor?.screenshot(`failed - ${this.currentTest!.title}`);
    } finally {
      await end();
    }
  });

  after(end);

  return () => {
    if (!editor) throw failure;
    return editor;
  };
}
