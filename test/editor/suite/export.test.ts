import assert from 'node:assert/strict';
import * as vscode from 'vscode';
import { closeAll, codeOf, eventually, problems, replace, show, workspaceFile } from './support.ts';

const { fs } = vscode.workspace;

async function readText(uri: vscode.Uri): Promise<string> {
  return new TextDecoder().decode(await fs.readFile(uri));
}

function run(command: 'export' | 'exportSheets' | 'makePack', request: object): Thenable<vscode.Uri[]> {
  return vscode.commands.executeCommand(`tagwright.${command}`, request);
}

const namesOf = (written: readonly vscode.Uri[]): string[] =>
  written.map(({ path }) => path.slice(path.lastIndexOf('/') + 1));

describe('Exporting', () => {
  const to = workspaceFile('exported');
  const specs = [workspaceFile('5-stacked-plate.tag.yaml')];

  afterEach(async () => {
    await closeAll();
    await fs.delete(to, { recursive: true }).then(undefined, () => undefined);
  });

  it('writes every format whole, and nothing else', async () => {
    const written = await run('export', { specs, what: { formats: ['svg', 'dxf', 'pdf', 'png'] }, to });
    assert.deepEqual(
      namesOf(written),
      ['svg', 'dxf', 'pdf', 'png'].map((format) => `5-stacked-plate.${format}`),
    );
    assert.equal((await fs.readDirectory(to)).length, 4);
    const [svg, dxf, pdf, png] = await Promise.all(written.map((uri) => fs.readFile(uri)));
    const begins = (bytes: Uint8Array, count: number) => new TextDecoder('latin1').decode(bytes.slice(0, count));
    assert.equal(begins(svg!, 5), '<?xml');
    assert.equal(begins(dxf!, 3), '999');
    assert.equal(begins(pdf!, 5), '%PDF-');
    assert.equal(begins(png!, 4).slice(1), 'PNG');
  });

  it('writes what is typed, saved or not', async () => {
    const editor = await show('5-stacked-plate.tag.yaml');
    const { document } = editor;
    const at = document.getText().indexOf('Lovage, stacked plate');
    await editor.edit((edit) => {
      edit.insert(document.positionAt(at), 'Wild ');
    });
    const [svg] = await run('export', { specs: [document.uri], what: { formats: ['svg'] }, to });
    assert.match(await readText(svg!), /<title>Wild Lovage/);
  });

  it('lays tags out on sheets', async () => {
    // Of six names, two: how densely many are laid out is tested elsewhere.
    const text = await readText(workspaceFile('10-seedling-names.tag.yaml'));
    const few = workspaceFile('few-names.tag.yaml');
    await fs.writeFile(few, new TextEncoder().encode(text.replaceAll(/ {2}- \{name: (?!Sorrel|Sea Kale).*\n/g, '')));
    const request = { specs: [few], to };
    const written = await run('exportSheets', { ...request, what: { sheets: ['svg', 'dxf', 'pdf', 'png'] } });
    assert.deepEqual(namesOf(written), [
      'few-names-sheet-1.svg',
      'few-names-sheet-1.dxf',
      'few-names-sheets.png',
      'few-names-sheets.pdf',
    ]);
    assert.ok(
      written.every(({ path }) => path.startsWith(`${to.path}/cut/`)),
      'as the other files of a batch',
    );
    const svg = await readText(written[0]!);
    assert.match(svg, /width="300mm" height="200mm"/);
    assert.equal(
      svg.match(/data-piece="Sea Kale: label"/g)!.length,
      2 * 3,
      'two, each engraved, with a hole and an outline',
    );
    // A spec that says nothing of sheets has none.
    assert.deepEqual(await run('exportSheets', { specs, what: { sheets: ['svg'] }, to }), []);
  });

  it('leaves files alone that hold something else, or replaces them, as is wished', async () => {
    await fs.createDirectory(to);
    const target = vscode.Uri.joinPath(to, '5-stacked-plate.svg');
    await fs.writeFile(target, new TextEncoder().encode('mine'));
    const request = { specs, what: { formats: ['svg'] }, to };
    assert.deepEqual(await run('export', { ...request, existing: 'keep' }), []);
    assert.equal(await readText(target), 'mine');
    assert.equal((await run('export', { ...request, existing: 'replace' })).length, 1);
    assert.match(await readText(target), /^<\?xml/);
  });

  it('exports one piece of a tag', async () => {
    const glued = workspaceFile('4-glued-letters.tag.yaml');
    const [svg] = await run('export', { specs: [glued], piece: 'letters', what: { formats: ['svg'] }, to });
    assert.equal(namesOf([svg!])[0], '4-glued-letters-letters.svg');
    const text = await readText(svg!);
    assert.match(text, /data-piece="letters"/);
    assert.doesNotMatch(text, /data-piece="back"/);
  });

  it('leaves tags with errors out, or includes them with a note', async () => {
    const weak = workspaceFile('7-weak-on-purpose.tag.yaml');
    const request = { specs: [...specs, weak], what: { formats: ['svg'] }, to };
    assert.deepEqual(namesOf(await run('export', { ...request, faulty: 'leave out' })), ['5-stacked-plate.svg']);
    const all = await run('export', { ...request, faulty: 'include' });
    assert.deepEqual(namesOf(all), ['5-stacked-plate.svg', '7-weak-on-purpose.svg']);
    assert.match(await readText(all[1]!), /DO NOT CUT/);
  });

  it('puts the files of a batch into a folder of their own, and one of its tags beside the others', async () => {
    const request = { specs: [workspaceFile('10-seedling-names.tag.yaml')], what: { formats: ['svg'] }, to };
    const all = await run('export', request);
    assert.equal(all.length, 6);
    assert.ok(
      all.every(({ path }) => path.startsWith(`${to.path}/cut/`)),
      String(all[0]),
    );
    const [one] = await run('export', { ...request, row: 1 });
    assert.equal(one!.path, `${to.path}/10-seedling-names-borage.svg`);
    const [inside] = await run('export', { ...request, to: vscode.Uri.joinPath(to, 'cut'), existing: 'replace' });
    assert.ok(!inside!.path.includes('cut/cut'), 'not twice');
  });

  it('makes packs, in folders or in an archive', async () => {
    const folders = await run('makePack', { specs, what: { packs: 'folders' }, to });
    // SVG, DXF, PDF, a cover picture, a note, and the spec.
    assert.equal(folders.length, 6);
    assert.match(await readText(vscode.Uri.joinPath(to, '5-stacked-plate', 'README.txt')), /Material: Walnut/);
    const archive = vscode.Uri.joinPath(to, 'lovage.zip');
    assert.deepEqual(namesOf(await run('makePack', { specs, what: { packs: 'archive' }, to: archive })), [
      'lovage.zip',
    ]);
    assert.equal(new TextDecoder('latin1').decode((await fs.readFile(archive)).slice(0, 2)), 'PK');
  });
});

describe('Tasks', () => {
  it('offer to check every spec of the folder, with the matcher that reads what is found', async () => {
    const tasks = await vscode.tasks.fetchTasks({ type: 'tagwright' });
    const check = tasks.find(({ name }) => name === 'check');
    assert.ok(check);
    assert.deepEqual(check.problemMatchers, ['$tagwright']);
    const { args, options } = check.execution as vscode.ProcessExecution;
    assert.equal(args[1], 'check');
    assert.ok(args.includes('5-stacked-plate.tag.yaml'));
    assert.equal(options?.cwd, vscode.workspace.workspaceFolders![0]!.uri.fsPath);
  });

  it('write the files of a job beside it, whatever its name', async () => {
    const folder = workspaceFile('autumn');
    const put = (name: string, text: string) =>
      fs.writeFile(vscode.Uri.joinPath(folder, name), new TextEncoder().encode(text));
    await put(
      'plate.tag.yaml',
      'tagwright: 1\nstocks: {ply3: {material: birch plywood, thickness: 3 mm, kerf: 0.2 mm}}\nstock: ply3\nshapes: {plate: {rectangle: [60, 40]}}\npieces: {plate: {body: [plate]}}\n',
    );
    const job =
      'tagwright_job: 1\neffort: 0.1\ntags: [{spec: plate.tag.yaml, quantity: 2}]\nsheets: {ply3: [{size: [200, 100]}]}\n';
    await put('[week] 1.job.yaml', job);
    await put('other.job.yaml', job);
    const name = 'job autumn/[week] 1.job.yaml';
    const task = await eventually(
      'the task of the job',
      async () => (await vscode.tasks.fetchTasks({ type: 'tagwright' })).find((each) => each.name === name),
      (found) => found !== undefined,
    );
    const ended = new Promise<number | undefined>((resolve) => {
      const listener = vscode.tasks.onDidEndTaskProcess(({ execution, exitCode }) => {
        if (execution.task.name !== name) return;
        listener.dispose();
        resolve(exitCode);
      });
    });
    await vscode.tasks.executeTask(task!);
    assert.equal(await ended, 0);
    const written = (await fs.readDirectory(vscode.Uri.joinPath(folder, 'cut'))).map(([file]) => file);
    assert.ok(
      written.some((file) => file.endsWith('-ply3-sheet-1.svg')),
      written.join(),
    );
    assert.ok(
      written.every((file) => /week/.test(file)),
      written.join(),
    );
    await fs.delete(folder, { recursive: true });
  });
});

describe('The kerf of a test', () => {
  afterEach(closeAll);

  it('is written into the stock of the spec', async () => {
    const { document } = await show('5-stacked-plate.tag.yaml');
    await vscode.commands.executeCommand('tagwright.setKerf', document.uri, {
      slots: '10.2, 20.2',
      pieces: '9.8, 19.8',
    });
    assert.match(document.getText(), /stock: \{material: walnut, thickness: 3 mm, kerf: 0\.2 mm\}/);
  });
});

describe('An approval', () => {
  afterEach(closeAll);

  it('is recorded beside the spec, which names it; a change is reported there, with the way to record it anew', async () => {
    const uri = workspaceFile('crate.tag.yaml');
    const plate = 'tagwright: 1\nshapes:\n  plate: {rectangle: [60, 30]}\npieces:\n  crate: {body: [plate]}\n';
    await fs.writeFile(uri, new TextEncoder().encode(plate));
    const editor = await show('crate.tag.yaml');
    const record = workspaceFile('crate.approved.json');
    const written = await vscode.commands.executeCommand<vscode.Uri>('tagwright.recordApproval', uri, 'by post');
    assert.equal(written.toString(), record.toString());
    assert.match(new TextDecoder().decode(await fs.readFile(record)), /"note": "by post"/);
    assert.match(editor.document.getText(), /^approved: crate\.approved\.json$/m);
    await replace(editor, '[60, 30]', '[60, 40]');
    const [problem] = await eventually(
      'what has changed',
      () => problems(uri).filter((each) => codeOf(each) === 'not-as-approved'),
      (found) => found.length > 0,
    );
    assert.match(problem!.message, /its height is 40 mm instead of 30 mm/);
    assert.equal(problem!.range.start.line, 1);
    const actions = await vscode.commands.executeCommand<vscode.CodeAction[]>(
      'vscode.executeCodeActionProvider',
      uri,
      problem!.range,
    );
    assert.ok(actions.some(({ command }) => command?.command === 'tagwright.recordApproval'));
    await fs.delete(record);
    await fs.delete(uri);
  });
});
