import assert from 'node:assert/strict';
import * as vscode from 'vscode';
import { closeAll, codes, eventually, show, workspaceFile } from './support.ts';

const shop = `tagwright: 1
stocks:
  ply3: {material: birch plywood, thickness: 3 mm, kerf: 0.16 mm}   # third shelf
machines:
  bench: {travel: 150 mm/s}
`;

const spec = `tagwright: 1
use: seeds.workshop.yaml
stock: ply3
machine: bench
shapes:
  plate: {rectangle: [60 mm, 30 mm]}
pieces:
  tag: {body: [plate]}
`;

const files = ['seeds.workshop.yaml', 'in-ply.tag.yaml', 'my.workshop.yaml'];

async function write(name: string, text: string): Promise<vscode.TextDocument> {
  await vscode.workspace.fs.writeFile(workspaceFile(name), new TextEncoder().encode(text));
  return (await show(name)).document;
}

/** Once it has been computed; what is only told in passing does not count. */
async function clean({ uri }: vscode.TextDocument): Promise<void> {
  await vscode.commands.executeCommand('vscode.executeDocumentSymbolProvider', uri);
  await eventually(
    'no problems',
    () => codes(uri),
    (found) => found.length === 0,
  );
}

async function undone(document: vscode.TextDocument, before: string): Promise<void> {
  await vscode.window.showTextDocument(document);
  await vscode.commands.executeCommand('undo');
  await eventually(
    'the text as it was',
    () => document.getText(),
    (text) => text === before,
  );
}

describe('A workshop', () => {
  afterEach(async () => {
    await closeAll();
    for (const name of files)
      await vscode.workspace.fs.delete(workspaceFile(name)).then(
        () => undefined,
        () => undefined,
      );
  });

  it('has a file of its own after a few questions, each answered as it is offered', async () => {
    let made: vscode.Uri | undefined;
    void vscode.commands
      .executeCommand<vscode.Uri | undefined>('tagwright.newWorkshopFile')
      .then((uri) => (made = uri));
    await eventually(
      'the file',
      async () => {
        await vscode.commands.executeCommand('workbench.action.acceptSelectedQuickOpenItem');
        return made;
      },
      (uri) => uri !== undefined,
    );
    assert.equal(made!.toString(), workspaceFile('my.workshop.yaml').toString());
    const text = new TextDecoder().decode(await vscode.workspace.fs.readFile(made!));
    assert.match(text, /^tagwright: 1$/m);
    assert.match(text, /\n {4}thickness: 3 mm\n/);
    assert.match(text, /\nsheet: \{size: \[600 mm, 300 mm\], margin: 5 mm\}\n/);
    assert.equal(vscode.window.activeTextEditor?.document.uri.toString(), made!.toString());
  });

  it('has test pieces of the stock that the spec in the editor is cut from', async () => {
    await write('seeds.workshop.yaml', shop);
    const document = await write('in-ply.tag.yaml', spec);
    await clean(document);
    let made: vscode.Uri | undefined;
    void vscode.commands
      .executeCommand<vscode.Uri | undefined>('tagwright.newTestPiece', document.uri, 'web')
      .then((uri) => (made = uri));
    // The stock of the spec is the first that is offered.
    await eventually(
      'the test piece',
      async () => {
        await vscode.commands.executeCommand('workbench.action.acceptSelectedQuickOpenItem');
        return made;
      },
      (uri) => uri !== undefined,
    );
    assert.equal(made!.scheme, 'untitled');
    const text = (await vscode.workspace.openTextDocument(made!)).getText();
    assert.match(text, /\nuse: seeds\.workshop\.yaml\nstock: ply3\nmachine: bench\n/);
    assert.match(text, /Web comb, ply3/);
  });

  it('keeps what was measured, in the file of the stock, under the machine, as one step', async () => {
    const shared = await write('seeds.workshop.yaml', shop);
    const document = await write('in-ply.tag.yaml', spec);
    await clean(document);
    await vscode.commands.executeCommand('tagwright.enterMeasurement', document.uri, {
      what: 'kerf',
      typed: '10.22/9.78, 20.22/19.78',
      day: '2026-05-02',
    });
    assert.equal(
      shared.getText(),
      shop.replace('0.16 mm}', '0.16 mm, machines: {bench: {kerf: 0.22 mm, measured_on: {kerf: 2026-05-02}}}}'),
    );
    await undone(shared, shop);
    assert.equal(document.getText(), spec);
  });

  it('goes into a spec that is to be sent alone, as one step', async () => {
    await write('seeds.workshop.yaml', shop);
    const document = await write('in-ply.tag.yaml', spec);
    await clean(document);
    await eventually(
      'the values in the spec',
      async () => {
        await vscode.commands.executeCommand('tagwright.putValuesIn', document.uri);
        return document.getText();
      },
      (text) => text !== spec,
    );
    assert.equal(
      document.getText(),
      spec
        .replace('use: seeds.workshop.yaml\n', '')
        .replace('machine: bench\n', '')
        .replace(
          'stock: ply3',
          'stock: {material: birch plywood, thickness: 3 mm, kerf: 0.16 mm, machine: {travel: 150 mm/s}}',
        ),
    );
    await undone(document, spec);
  });
});
