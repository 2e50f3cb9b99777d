import assert from 'node:assert/strict';
import * as vscode from 'vscode';
import { closeAll, eventually, replace, show, workspaceFile } from './support.ts';

const executeCommand = async <T>(command: string, ...rest: unknown[]): Promise<T> =>
  vscode.commands.executeCommand<T>(command, ...rest);

/** The middle of a word that stands in some text. */
function placeOf(document: vscode.TextDocument, word: string, within = word): vscode.Position {
  const start = document.getText().indexOf(within);
  assert.ok(start >= 0, within);
  return document.positionAt(start + within.indexOf(word) + 1);
}

describe('Finding one’s way in a spec', () => {
  afterEach(closeAll);

  it('has an outline, and breadcrumbs from it', async () => {
    const { document } = await show('5-stacked-plate.tag.yaml');
    const symbols = await eventually(
      'the outline',
      () => executeCommand<vscode.DocumentSymbol[] | undefined>('vscode.executeDocumentSymbolProvider', document.uri),
      (found) => (found?.length ?? 0) > 0,
    );
    const names = symbols!.map(({ name }) => name);
    assert.deepEqual(names, ['tagwright', 'title', 'stock', 'tie', 'shapes', 'pieces']);
    assert.deepEqual(
      symbols![4]!.children.map(({ name }) => name),
      ['neck', 'body', 'plate', 'name'],
    );
  });

  it('folds by its indentation', async () => {
    const { document } = await show('5-stacked-plate.tag.yaml');
    assert.equal(document.languageId, 'tagspec');
    await executeCommand('editor.foldAll');
    const editor = vscode.window.activeTextEditor!;
    await eventually(
      'the last line to come into view',
      () => editor.visibleRanges.length,
      (count) => count > 1,
    );
    await executeCommand('editor.unfoldAll');
  });

  it('leads from a use to the definition, and from there to the uses', async () => {
    const { document } = await show('5-stacked-plate.tag.yaml');
    const [link] = await executeCommand<vscode.LocationLink[]>(
      'vscode.executeDefinitionProvider',
      document.uri,
      placeOf(document, 'body', 'part: body'),
    );
    assert.equal(document.getText(link!.targetSelectionRange), 'body');
    assert.equal(link!.targetSelectionRange!.start.line, placeOf(document, 'body', 'body:  {').line);
    const uses = await executeCommand<vscode.Location[]>(
      'vscode.executeReferenceProvider',
      document.uri,
      placeOf(document, 'body', 'body:  {'),
    );
    assert.equal(uses.length, 3);
  });

  it('changes a name wherever it stands, and refuses one that is taken', async () => {
    const { document } = await show('5-stacked-plate.tag.yaml');
    const at = placeOf(document, 'body', 'body:  {');
    const edit = await executeCommand<vscode.WorkspaceEdit>(
      'vscode.executeDocumentRenameProvider',
      document.uri,
      at,
      'trunk',
    );
    assert.ok(await vscode.workspace.applyEdit(edit));
    const text = document.getText();
    assert.match(text, / {2}trunk: {2}\{rectangle/);
    assert.match(text, /shapes: \[neck, trunk\]/);
    assert.match(text, /part: trunk/);
    assert.match(text, /^ {4}body: \[plate\]$/m);
    await assert.rejects(
      Promise.resolve(executeCommand('vscode.executeDocumentRenameProvider', document.uri, at, 'plate')),
      /already/,
    );
  });

  it('changes a shared name in the file that gives it and in all that use it', async () => {
    const write = (name: string, text: string) =>
      vscode.workspace.fs.writeFile(workspaceFile(name), new TextEncoder().encode(text));
    const user = 'tagwright: 1\nuse: style.yaml\npieces:\n  t: {body: [leaf]}\n';
    await write('style.yaml', 'shapes:\n  leaf: {ellipse: 30 mm}\n');
    await write('one.tag.yaml', user);
    await write('two.tag.yaml', user);
    try {
      const { document } = await show('one.tag.yaml');
      const at = placeOf(document, 'leaf');
      const uses = await eventually(
        'both specs and the file they use',
        () => executeCommand<vscode.Location[]>('vscode.executeReferenceProvider', document.uri, at),
        (found) => found.length === 3,
      );
      const files = uses.map(({ uri }) => uri.path.slice(uri.path.lastIndexOf('/') + 1)).sort();
      assert.deepEqual(files, ['one.tag.yaml', 'style.yaml', 'two.tag.yaml']);
      const [link] = await executeCommand<vscode.LocationLink[]>('vscode.executeDefinitionProvider', document.uri, at);
      assert.ok(link!.targetUri.path.endsWith('/style.yaml'));
      const edit = await executeCommand<vscode.WorkspaceEdit>(
        'vscode.executeDocumentRenameProvider',
        document.uri,
        at,
        'bud',
      );
      assert.equal(edit.entries().length, 3);
      const links = await executeCommand<vscode.DocumentLink[]>('vscode.executeLinkProvider', document.uri);
      assert.ok(links.some(({ target }) => target?.path.endsWith('/style.yaml')));
    } finally {
      for (const name of ['one.tag.yaml', 'two.tag.yaml', 'style.yaml'])
        await vscode.workspace.fs.delete(workspaceFile(name));
    }
  });
});

describe('Figures beside the text', () => {
  afterEach(closeAll);

  it('stand above each piece, and open the preview', async () => {
    const { document } = await show('4-glued-letters.tag.yaml');
    const lenses = await eventually(
      'the lenses',
      () => executeCommand<vscode.CodeLens[]>('vscode.executeCodeLensProvider', document.uri),
      (found) => found.length === 8,
    );
    assert.match(lenses[0]!.command!.title, /^\d+\.\d × \d+\.\d mm · 1 part · no problems$/);
    assert.equal(lenses[0]!.range.start.line, placeOf(document, 'back', 'back:').line);
    const resolved = await executeCommand<vscode.CodeLens[]>('vscode.executeCodeLensProvider', document.uri, 8);
    // The command lists a lens when it is worked out, not where it stands.
    const takes = /^cut \d+(\.\d)? mm · \d+(\.\d)? g$/;
    assert.equal(resolved.filter(({ command }) => takes.test(command?.title ?? '')).length, 2);
    const copy = lenses.find(({ command }) => command?.command === 'tagwright.copySize')!.command!;
    await executeCommand(copy.command, ...(copy.arguments as unknown[]));
    assert.equal(await vscode.env.clipboard.readText(), lenses[0]!.command!.title.split(' · ')[0]);
  });

  it('stand behind what they follow from', async () => {
    const { document } = await show('4-glued-letters.tag.yaml');
    const all = new vscode.Range(0, 0, document.lineCount, 0);
    const hints = await eventually(
      'the hints',
      () => executeCommand<vscode.InlayHint[]>('vscode.executeInlayHintProvider', document.uri, all),
      (found) => found.length > 0,
    );
    assert.match(hints[0]!.label as string, /^× \d+(\.\d)? mm$/);
    assert.ok(
      document
        .getText(new vscode.Range(hints[0]!.position.with({ character: 0 }), hints[0]!.position))
        .endsWith('width: 80 mm'),
    );
  });

  it('are left out, or marked, while the spec is broken', async () => {
    const editor = await show('4-glued-letters.tag.yaml');
    const { document } = editor;
    const title = async () =>
      (await executeCommand<vscode.CodeLens[]>('vscode.executeCodeLensProvider', document.uri))[0]?.command?.title ??
      '';
    await eventually('a lens', title, (text) => text.includes('part'));
    await replace(editor, 'font: Nunito', 'fond: Nunito');
    await eventually('the mark', title, (text) => text.endsWith('out of date: 1 error'));
    const all = new vscode.Range(0, 0, document.lineCount, 0);
    assert.deepEqual(await executeCommand('vscode.executeInlayHintProvider', document.uri, all), []);
  });

  it('colours are shown where they are written, and picked there', async () => {
    const editor = await show('4-glued-letters.tag.yaml');
    await replace(editor, 'tagwright: 1\n', 'tagwright: 1\noutput: {score: {color: "#0072B2"}}\n');
    const { document } = editor;
    const found = await executeCommand<vscode.ColorInformation[]>('vscode.executeDocumentColorProvider', document.uri);
    assert.equal(found.length, 1);
    assert.equal(document.getText(found[0]!.range), '"#0072B2"');
    const offered = await executeCommand<vscode.ColorPresentation[]>(
      'vscode.executeColorPresentationProvider',
      found[0]!.color,
      { uri: document.uri, range: found[0]!.range },
    );
    assert.deepEqual(
      offered.map(({ label }) => label),
      ['"#0072B2"'],
    );
  });

  it('names are coloured as what they are', async () => {
    const { document } = await show('4-glued-letters.tag.yaml');
    const legend = await executeCommand<vscode.SemanticTokensLegend>(
      'vscode.provideDocumentSemanticTokensLegend',
      document.uri,
    );
    const tokens = await executeCommand<vscode.SemanticTokens>('vscode.provideDocumentSemanticTokens', document.uri);
    assert.ok(legend.tokenTypes.includes('variable'));
    assert.ok(tokens.data.length >= 5 * 8, String(tokens.data.length));
  });
});

describe('Rewriting a spec', () => {
  afterEach(closeAll);

  async function act(editor: vscode.TextEditor, at: vscode.Position, kind: vscode.CodeActionKind): Promise<void> {
    const actions = await executeCommand<vscode.CodeAction[]>(
      'vscode.executeCodeActionProvider',
      editor.document.uri,
      new vscode.Range(at, at),
      kind.value,
    );
    assert.equal(actions.length, 1, actions.map(({ title }) => title).join(', '));
    assert.ok(await vscode.workspace.applyEdit(actions[0]!.edit!));
  }

  it('sets it out and keeps comments', async () => {
    const editor = await show('4-glued-letters.tag.yaml');
    const before = editor.document.getText();
    await replace(editor, '{from: word, grow: -0.5 mm}', '{ from:   word,grow: -0.5 mm }');
    await executeCommand('editor.action.formatDocument');
    await eventually(
      'the text as it was',
      () => editor.document.getText(),
      (text) => text === before,
    );
  });

  it('gives a shape a name, and writes it back where it is used', async () => {
    const editor = await show('4-glued-letters.tag.yaml');
    const { document } = editor;
    const before = document.getText();
    await act(editor, placeOf(document, 'grow', 'grow: -0.5'), vscode.CodeActionKind.RefactorExtract);
    assert.match(document.getText(), / {2}from: \{from: word, grow: -0\.5 mm\}/);
    assert.match(document.getText(), /score: \[from\]/);
    await act(editor, placeOf(document, 'from', '[from]'), vscode.CodeActionKind.RefactorInline);
    assert.equal(document.getText(), before);
  });

  it('makes a batch that begins with the name it has', async () => {
    const editor = await show('2-script-name.tag.yaml');
    const { document } = editor;
    const [batch, ...others] = (
      await executeCommand<vscode.CodeAction[]>(
        'vscode.executeCodeActionProvider',
        document.uri,
        new vscode.Range(
          placeOf(document, 'Angelica', 'text: Angelica'),
          placeOf(document, 'Angelica', 'text: Angelica'),
        ),
        vscode.CodeActionKind.RefactorRewrite.value,
      )
    ).sort((a, b) => (a.title < b.title ? 1 : -1));
    assert.equal(batch!.title, 'Make a batch that begins with “Angelica”');
    assert.equal(others.length, 1);
    assert.ok(await vscode.workspace.applyEdit(batch!.edit!));
    assert.match(document.getText(), /\nbatch:\n {2}- Angelica\n\nshapes:\n/);
    assert.match(document.getText(), /text: "\{name\}"/);
  });

  it('converts it to inches', async () => {
    const editor = await show('4-glued-letters.tag.yaml');
    await act(editor, new vscode.Position(0, 0), vscode.CodeActionKind.RefactorRewrite);
    assert.match(editor.document.getText(), /^units: in$/m);
    assert.match(editor.document.getText(), /width: 3\.1496 in/);
  });
});
