import assert from 'node:assert/strict';
import * as vscode from 'vscode';
import { closeAll, eventually, replace, show } from './support.ts';

async function offered(editor: vscode.TextEditor, after: string): Promise<vscode.CompletionItem[]> {
  const { document } = editor;
  const offset = document.getText().indexOf(after) + after.length;
  const list = await vscode.commands.executeCommand<vscode.CompletionList>(
    'vscode.executeCompletionItemProvider',
    document.uri,
    document.positionAt(offset),
  );
  return list.items;
}

const labelOf = ({ label }: vscode.CompletionItem): string => (typeof label === 'string' ? label : label.label);

describe('Completing a spec', () => {
  afterEach(closeAll);

  it('offers the keys that go with the generator, with what they do', async () => {
    const editor = await show('5-stacked-plate.tag.yaml');
    await replace(editor, 'radius: 6 mm}\n  body', 'radius: 6 mm, }\n  body');
    const items = await offered(editor, 'neck:  {rectangle: [26 mm, 18 mm], radius: 6 mm, ');
    const labels = items.map(labelOf);
    assert.ok(labels.includes('grow') && labels.includes('place'), labels.join(', '));
    assert.ok(!labels.includes('font') && !labels.includes('radius'), labels.join(', '));
    const grow = items.find((item) => labelOf(item) === 'grow')!;
    assert.match((grow.documentation as vscode.MarkdownString).value, /Thickens all round/);
    assert.equal(new Set(labels).size, labels.length, 'nothing is offered twice');
  });

  it('offers names, and fonts with a note, once they are known', async () => {
    const editor = await show('5-stacked-plate.tag.yaml');
    const names = (await offered(editor, 'place: {on: ')).map(labelOf);
    // `part: body` stands beside it, and no other shape has such a part.
    assert.deepEqual(names, ['plate']);
    const fonts = await eventually(
      'the fonts',
      () => offered(editor, 'font: '),
      (items) => items.some((item) => labelOf(item) === 'Great Vibes'),
    );
    const font = fonts.find((item) => labelOf(item) === 'Great Vibes')!;
    assert.match((font.label as vscode.CompletionItemLabel).description ?? '', /bundled, SIL Open Font License/);
  });

  it('offers whole tags in a file that has nothing yet, and puts them in as they are', async () => {
    const uri = vscode.Uri.from({ scheme: 'untitled', path: '/new.tag.yaml' });
    const document = await vscode.workspace.openTextDocument(uri);
    const editor = await vscode.window.showTextDocument(document);
    assert.equal(document.languageId, 'tagspec');
    const items = await eventually(
      'the samples',
      () => offered(editor, ''),
      (found) => found.some((item) => labelOf(item) === 'Jar initial'),
    );
    const sample = items.find((item) => labelOf(item) === 'Jar initial')!;
    await editor.insertSnippet(sample.insertText as vscode.SnippetString, new vscode.Position(0, 0));
    assert.match(document.getText(), /letter: \{text: S, font: Alfa Slab One, height: 48 mm\}/);
  });

  it('offers whole tags in inches where new tags are in inches', async () => {
    const settings = vscode.workspace.getConfiguration('tagwright');
    await settings.update('newTag.units', 'in', true);
    try {
      const uri = vscode.Uri.from({ scheme: 'untitled', path: '/inches.tag.yaml' });
      const editor = await vscode.window.showTextDocument(await vscode.workspace.openTextDocument(uri));
      const items = await eventually(
        'the samples',
        () => offered(editor, ''),
        (found) => found.some((item) => labelOf(item) === 'Luggage label for a seed packet'),
      );
      const sample = items.find((item) => labelOf(item) === 'Luggage label for a seed packet')!;
      const { value } = sample.insertText as vscode.SnippetString;
      assert.match(value, /^units: in$/m);
      assert.match(value, /size: \[4 in, 1\.75 in\]/);
      assert.doesNotMatch(value, /\d mm/);
    } finally {
      await settings.update('newTag.units', undefined, true);
    }
  });

  it('is silent in files that are no specs', async () => {
    const document = await vscode.workspace.openTextDocument({ language: 'yaml', content: 'tagwright: 1\n' });
    const editor = await vscode.window.showTextDocument(document);
    assert.ok(!(await offered(editor, 'tagwright: 1\n')).map(labelOf).includes('shapes'));
  });
});
