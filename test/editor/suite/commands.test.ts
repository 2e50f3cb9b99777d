import assert from 'node:assert/strict';
import * as vscode from 'vscode';
import { closeAll, eventually, show } from './support.ts';

function previews(): vscode.Tab[] {
  return vscode.window.tabGroups.all
    .flatMap(({ tabs }) => tabs)
    .filter(({ input }) => input instanceof vscode.TabInputWebview && input.viewType.includes('tagwright'));
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
});
