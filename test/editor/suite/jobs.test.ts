import assert from 'node:assert/strict';
import * as vscode from 'vscode';
import { closeAll, codeOf, codes, eventually, problems, replace, show, workspaceFile } from './support.ts';

const { fs } = vscode.workspace;

const textOf = async (uri: vscode.Uri) => new TextDecoder().decode(await fs.readFile(uri));

describe('A job', () => {
  const job = workspaceFile('plant-swap/swap.job.yaml');
  const orders = workspaceFile('plant-swap/orders.csv');
  const offcuts = workspaceFile('plant-swap/ply3.offcuts.yaml');
  const to = workspaceFile('job-files');

  afterEach(async () => {
    await closeAll();
    await fs.delete(to, { recursive: true }).then(undefined, () => undefined);
  });

  it('shows its problems where they are, in the table of orders too', async () => {
    const editor = await show('plant-swap/swap.job.yaml');
    assert.equal(editor.document.languageId, 'tagspec');
    await replace(editor, 'quantity: 2', 'quantity: -2');
    const [bad] = await eventually(
      'the quantity',
      () => problems(job),
      (found) => found.length > 0,
    );
    assert.deepEqual([codeOf(bad!), editor.document.getText(bad!.range)], ['bad-value', '-2']);
    await replace(editor, 'quantity: -2', 'quantity: 2');
    const table = await show('plant-swap/orders.csv');
    await replace(table, '102,Borage,April,6,', '102,Borage,April,none,');
    const [cell] = await eventually(
      'the cell',
      () => problems(orders),
      (found) => found.length > 0,
    );
    assert.equal(table.document.getText(cell!.range), 'none');
    await replace(table, '102,Borage,April,none,', '102,Borage,April,6,');
    await eventually(
      'no problems',
      () => [...codes(orders), ...codes(job)],
      (found) => found.length === 0,
    );
  });

  it('suggests files, keys and stocks', async () => {
    const editor = await show('plant-swap/swap.job.yaml');
    const { document } = editor;
    const offered = async (at: string) => {
      const position = document.positionAt(document.getText().indexOf(at));
      const list = await vscode.commands.executeCommand<vscode.CompletionList>(
        'vscode.executeCompletionItemProvider',
        job,
        position,
      );
      return list.items.map(({ label }) => (typeof label === 'string' ? label : label.label));
    };
    const files = await eventually(
      'the specs beside it',
      () => offered('table-sign.tag.yaml'),
      (found) => found.includes('pot-label.tag.yaml'),
    );
    assert.ok(!files.includes('orders.csv'));
  });

  it('writes all its files, or none', async () => {
    const before = await textOf(offcuts);
    // Of the same specs, one tag each.
    const few = workspaceFile('plant-swap/few.job.yaml');
    const text = (await textOf(job)).replace('quantity: 2', 'quantity: 1').replace('orders.csv', 'few.csv');
    const put = (uri: vscode.Uri, content: string) => fs.writeFile(uri, new TextEncoder().encode(content));
    await put(few, text);
    await put(workspaceFile('plant-swap/few.csv'), 'order,name,sown\n101,Sorrel,March\n');
    const run = (request: object) =>
      vscode.commands.executeCommand<vscode.Uri[]>('tagwright.exportJob', { job: few, to, ...request });
    const written = await run({});
    const names = written.map(({ path }) => path.slice(path.lastIndexOf('/') + 1));
    for (const name of [
      'few-ply3-offcut-1.svg',
      'few-sheets.pdf',
      'few-assembly.pdf',
      'few-pick-list.pdf',
      'few-pieces.csv',
      'few-labels.pdf',
    ])
      assert.ok(names.includes(name), name);
    assert.ok(names.includes('ply3.offcuts.yaml'));
    assert.match(await textOf(offcuts), /used_by: few\.job\.yaml/);
    const pieces = vscode.Uri.joinPath(to, 'few-pieces.csv');
    await put(pieces, 'mine');
    assert.deepEqual(await run({ existing: 'keep' }), []);
    assert.equal(await textOf(pieces), 'mine');
    assert.equal((await run({ existing: 'replace' })).length, written.length - 1, 'the offcuts stay as they are');
    const left = (await fs.readDirectory(to)).map(([name]) => name);
    assert.deepEqual(
      left.filter((name) => name.endsWith('.part')),
      [],
    );
    await put(offcuts, before);
  });

  it('has its sheets shown beside it', async () => {
    await show('plant-swap/swap.job.yaml');
    await vscode.commands.executeCommand('tagwright.showSheets');
    const tabs = () => vscode.window.tabGroups.all.flatMap((group) => group.tabs.map(({ label }) => label));
    await eventually('the sheets', tabs, (labels) => labels.includes('Sheets: swap.job.yaml'));
  });

  it('has what its sheets do not keep of what was asked among its problems, at the pin that is to blame', async () => {
    // Six plates of one order fill a sheet, unless one lies in the middle.
    const at = (name: string) => workspaceFile(`pinned/${name}`);
    const put = (name: string, lines: readonly string[]) =>
      fs.writeFile(at(name), new TextEncoder().encode(`${lines.join('\n')}\n`));
    await put('plate.tag.yaml', [
      'tagwright: 1',
      'stocks: {ply3: {material: birch plywood, thickness: 3 mm, kerf: 0.2 mm}}',
      'stock: ply3',
      'shapes: {plate: {rectangle: [60 mm, 40 mm]}, name: {text: "{name}", font: Nunito, height: 5 mm}}',
      'pieces: {tag: {body: [plate], engrave: [name]}}',
    ]);
    await put('orders.csv', ['order,name,quantity', 'a,Rue,6', 'b,Kale,1']);
    await put('pinned.job.yaml', [
      'tagwright_job: 1',
      'effort: 0.1',
      'keep_together: true',
      'tags: [{spec: plate.tag.yaml, orders: orders.csv}]',
      'sheets: {ply3: [{size: [200 mm, 100 mm], margin: 3 mm, gap: 2 mm}]}',
      'fixed:',
      '  - {spec: plate.tag.yaml, order: a, tag: Rue, sheet: 1, at: [70 mm, 30 mm]}',
    ]);
    const pinned = at('pinned.job.yaml');
    const told = (): (string | number)[][] =>
      problems(pinned).map(({ message, range, severity }) => [severity, range.start.line + 1, message]);
    try {
      const editor = await show('pinned/pinned.job.yaml');
      await vscode.commands.executeCommand('tagwright.showSheets');
      const parted = 'Order a lies on ply3 sheet 1 and ply3 sheet 2, because of what is fixed.';
      const [found] = await eventually('the order that is parted', told, (seen) => seen.length > 0);
      assert.deepEqual(found, [vscode.DiagnosticSeverity.Information, 7, parted]);
      await replace(editor, 'at: [70 mm, 30 mm]', 'at: [3.1 mm, 3.1 mm]');
      await eventually('no problems', told, (seen) => seen.length === 0);
      await replace(editor, 'at: [3.1 mm, 3.1 mm]', 'at: [70 mm, 30 mm]');
      await eventually('the same again', told, (seen) => seen.length === 1);
      // Without the sheets, what is exported is looked at.
      await editor.document.save();
      await closeAll();
      const again = await show('pinned/pinned.job.yaml');
      await replace(again, 'effort: 0.1', 'effort: -1');
      await eventually('the effort alone', told, (seen) => seen.length === 1 && seen[0]![1] === 2);
      await replace(again, 'effort: -1', 'effort: 0.1');
      await eventually('nothing', told, (seen) => seen.length === 0);
      await vscode.commands.executeCommand('tagwright.exportJob', { job: pinned, to });
      await eventually('what exporting it has found', told, (seen) => seen.length === 1);
    } finally {
      await closeAll();
      await fs.delete(at('.'), { recursive: true });
    }
  });

  it('is made of the tag at hand, beside it and with its sheets, and never over another', async () => {
    const made: vscode.Uri[] = [];
    const make = async (answers: object) => {
      const spec = workspaceFile('plant-swap/pot-label.tag.yaml');
      const uri = await vscode.commands.executeCommand<vscode.Uri | undefined>('tagwright.newJob', spec, answers);
      made.push(uri!);
      return uri!;
    };
    const answers = { title: 'Swap', make: 'table', sizes: { ply3: '600 × 300 mm' }, keepsOffcuts: false };
    try {
      const first = await make(answers);
      assert.match(first.path, /\/plant-swap\/swap-2\.job\.yaml$/, 'there is a swap.job.yaml');
      const [text, swap] = [await textOf(first), await textOf(job)];
      assert.match(text, /use: seed-library\.workshop\.yaml/);
      assert.match(text, /spec: pot-label\.tag\.yaml, orders: orders-2\.csv/);
      assert.match(
        await textOf(workspaceFile('plant-swap/orders-2.csv')),
        /^order,quantity,name,sown\r\n1,1,Sorrel,March\r\n$/,
      );
      assert.equal(vscode.window.activeTextEditor?.document.uri.toString(), first.toString());
      const tabs = () => vscode.window.tabGroups.all.flatMap((group) => group.tabs.map(({ label }) => label));
      await eventually('its sheets', tabs, (labels) => labels.includes('Sheets: swap-2.job.yaml'));
      await eventually(
        'no problems',
        () => codes(first),
        (found) => found.length === 0,
      );
      const second = await make({ ...answers, make: { orders: 'orders.csv' } });
      assert.match(second.path, /swap-3\.job\.yaml$/);
      assert.equal(await textOf(first), text);
      assert.equal(await textOf(job), swap);
    } finally {
      await closeAll();
      for (const uri of [...made, workspaceFile('plant-swap/orders-2.csv')])
        await fs.delete(uri).then(undefined, () => undefined);
    }
  });

  it('is made of a tag whose stock has no name yet, which is given one, though nothing of it was measured', async () => {
    const spec = workspaceFile('fennel.tag.yaml');
    const text = `tagwright: 1
stock: {material: birch plywood, thickness: 3 mm, kerf: 0.16 mm}
shapes:
  name: {text: Fennel, font: Pacifico, x_height: 9 mm, overlap: auto, grow: auto}
pieces:
  tag: {body: [name], hanger: {ring: left}}
`;
    await fs.writeFile(spec, new TextEncoder().encode(text));
    const answers = { title: 'Fennel', make: { quantity: 4 }, sizes: { ply3: '300 × 200 mm' }, keepsOffcuts: false };
    let made: vscode.Uri | undefined;
    try {
      made = await vscode.commands.executeCommand<vscode.Uri | undefined>('tagwright.newJob', spec, answers);
      assert.match(await textOf(made!), /spec: fennel\.tag\.yaml, quantity: 4/);
      const named = (await vscode.workspace.openTextDocument(spec)).getText();
      assert.match(named, /stocks:\n {2}ply3: \{material: birch plywood/);
      assert.match(named, /^stock: ply3$/m);
    } finally {
      await closeAll();
      for (const uri of [spec, ...(made ? [made] : [])]) await fs.delete(uri).then(undefined, () => undefined);
    }
  });
});
