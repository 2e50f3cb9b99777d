import assert from 'node:assert/strict';
import * as vscode from 'vscode';
import { closeAll, codes, eventually, problems, show } from './support.ts';

describe('Quick fixes', () => {
  afterEach(closeAll);

  it('enlarge a hole that the tie will not pass, and change nothing else in the text', async () => {
    const editor = await show('7-weak-on-purpose.tag.yaml');
    const { document } = editor;
    await eventually(
      'problems',
      () => codes(document.uri),
      (found) => found.includes('hole-too-small'),
    );
    const problem = problems(document.uri).find(({ code }) => code === 'hole-too-small')!;
    const before = document.getText().split('\n');

    const actions = await vscode.commands.executeCommand<vscode.CodeAction[]>(
      'vscode.executeCodeActionProvider',
      document.uri,
      problem.range,
      vscode.CodeActionKind.QuickFix.value,
    );
    const fix = actions.find(({ isPreferred }) => isPreferred);
    assert.ok(fix?.edit, `a fix among: ${actions.map(({ title }) => title).join('; ')}`);
    assert.ok(await vscode.workspace.applyEdit(fix.edit));

    await eventually(
      'a hole that is large enough',
      () => codes(document.uri),
      (found) => !found.includes('hole-too-small'),
    );
    const changed = document
      .getText()
      .split('\n')
      .filter((line, index) => line !== before[index]);
    assert.equal(changed.length, 1, 'one line is another');
    assert.equal(document.lineCount, before.length);
  });
});
