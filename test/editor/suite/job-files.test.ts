import assert from 'node:assert/strict';
import { mkdirSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import * as vscode from 'vscode';
import { closeAll, codeOf, eventually, problems, show, workspaceFile } from './support.ts';

const { fs } = vscode.workspace;

const texts: Readonly<Record<string, string>> = {
  'shop.workshop.yaml': `tagwright: 1
stocks: {ply3: {material: birch plywood, thickness: 3 mm, kerf: 0.16 mm}}
sheet: {size: [300 mm, 200 mm], margin: 5 mm}
`,
  'plate.tag.yaml': `tagwright: 1
use: shop.workshop.yaml
stock: ply3
shapes: {plate: {rectangle: [60 mm, 40 mm]}}
pieces: {plate: {body: [plate]}}
`,
  'labels/label.tag.yaml': `tagwright: 1
use: ../shop.workshop.yaml
stock: ply3
shapes: {plate: {rectangle: ["{size}", 20 mm]}}
pieces: {label: {body: [plate]}}
`,
  'orders.csv': 'order,quantity,size\n1,2,50 mm\n2,1,70 mm\n',
  'week.job.yaml': `tagwright_job: 1
use: shop.workshop.yaml
effort: 0.1
tags:
  - {spec: plate.tag.yaml}
  - {spec: labels/label.tag.yaml, orders: orders.csv}
sheets:
  ply3: [{offcuts: ply3.offcuts.yaml}, {size: [300 mm, 200 mm]}]
`,
  'ply3.offcuts.yaml': 'tagwright_offcuts: 1\noffcuts:\n  - {id: 1, size: [200 mm, 150 mm]}\n',
};

describe('The files of a job that is open', () => {
  const at = (name: string) => workspaceFile(`week/${name}`);
  const job = at('week.job.yaml');
  const write = (name: string, text: string) => fs.writeFile(at(name), new TextEncoder().encode(text));
  const found = (uri = job) =>
    problems(uri).map((each) => {
      const text = vscode.workspace.textDocuments.find(({ uri: own }) => own.toString() === uri.toString());
      return [codeOf(each), text?.getText(each.range), each.message];
    });
  const told = (what: string, about: RegExp, uri = job) =>
    eventually(
      what,
      () => found(uri),
      (all) => all.some((each) => about.test(each.join(' '))),
    );
  const sound = (what: string) => eventually(what, found, (all) => all.length === 0);
  /** Names of the tags that are in the cut files, from the table of pieces. */
  const cut = async (of = job) => {
    const to = at('cut');
    const written = await vscode.commands.executeCommand<vscode.Uri[]>('tagwright.exportJob', {
      job: of,
      to,
      existing: 'replace',
      faulty: 'go on',
    });
    const table = written.find(({ path }) => path.endsWith('-pieces.csv'));
    const text = table ? new TextDecoder().decode(await fs.readFile(table)) : '';
    return text
      .split(/\r?\n/)
      .slice(1)
      .filter((line) => line !== '' && !line.includes(',none,')).length;
  };

  beforeEach(async () => {
    for (const [name, text] of Object.entries(texts)) await write(name, text);
    await show('week/week.job.yaml');
    await sound('nothing to complain of');
  });

  afterEach(async () => {
    await closeAll();
    await fs.delete(at(''), { recursive: true }).then(undefined, () => undefined);
  });

  it('may go and come back: a spec that is deleted is told at its place, the rest is cut', async () => {
    await fs.delete(at('plate.tag.yaml'));
    await told('the spec that is gone', /^bad-file plate\.tag\.yaml /);
    assert.equal(found().length, 1);
    assert.equal(await cut(), 3);
    await write('plate.tag.yaml', texts['plate.tag.yaml']!);
    await sound('the spec that is back');
    assert.equal(await cut(), 4);
  });

  it('may be renamed, in the editor and by other programs', async () => {
    const rename = async (from: string, to: string) => {
      const edit = new vscode.WorkspaceEdit();
      edit.renameFile(at(from), at(to));
      assert.ok(await vscode.workspace.applyEdit(edit));
    };
    await rename('plate.tag.yaml', 'plates.tag.yaml');
    await told('the spec that has another name', /^bad-file plate\.tag\.yaml /);
    await rename('plates.tag.yaml', 'plate.tag.yaml');
    await sound('its own name');
    renameSync(at('plate.tag.yaml').fsPath, at('other.tag.yaml').fsPath);
    await told('the spec that has another name', /^bad-file plate\.tag\.yaml /);
    renameSync(at('other.tag.yaml').fsPath, at('plate.tag.yaml').fsPath);
    await sound('its own name');
  });

  it('may go and come back with their folder', async () => {
    const [labels, away] = [at('labels').fsPath, at('../away').fsPath];
    renameSync(labels, away);
    await told('the folder that was moved', /^bad-file labels\/label\.tag\.yaml /);
    renameSync(away, labels);
    await sound('the folder that is back');
    rmSync(labels, { recursive: true });
    await told('the folder that is gone', /^bad-file labels\/label\.tag\.yaml /);
    mkdirSync(labels);
    writeFileSync(at('labels/label.tag.yaml').fsPath, texts['labels/label.tag.yaml']!);
    await sound('the folder that is back');
    const edit = new vscode.WorkspaceEdit();
    edit.renameFile(at('labels'), at('tags'));
    assert.ok(await vscode.workspace.applyEdit(edit));
    await told('the folder that has another name', /^bad-file labels\/label\.tag\.yaml /);
  });

  it('may lose a column, while the table is open or not', async () => {
    await write('orders.csv', 'order,quantity\n1,2\n2,1\n');
    await told('the column that is lacking', /^unknown-name orders\.csv .*“size”/);
    await write('orders.csv', texts['orders.csv']!);
    await sound('the column that is back');
    const table = await show('week/orders.csv');
    const { document } = table;
    const cell = document.getText().indexOf('size');
    const range = new vscode.Range(document.positionAt(cell), document.positionAt(cell + 4));
    await table.edit((edit) => {
      edit.replace(range, 'length');
    });
    await told('the column that is lacking', /^unknown-name orders\.csv .*“size”/);
    await vscode.commands.executeCommand('undo');
    await sound('the column that is back');
  });

  it('may break: of the stocks is told once, and all is well when they are', async () => {
    await write('shop.workshop.yaml', 'tagwright: 1\nstocks: {ply3: {material: birch plywood\n');
    await told('the file that is broken', /^yaml-syntax shop\.workshop\.yaml /);
    await write('shop.workshop.yaml', texts['shop.workshop.yaml']!);
    await sound('the file that is mended');
  });

  it('may be shared by two jobs, which never cut one offcut twice', async () => {
    await write('two.job.yaml', texts['week.job.yaml']!);
    await show('week/two.job.yaml');
    const two = at('two.job.yaml');
    assert.equal(await cut(), 4);
    const offcuts = async () => new TextDecoder().decode(await fs.readFile(at('ply3.offcuts.yaml')));
    assert.match(await offcuts(), /id: 1, .*used_by: week\.job\.yaml/);
    assert.equal(await cut(two), 4);
    const all = await offcuts();
    assert.match(all, /id: 1, .*used_by: week\.job\.yaml/);
    assert.equal(all.match(/id: 1,/g)!.length, 1, all);
    assert.deepEqual(found(two), []);
  });
});
