/** Beside an extension for YAML, for which an extension's worth of providers for that language stands. */

import assert from 'node:assert/strict';
import * as vscode from 'vscode';
import { closeAll, codes, eventually, show } from './support.ts';

describe('Beside what is there for YAML', () => {
  const asked: string[] = [];
  const providers: vscode.Disposable[] = [];
  const complete = async (document: vscode.TextDocument) =>
    vscode.commands.executeCommand<vscode.CompletionList>(
      'vscode.executeCompletionItemProvider',
      document.uri,
      document.positionAt(document.getText().indexOf('\n\n') + 1),
    );
  const hovers = (document: vscode.TextDocument) =>
    vscode.commands.executeCommand<vscode.Hover[]>(
      'vscode.executeHoverProvider',
      document.uri,
      new vscode.Position(2, 2),
    );
  const countOf = (list: vscode.CompletionList, wanted: string): number =>
    list.items.filter(({ label }) => (typeof label === 'string' ? label : label.label) === wanted).length;

  before(() => {
    const yaml = { language: 'yaml' };
    providers.push(
      vscode.languages.registerCompletionItemProvider(yaml, {
        provideCompletionItems: ({ uri }) => {
          asked.push(uri.path);
          return [new vscode.CompletionItem('theirs')];
        },
      }),
      vscode.languages.registerHoverProvider(yaml, {
        provideHover: ({ uri }) => {
          asked.push(uri.path);
          return new vscode.Hover('theirs');
        },
      }),
    );
  });

  after(() => {
    for (const provider of providers) provider.dispose();
  });

  afterEach(async () => {
    const { document } = vscode.window.activeTextEditor!;
    await vscode.languages.setTextDocumentLanguage(document, 'tagspec');
    await closeAll();
    asked.length = 0;
  });

  it('nothing is offered or told of a spec but by this extension, and that once', async () => {
    const { document } = await show('2-script-name.tag.yaml');
    const list = await eventually(
      'keys',
      () => complete(document),
      (found) => countOf(found, 'sheet') > 0,
    );
    assert.equal(countOf(list, 'sheet'), 1);
    assert.equal(countOf(list, 'theirs'), 0);
    assert.equal((await hovers(document)).length, 1);
    assert.deepEqual(asked, []);
  });

  it('a spec that its owner has the editor take for YAML is checked and completed all the same', async () => {
    const { document } = await show('7-weak-on-purpose.tag.yaml');
    await vscode.languages.setTextDocumentLanguage(document, 'yaml');
    await eventually(
      'its problems',
      () => codes(document.uri),
      (found) => found.includes('hole-too-small'),
    );
    const list = await complete(document);
    assert.equal(countOf(list, 'sheet'), 1);
    assert.equal(countOf(list, 'theirs'), 1);
    assert.ok(asked.length > 0, 'they are asked of what is YAML to the editor');
  });
});
