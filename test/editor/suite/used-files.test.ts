import assert from 'node:assert/strict';
import * as vscode from 'vscode';
import { closeAll, codes, eventually, problems, replace, workspaceFile } from './support.ts';

const house = 'tagwright: 1\nstock: {min_web: 2 mm}\nshapes:\n  plate: {rectangle: [60 mm, 30 mm]}\n';
const spec = 'tagwright: 1\nuse: house-style.yaml\npieces:\n  tag: {body: [plate]}\n';

async function write(name: string, text: string): Promise<vscode.TextEditor> {
  await vscode.workspace.fs.writeFile(workspaceFile(name), new TextEncoder().encode(text));
  return vscode.window.showTextDocument(await vscode.workspace.openTextDocument(workspaceFile(name)), {
    preview: false,
  });
}

describe('A file that specs use', () => {
  afterEach(async () => {
    await closeAll();
    for (const name of ['house-style.yaml', 'uses.tag.yaml']) await vscode.workspace.fs.delete(workspaceFile(name));
  });

  it('is seen in them as it is typed, and as it was once the typing is thrown away', async () => {
    const shared = await write('house-style.yaml', house);
    const { document } = await write('uses.tag.yaml', spec);
    await eventually(
      'no problems',
      () => codes(document.uri),
      (found) => found.length === 0,
    );
    await vscode.window.showTextDocument(shared.document);
    const editor = vscode.window.activeTextEditor!;
    await replace(editor, '[60 mm, 30 mm]', '[60 mm, 0.5 mm]');
    assert.ok(editor.document.isDirty);
    const [thin] = await eventually(
      'a thin stroke',
      () => problems(document.uri),
      (found) => found.length > 0,
    );
    assert.equal(document.getText(thin!.range), 'house-style.yaml');
    await vscode.commands.executeCommand('workbench.action.files.revert');
    await eventually(
      'no problems again',
      () => codes(document.uri),
      (found) => found.length === 0,
    );
  });
});
