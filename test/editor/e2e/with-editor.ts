import { Editor, type OpenOptions } from '../editor.ts';

/** By its options: starting server and browser costs as much as many a test. */
const open = new Map<string, Editor>();

process.once('exit', () => {
  for (const editor of open.values()) editor.abandon();
});

/**
 * One editor for all suites of a process that ask for the same, cleared before each test, with a picture of the editor when
 * a test fails. After that, and where it cannot be cleared, it is another one.
 */
export function withEditor(options: OpenOptions = {}): () => Editor {
  const key = JSON.stringify(options);
  let failure: unknown;

  const end = async (): Promise<void> => {
    const ended = open.get(key);
    open.delete(key);
    await ended?.close();
  };

  beforeEach(async function () {
    failure = undefined;
    const editor = open.get(key);
    if (editor)
      try {
        await editor.clear();
      } catch (error) {
        console.log(`  Not cleared, so another editor is opened: ${String(error)}`);
        await editor.screenshot(`not cleared - ${this.currentTest!.title}`);
        await end();
      }
    try {
      if (!open.has(key)) open.set(key, await Editor.open(options));
    } catch (error) {
      // A hook has no second attempt, and takes the rest of the suite with it; a test has one.
      failure = error;
    }
  });

  afterEach(async function () {
    // A test that will have a second attempt is neither passed nor failed yet.
    if (this.currentTest!.state === 'passed') return;
    try {
      await open.get(key)?.screenshot(`failed - ${this.currentTest!.title}`);
    } finally {
      await end();
    }
  });

  return () => {
    const editor = open.get(key);
    if (!editor) throw failure;
    return editor;
  };
}
