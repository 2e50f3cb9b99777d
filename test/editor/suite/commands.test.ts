import assert from 'node:assert/strict';
import * as vscode from 'vscode';
import { closeAll, eventually, replace, show } from './support.ts';

function previews(): vscode.Tab[] {
  return vscode.window.tabGroups.all
    .flatMap(({ tabs }) => tabs)
    .filter(({ input }) => input instanceof vscode.TabInputWebview && input.viewType.includes('tagwright'));
}

/** Kind, words, font, width: each as it is offered. */
function accepted<T>(asked: Thenable<T>): Promise<T> {
  return until(asked, 'workbench.action.acceptSelectedQuickOpenItem');
}

function calledOff<T>(asked: Thenable<T>): Promise<T> {
  return until(asked, 'workbench.action.closeQuickOpen');
}

/** Again and again: a preview may be there before the question is. */
async function until<T>(asked: Thenable<T>, command: string): Promise<T> {
  let isOver = false;
  void asked.then(() => (isOver = true));
  const press = async () => {
    await vscode.commands.executeCommand(command);
    return isOver;
  };
  await eventually(`the end of the questions by ${command}`, press, (is) => is);
  return asked;
}

describe('Commands', () => {
  afterEach(closeAll);

  it('open one preview beside a spec, and leave the cursor in the text', async () => {
    const editor = await show('1-jar-initial.tag.yaml');
    await vscode.commands.executeCommand('tagwright.openPreview');
    const [tab] = await eventually('a preview', previews, ({ length }) => length === 1);
    assert.match(tab!.label, /1-jar-initial/);
    assert.notEqual(tab!.group.viewColumn, editor.viewColumn);
    assert.equal(vscode.window.activeTextEditor?.document.uri.toString(), editor.document.uri.toString());

    await vscode.commands.executeCommand('tagwright.openPreview');
    assert.equal(previews().length, 1, 'the second time shows the same one');
  });

  it('open the guide, at its first page or where a link leads', async () => {
    const labels = () => vscode.window.tabGroups.all.flatMap(({ tabs }) => tabs).map(({ label }) => label);
    await vscode.commands.executeCommand('tagwright.openGuide');
    await eventually('the first page', labels, (found) => found.some((label) => label.includes('index.md')));
    await vscode.commands.executeCommand('tagwright.openGuide', 'reference', 'stock');
    await eventually('the reference', labels, (found) => found.some((label) => label.includes('reference.md')));
  });

  it('are for the tag whose preview is in front, where no text is', async () => {
    const editor = await show('1-jar-initial.tag.yaml');
    await replace(editor, '{at: top}', '{at: top, diameter: 1 mm}');
    const { document } = editor;
    const before = document.getText();
    await vscode.commands.executeCommand('tagwright.openPreview');
    await eventually('a preview', previews, ({ length }) => length === 1);
    await vscode.commands.executeCommand('workbench.action.focusSecondEditorGroup');
    await eventually(
      'the preview to have the keyboard',
      () => vscode.window.activeTextEditor,
      (active) => active === undefined,
    );
    await vscode.commands.executeCommand('tagwright.fixAll');
    assert.notEqual(document.getText(), before);
  });

  it('open a sample as a copy that is saved nowhere yet, with its preview', async () => {
    await vscode.commands.executeCommand('tagwright.openSample', '6-bed-arrow.tag.yaml');
    const document = vscode.window.visibleTextEditors.find((editor) => editor.document.isUntitled)?.document;
    assert.ok(document);
    assert.match(document.uri.path, /bed-arrow\.tag\.yaml$/);
    const sample = await vscode.workspace.fs.readFile(
      vscode.Uri.joinPath(
        vscode.extensions.getExtension('tagwright.tagwright')!.extensionUri,
        'samples',
        '6-bed-arrow.tag.yaml',
      ),
    );
    assert.equal(document.getText(), new TextDecoder().decode(sample));
    await eventually('a preview', previews, ({ length }) => length === 1);
  });

  it('make a new tag by a few questions, with its preview', async () => {
    const made = vscode.commands.executeCommand<vscode.Uri | undefined>('tagwright.newTag');
    const draft = () => vscode.workspace.textDocuments.find(({ isUntitled, isClosed }) => isUntitled && !isClosed);
    await eventually(
      'the draft',
      () => draft()?.getText() ?? '',
      (text) => text.includes('Jar initial'),
    );
    await eventually('its preview', previews, ({ length }) => length === 1);
    const uri = await accepted(made);
    assert.equal(uri?.scheme, 'untitled');
    assert.match(draft()!.getText(), /text: S, font: Alfa Slab One/);
    assert.equal(vscode.window.activeTextEditor?.document.uri.toString(), uri.toString());
  });

  it('keep both the answers and what was typed into the text meanwhile', async () => {
    const made = vscode.commands.executeCommand<vscode.Uri | undefined>('tagwright.newTag');
    await eventually('its preview', previews, ({ length }) => length === 1);
    const typed = vscode.window.visibleTextEditors.find(({ document }) => document.isUntitled)!;
    assert.ok(
      await typed.edit((edit) => {
        edit.insert(new vscode.Position(0, 0), '# oops\n');
      }),
    );
    const uri = await accepted(made);
    const texts = vscode.workspace.textDocuments.filter(({ isUntitled, isClosed }) => isUntitled && !isClosed);
    const own = texts.find((each) => each.uri.toString() === uri!.toString());
    assert.match(own!.getText(), /^tagwright: 1[^]*text: S, font: Alfa Slab One/);
    assert.ok(texts.some((each) => each !== own && each.getText().startsWith('# oops\n')));
    await eventually('one preview, of the new tag', previews, (all) => {
      return all.length === 1 && uri!.path.endsWith(all[0]!.label.replace('Preview: ', '/'));
    });
  });

  it('leave nothing behind when a new tag is called off', async () => {
    const made = vscode.commands.executeCommand<vscode.Uri | undefined>('tagwright.newTag');
    await eventually('its preview', previews, ({ length }) => length === 1);
    assert.equal(await calledOff(made), undefined);
    await eventually(
      'the draft to go',
      () => vscode.window.tabGroups.all.flatMap(({ tabs }) => tabs).length,
      (count) => count === 0,
    );
  });

  it('keep the preview of a new tag when one that was begun before goes', async () => {
    const first = vscode.commands.executeCommand<vscode.Uri | undefined>('tagwright.newTag');
    await eventually('its preview', previews, ({ length }) => length === 1);
    const second = vscode.commands.executeCommand<vscode.Uri | undefined>('tagwright.newTag');
    // Its question takes the place of the one before, which is thereby called off.
    assert.equal(await first, undefined);
    const labels = () => previews().map(({ label }) => label);
    await eventually('one preview, of the other', labels, ([label, ...more]) => {
      return /^Preview: tag(-2)?\.tag\.yaml$/.test(label ?? '') && more.length === 0;
    });
    await calledOff(second);
    await eventually('no preview', previews, ({ length }) => length === 0);
  });

  it('put a sample into the spec that is open, as one step', async () => {
    const { document } = await show('1-jar-initial.tag.yaml');
    const before = document.getText();
    await vscode.commands.executeCommand('tagwright.insertSample', '3-engraved-backing.tag.yaml');
    assert.match(document.getText(), / {2}backing: \{around: word/);
    await vscode.commands.executeCommand('undo');
    await eventually(
      'the text as it was',
      () => document.getText(),
      (text) => text === before,
    );
  });
});
