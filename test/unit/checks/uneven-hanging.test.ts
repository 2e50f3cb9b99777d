import assert from 'node:assert/strict';
import { unevenHanging } from '../../../src/checks/uneven-hanging.ts';
import type { HangingSide } from '../../../src/checks/uneven-hanging.ts';
import { checkBatch } from '../../../src/engine/batch.ts';
import type { ComputeOptions } from '../../../src/engine/engine.ts';
import { findFixes, withEdits } from '../../../src/fixes/find-fixes.ts';
import { fixAll } from '../../../src/fixes/fix-all.ts';
import { newEngine } from '../support/engine.ts';

const engine = newEngine();
const located: ComputeOptions = { locate: () => undefined };

const names = (batch: string, hanger = '{ring: auto}'): string =>
  `tagwright: 1\nstock: {material: birch plywood, thickness: 3 mm, kerf: 0}\ntie: {twine: 1.5 mm}\nbatch: ${batch}\nshapes:\n  name: {text: "{name}", font: Pacifico, x_height: 12 mm, overlap: auto, grow: auto}\npieces:\n  tag: {body: [name], hanger: ${hanger}}\n`;

const unevenIn = async (text: string) => {
  const { report, all } = await checkBatch(engine, await engine.compute(text, located), located);
  return { report, all, found: report.issues.filter(({ code }) => code === 'uneven-hanging') };
};

describe('Rings of a batch that find their own places', () => {
  const path = ['pieces', 'tag', 'hanger', 'ring'];
  const rows = (sides: readonly HangingSide['side'][]) =>
    sides.map((side, row) => ({ row, label: `N${row}`, hung: [{ path, side }] }));

  it('are told once, on the first that hangs otherwise, with all that do', () => {
    const [found, ...more] = unevenHanging(rows(['left', 'top', 'left', 'right', 'top', 'left']));
    assert.deepEqual(more, []);
    assert.equal(
      found!.message,
      '“N1” and “N4” hang from the top and “N3” from the right, the other 3 from the left, as each ring is where it holds best: beside each other they look like two lots.',
    );
    assert.deepEqual([found!.severity, found!.row, found!.path], ['info', 1, path]);
  });

  it('count from one in five', () => {
    const withOne = (others: number) => unevenHanging(rows(['top', ...Array<'left'>(others).fill('left')])).length;
    assert.deepEqual([withOne(1), withOne(4), withOne(5), withOne(0)], [1, 1, 0, 0]);
    assert.deepEqual(unevenHanging(rows(['left', 'left', 'left'])), []);
    assert.deepEqual(unevenHanging([]), []);
  });

  it('are those that the names have', async () => {
    const { found, all } = await unevenIn(names('[Lena, Mia]'));
    assert.match(found[0]!.message, /^“Mia” hangs from the top, the other from the left, /);
    // As the balance has it: the one is above its tag, the other beside it.
    const [lena, mia] = all.map(({ tag }) => tag!.pieces[0]!.hangers[0]!.centre);
    assert.ok(lena!.x < -20 && mia!.y > Math.abs(mia!.x), JSON.stringify([lena, mia]));
  });

  it('are not told where the spec says the side, or each tag hangs alike', async () => {
    for (const text of [names('[Lena, Mia]', '{ring: left}'), names('[Lena, Paul]'), names('[Ida]')])
      assert.deepEqual((await unevenIn(text)).found, [], text);
  });

  it('hang from one side by their fix, where that suits all, and never unasked', async () => {
    const text = names('[Ulla, Emilia]');
    const { report, found } = await unevenIn(text);
    const fixes = await findFixes(engine, report, found[0]!, located);
    assert.deepEqual(
      fixes.map(({ title }) => title),
      ['Hang all from the right: at right'],
    );
    assert.deepEqual((await unevenIn(withEdits(text, fixes[0]!.edits))).report.issues, []);
    const { made, left } = await fixAll(engine, text, located);
    assert.deepEqual(made, []);
    assert.match(left[0]!.why, /^It is for you to decide: Hang all/);
    // From the left, Mia would hang askew.
    const lena = await unevenIn(names('[Lena, Mia]'));
    assert.deepEqual(await findFixes(engine, lena.report, lena.found[0]!, located), []);
  });
});
