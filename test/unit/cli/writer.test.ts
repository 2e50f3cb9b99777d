import assert from 'node:assert/strict';
import { mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { sheetsAll } from '../../../src/cli/sheets.ts';

/** On two sheets. */
const text =
  'tagwright: 1\nsheet: {size: [60, 40], copies: 2}\nshapes:\n  a: {rectangle: [40, 20]}\npieces:\n  tag: {body: [a]}\n';
const specs = [{ file: 'rue.tag.yaml', text, options: { locate: () => undefined } }];

describe('The files of all sheets', () => {
  let folder = '';
  const said: string[] = [];
  const { log, error } = console;
  beforeEach(async () => {
    folder = await mkdtemp(join(tmpdir(), 'tagwright-'));
    said.length = 0;
    console.log = console.error = (line: string) => said.push(line);
  });
  afterEach(() => {
    Object.assign(console, { log, error });
    return rm(folder, { recursive: true });
  });

  const sheets = (overwrite = false): Promise<number> =>
    sheetsAll(specs, { to: 'svg', out: folder, force: false, overwrite, progress: false });

  it('are left as they were where one would be replaced, unless they may be', async () => {
    const second = join(folder, 'rue-sheet-2.svg');
    await writeFile(second, 'of another time');
    assert.equal(await sheets(), 1);
    assert.deepEqual(await readdir(folder), ['rue-sheet-2.svg']);
    assert.ok(said.includes(`${second}: exists and differs; --overwrite replaces it.`), said.join('\n'));
    assert.equal(await sheets(true), 0);
    assert.deepEqual((await readdir(folder)).sort(), ['rue-sheet-1.svg', 'rue-sheet-2.svg']);
    assert.match(await readFile(second, 'utf8'), /^<\?xml/);
    // What is there already is no other.
    assert.equal(await sheets(), 0);
  });

  it('appear together or not at all', async () => {
    // So long that the name of the tenth, while it is written, is longer than any file's may be.
    const name = 'r'.repeat(255 - `-sheet-9.svg.${process.pid}.part`.length);
    const ten = specs.map((spec) => ({
      ...spec,
      file: `${name}.tag.yaml`,
      text: text.replace('copies: 2', 'copies: 10'),
    }));
    await assert.rejects(sheetsAll(ten, { to: 'svg', out: folder, force: false, overwrite: false, progress: false }), {
      code: 'ENAMETOOLONG',
    });
    assert.deepEqual(await readdir(folder), []);
  });
});
