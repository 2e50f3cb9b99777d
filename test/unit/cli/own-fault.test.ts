import assert from 'node:assert/strict';
import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { check } from '../../../src/cli/check.ts';
import { eachFile } from '../../../src/cli/each-file.ts';
import { exportAll } from '../../../src/cli/export.ts';
import { RowWorker } from '../../../src/cli/row-work.ts';
import { sheetsAll } from '../../../src/cli/sheets.ts';
import { newEngine } from '../support/engine.ts';

const plainly = { force: false, overwrite: false, progress: false };

const text = 'tagwright: 1\nshapes:\n  a: {text: Ash, font: ./ash.woff, x_height: 9}\npieces:\n  tag: {body: [a]}\n';
const locate = () => {
  throw new TypeError('nothing is there');
};

describe('A fault of the program itself', () => {
  let folder = '';
  const said: string[] = [];
  const { log, error } = console;
  before(async () => {
    folder = await mkdtemp(join(tmpdir(), 'tagwright-'));
  });
  beforeEach(() => {
    said.length = 0;
    console.log = console.error = (line: string) => said.push(line);
  });
  afterEach(() => {
    Object.assign(console, { log, error });
  });
  after(() => rm(folder, { recursive: true }));

  const plain =
    'tagwright: 1\nsheet: {size: [200, 100]}\nshapes:\n  a: {rectangle: [40, 20]}\npieces:\n  tag: {body: [a]}\n';
  const specs = [
    { file: 'one.tag.yaml', text, options: { locate } },
    { file: 'two.tag.yaml', text: plain, options: { locate: () => undefined } },
  ];
  const fault = /^one\.tag\.yaml: Tagwright failed on this tag \(nothing is there\)\. The fault is in the program/;

  it('in one file does not keep the others from being checked', async () => {
    assert.equal(await check(specs, { json: false, strict: false, withFixes: false }), 1);
    assert.match(said[0]!, fault);
    assert.deepEqual(said.slice(1), ['two.tag.yaml: no problems']);
  });

  for (const [command, run, file] of [
    ['exported', (out: string) => exportAll(specs, { to: 'svg', out, ...plainly, width: undefined }), 'two.svg'],
    ['laid out', (out: string) => sheetsAll(specs, { to: 'svg', out, ...plainly }), 'two-sheet-1.svg'],
  ] as const)
    it(`in one file does not keep the others from being ${command}`, async () => {
      const out = join(folder, command);
      assert.equal(await run(out), 1);
      assert.ok(
        said.some((line) => fault.test(line)),
        said.join('\n'),
      );
      assert.ok((await readFile(join(out, file))).length > 0);
    });

  it('is told from a file that cannot be written, which ends the work', async () => {
    const out = join(folder, 'taken');
    await writeFile(out, '');
    await assert.rejects(exportAll(specs.slice(1), { to: 'svg', out, ...plainly, width: undefined }), {
      syscall: 'mkdir',
    });
    await assert.rejects(
      eachFile(specs, () => Promise.reject(Object.assign(new Error('no room'), { syscall: 'write' }))),
      /no room/,
    );
  });

  it('is an error of the tag alone where many are made', async () => {
    const engine = newEngine();
    engine.compute = () => Promise.reject(new TypeError('nothing is there'));
    const worker = new RowWorker({ file: 'one.tag.yaml', text, severities: {}, wish: { what: 'issues' } }, engine);
    const { row, issues } = await worker.make({ row: 3 });
    assert.equal(row, 3);
    assert.deepEqual(
      issues.map(({ severity, message }) => [severity, message.slice(0, 28)]),
      [['error', 'Tagwright failed on this tag']],
    );
  });
});
