import assert from 'node:assert/strict';
import { posix } from 'node:path';
import { filesMeant, nearFiles } from '../../../src/spec/files/near-files.ts';
import { findFixes } from '../../../src/fixes/find-fixes.ts';
import { withEdits } from '../../../src/core/issue.ts';
import { Engine } from '../../../src/engine/engine.ts';
import { packagedFontFiles } from '../../fonts/font-files.ts';

/** Folders and files of a disk, below “/shop”. */
function diskOf(files: Readonly<Record<string, string>>) {
  const paths = Object.keys(files);
  const locate = (relative: string): string => posix.join('/shop/orders', relative);
  const beside = (path: string): Promise<string[]> => {
    const folder = `${posix.dirname(path)}/`;
    const names = paths
      .filter((each) => each.startsWith(folder))
      .map((each) => each.slice(folder.length).split('/')[0]!);
    return names.length > 0 ? Promise.resolve([...new Set(names)]) : Promise.reject(new Error(`no folder ${folder}`));
  };
  return { files, locate, beside };
}

describe('A file that is not there', () => {
  it('is looked for under its name in the folders within and in the one above', async () => {
    const disk = diskOf({
      '/shop/orders/lists/crew.csv': '',
      '/shop/orders/plants.csv': '',
      '/shop/rest.csv': '',
      '/shop/orders/lists/old/beds.csv': '',
    });
    assert.deepEqual(await filesMeant('crew.csv', disk), ['lists/crew.csv']);
    assert.deepEqual(await filesMeant('rest.csv', disk), ['../rest.csv']);
    assert.deepEqual(await filesMeant('lists/plants.csv', disk), ['plants.csv']);
    assert.deepEqual(await filesMeant('lists/beds.csv', disk), ['lists/old/beds.csv']);
    assert.deepEqual(await filesMeant('nowhere/crew.csv', disk), []);
  });

  it('has no other order proposed in its place, only because that is a table too', () => {
    assert.deepEqual(nearFiles('crew.csv', ['plants.csv']), []);
    assert.deepEqual(nearFiles('crew.csv', ['plants.csv', 'crews.csv', 'crew.txt']), ['crews.csv']);
    assert.deepEqual(nearFiles('leaves.svg', ['leaf.svg']), ['leaf.svg']);
  });

  it('gets its new place by a fix, also beside what is left out of it', async () => {
    const { locate, beside, files } = diskOf({
      '/shop/orders/lists/crew.csv': 'name\nIda\nUwe\n',
      '/shop/orders/plants.csv': 'plant\nRue\n',
    });
    const engine = new Engine({
      ...packagedFontFiles(),
      beside,
      read: (path) => {
        const text = files[path];
        return text === undefined
          ? Promise.reject(new Error(`${path} does not exist`))
          : Promise.resolve(new TextEncoder().encode(text));
      },
    });
    for (const batch of ['crew.csv', '{table: crew.csv, without: Uwe}']) {
      const text = `tagwright: 1\nbatch: ${batch}\nshapes:\n  plate: {rectangle: [60, 20]}\n  name: {text: "{name}", height: 8}\npieces:\n  tag: {body: plate, engrave: name}\n`;
      const report = await engine.compute(text, { locate });
      const issue = report.issues.find(({ code }) => code === 'bad-file')!;
      assert.match(issue.message, /“crew.csv” cannot be found or read\. Did you mean “lists\/crew.csv”\?$/);
      const [fix] = await findFixes(engine, report, issue, { locate });
      const after = await engine.compute(withEdits(text, fix!.edits), { locate });
      assert.equal(after.batch?.rows[0]?.label, 'Ida');
      assert.equal(withEdits(text, fix!.edits), text.replace('crew.csv', 'lists/crew.csv'));
    }
  });
});
