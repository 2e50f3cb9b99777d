import assert from 'node:assert/strict';
import * as vscode from 'vscode';
import { codeOf, closeAll, codes, eventually, problems, replace, show, workspaceFile } from './support.ts';

const weak = '7-weak-on-purpose.tag.yaml';
const sound = '2-script-name.tag.yaml';

describe('Problems', () => {
  afterEach(closeAll);

  it('name what is weak, at the line that causes it', async () => {
    const { document } = await show(weak);
    const found = await eventually(
      'problems',
      () => problems(document.uri),
      ({ length }) => length > 0,
    );
    const hole = found.find((problem) => codeOf(problem) === 'hole-too-small');
    assert.ok(hole);
    assert.match(document.lineAt(hole.range.start.line).text, /diameter: 2\.8 mm/);
    assert.equal(hole.severity, vscode.DiagnosticSeverity.Warning);
    assert.match(hole.message, /2\.80 mm/);
  });

  it('are found in a spec that is put into the workspace and never opened, and go when it is deleted', async () => {
    const copy = workspaceFile('never-opened.tag.yaml');
    await vscode.workspace.fs.copy(workspaceFile(weak), copy);
    await eventually(
      'problems',
      () => codes(copy),
      (found) => found.includes('hole-too-small'),
    );
    assert.ok(!vscode.workspace.textDocuments.some(({ uri }) => uri.path === copy.path));
    await vscode.workspace.fs.delete(copy);
    await eventually(
      'no problems',
      () => codes(copy),
      ({ length }) => length === 0,
    );
  });

  it('go when the text is put right, and come back when it is undone', async () => {
    const editor = await show(weak);
    const { uri } = editor.document;
    await eventually(
      'the small hole',
      () => codes(uri),
      (found) => found.includes('hole-too-small'),
    );
    await replace(editor, 'diameter: 2.8 mm', 'diameter: 4 mm');
    await eventually(
      'a hole that is large enough',
      () => codes(uri),
      (found) => !found.includes('hole-too-small'),
    );
    await vscode.commands.executeCommand('undo');
    await eventually(
      'the small hole again',
      () => codes(uri),
      (found) => found.includes('hole-too-small'),
    );
  });

  it('say what a mistyped key was probably meant to be', async () => {
    const editor = await show(sound);
    const { uri } = editor.document;
    await replace(editor, 'hanger:', 'hangar:');
    const [problem] = await eventually(
      'a problem',
      () => problems(uri),
      ({ length }) => length > 0,
    );
    assert.equal(codeOf(problem!), 'unknown-key');
    assert.equal(editor.document.getText(problem!.range), 'hangar');
    assert.match(problem!.message, /hanger/);
  });

  it('are those of broken YAML while it is broken, and none of a file that is no spec', async () => {
    const editor = await show(sound);
    const { uri } = editor.document;
    await replace(editor, 'text: Angelica', 'text: {Angelica');
    const broken = await eventually(
      'an error',
      () => problems(uri),
      ({ length }) => length > 0,
    );
    assert.ok(broken.every(({ severity }) => severity === vscode.DiagnosticSeverity.Error));

    const other = await vscode.workspace.openTextDocument({ language: 'yaml', content: 'tagwright: 1\nnonsense: [\n' });
    await vscode.window.showTextDocument(other, vscode.ViewColumn.Beside);
    await replace(editor, 'text: {Angelica', 'text: Angelica');
    await eventually(
      'no problems',
      () => problems(uri).length,
      (count) => count === 0,
    );
    assert.deepEqual(problems(other.uri), []);
  });
});
