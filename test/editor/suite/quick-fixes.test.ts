import assert from 'node:assert/strict';
import * as vscode from 'vscode';
import { closeAll, codeOf, codes, eventually, problems, show } from './support.ts';

const weak = '7-weak-on-purpose.tag.yaml';

async function actionsAt(uri: vscode.Uri, code: string, kind = vscode.CodeActionKind.QuickFix, resolve = 0) {
  const problem = problems(uri).find((each) => codeOf(each) === code);
  assert.ok(problem, `${code} is there`);
  return vscode.commands.executeCommand<vscode.CodeAction[]>(
    'vscode.executeCodeActionProvider',
    uri,
    problem.range,
    kind.value,
    resolve,
  );
}

async function untilFound(uri: vscode.Uri, code: string): Promise<void> {
  await eventually(
    `${code} in Problems`,
    () => codes(uri),
    (found) => found.includes(code),
  );
}

const titles = (actions: readonly vscode.CodeAction[]) => actions.map(({ title }) => title).join('; ');

describe('Quick fixes', () => {
  afterEach(closeAll);

  it('enlarge a hole that the tie will not pass, and change nothing else in the text', async () => {
    const { document } = await show(weak);
    await untilFound(document.uri, 'hole-too-small');
    const before = document.getText().split('\n');
    const actions = await actionsAt(document.uri, 'hole-too-small');
    const fix = actions.find(({ isPreferred }) => isPreferred);
    assert.ok(fix?.edit, `a fix among: ${titles(actions)}`);
    assert.equal(new Set(actions.map((action) => action.title)).size, actions.length, 'each is offered once');
    assert.match(fix.title, /2\.80 → 5\.00 mm/, 'its effect in figures');
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

  it('say where there is none, and lead to the page on that problem', async () => {
    const { document } = await show(weak);
    const change = new vscode.WorkspaceEdit();
    // No key is spelt like it.
    const spare = '  spare: {body: [{rectangle: [60 mm, 40 mm]}], matter: 3}\n';
    change.insert(document.uri, document.positionAt(document.getText().length), spare);
    assert.ok(await vscode.workspace.applyEdit(change));
    await untilFound(document.uri, 'unknown-key');
    const [action, ...others] = await actionsAt(document.uri, 'unknown-key');
    assert.equal(action?.title, 'No automatic fix found: read about unknown-key', titles(others));
    assert.deepEqual(action.command?.arguments, ['unknown-key']);
    assert.deepEqual([action.edit, action.isPreferred], [undefined, undefined]);
  });

  it('fix all of one kind, or all there is in the file but for what only another look would fix, in one step', async function () {
    this.timeout(90_000);
    for (const title of ['Fix all hole-too-small problems in this file', 'Fix all problems in this file']) {
      const { document } = await show(weak);
      // A second piece with the same fault.
      const text = document.getText();
      const end = document.positionAt(text.length);
      const second = new vscode.WorkspaceEdit();
      second.insert(
        document.uri,
        end,
        '  other: {body: [{rectangle: [60 mm, 40 mm]}], hanger: {hole: {at: top, inset: 6 mm, diameter: 2.8 mm}}}\n',
      );
      assert.ok(await vscode.workspace.applyEdit(second));
      await eventually(
        'two holes that are too small',
        () => codes(document.uri),
        (found) => found.filter((code) => code === 'hole-too-small').length === 2,
      );
      const before = document.getText();
      const version = document.version;
      const actions = await actionsAt(document.uri, 'hole-too-small', vscode.CodeActionKind.QuickFix, 100);
      assert.equal(new Set(actions.map((action) => action.title)).size, actions.length, titles(actions));
      const all = actions.find((action) => action.title === title);
      assert.ok(all?.edit, `${title} among: ${titles(actions)}`);
      assert.ok(await vscode.workspace.applyEdit(all.edit));
      assert.equal(document.version, version + 1, 'one change');
      await eventually(
        'a tag that is mended',
        () => codes(document.uri),
        (found) =>
          title.includes('hole-too-small') ? !found.includes('hole-too-small') : found.join(' ') === 'thin-stroke',
      );
      assert.ok(document.getText().startsWith('# Weak on purpose'), 'comments are kept');
      await vscode.commands.executeCommand('undo');
      assert.equal(document.getText(), before);
      await vscode.commands.executeCommand('workbench.action.files.revert');
      await closeAll();
    }
  });

  it('are made on saving for those who ask for it', async () => {
    const { document } = await show(weak);
    await untilFound(document.uri, 'hole-too-small');
    const [all] = await actionsAt(document.uri, 'hole-too-small', vscode.CodeActionKind.SourceFixAll, 1);
    assert.equal(all?.kind?.value, 'source.fixAll.tagwright');
    assert.ok(all.edit && all.edit.size > 0);
  });

  it('accept a finding by a comment that waits for its reason', async () => {
    const { document } = await show(weak);
    await untilFound(document.uri, 'hole-too-small');
    const actions = await actionsAt(document.uri, 'hole-too-small');
    const accept = actions.find(({ title }) => title.startsWith('Accept'));
    assert.ok(accept?.edit, titles(actions));
    assert.ok(await vscode.workspace.applyEdit(accept.edit));
    assert.match(document.getText(), /diameter: 2\.8 mm\}\} {2}# accept hole-too-small: /);
    await untilFound(document.uri, 'odd-comment');
    assert.ok(codes(document.uri).includes('hole-too-small'), 'it counts until a reason is given');
    const end = document.lineAt(
      document
        .getText()
        .split('\n')
        .findIndex((line) => line.includes('# accept')),
    ).range.end;
    const reason = new vscode.WorkspaceEdit();
    reason.insert(document.uri, end, 'thin ribbon goes through it single');
    assert.ok(await vscode.workspace.applyEdit(reason));
    await eventually(
      'the finding to be accepted',
      () => codes(document.uri),
      (found) => !found.includes('hole-too-small') && !found.includes('odd-comment'),
    );
  });
});

describe('A kind of problem', () => {
  afterEach(async () => {
    await vscode.workspace.getConfiguration('tagwright.severity').update('hole-too-small', undefined, true);
    await closeAll();
  });

  it('weighs what the settings say, or is silent', async () => {
    const { document } = await show(weak);
    await untilFound(document.uri, 'hole-too-small');
    const settings = vscode.workspace.getConfiguration('tagwright.severity');
    await settings.update('hole-too-small', 'error', true);
    await eventually(
      'an error',
      () => problems(document.uri).find((problem) => codeOf(problem) === 'hole-too-small')?.severity,
      (severity) => severity === vscode.DiagnosticSeverity.Error,
    );
    await settings.update('hole-too-small', 'off', true);
    await eventually(
      'silence',
      () => codes(document.uri),
      (found) => !found.includes('hole-too-small'),
    );
  });

  it('is explained on a page that its code leads to', async () => {
    const { document } = await show(weak);
    await untilFound(document.uri, 'hole-too-small');
    const problem = problems(document.uri).find((each) => codeOf(each) === 'hole-too-small')!;
    assert.ok(typeof problem.code === 'object');
    const { scheme, path, query } = problem.code.target;
    assert.equal(scheme, 'command');
    await vscode.commands.executeCommand(path, ...(JSON.parse(query) as unknown[]));
    await eventually(
      'the page',
      () => vscode.window.tabGroups.all.flatMap(({ tabs }) => tabs).map(({ label }) => label),
      (labels) => labels.some((label) => label.includes('hole-too-small')),
    );
  });
});
