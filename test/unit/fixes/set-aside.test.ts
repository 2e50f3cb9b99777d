import assert from 'node:assert/strict';
import { parse } from 'yaml';
import { withEdits, findFixes } from '../../../src/fixes/find-fixes.ts';
import { fixAll } from '../../../src/fixes/fix-all.ts';
import { isNoWorse } from '../../../src/fixes/no-worse.ts';
import { setAside } from '../../../src/fixes/set-aside.ts';
import { mostSetAside } from '../../../src/spec/batch/batch.ts';
import { checkBatch } from '../../../src/engine/batch.ts';
import { packagedWoff2 } from '../../fonts/font-files.ts';
import { isOfSameTag } from '../../../src/scene/outcome.ts';
import { newEngine } from '../support/engine.ts';

const engine = newEngine({
  'names.csv': 'name\nMona\nIona\nNora\n',
  'twice.csv': 'name\nMona\nIona\nIona\n',
});
const options = { locate: (relative: string) => `/specs/${relative}` };

/** Only a name with a dot over one of its letters falls apart, and no room is left for anything that could hold it. */
const spec = (batch: string): string =>
  `tagwright: 1\nstock: {min_web: 5 mm}\nbatch:${batch}\nshapes:\n  name: {text: "{name}", font: Pacifico, x_height: 10 mm}\npieces:\n  tag: {body: [name], hanger: {ring: {at: auto}}}\n`;

async function setAsideText(batch: string, ...rows: number[]): Promise<string | undefined> {
  const { source, batch: list } = await engine.compute(spec(batch), options);
  const edits = setAside(source, list!.rows, rows);
  return edits && withEdits(source.text, edits);
}

const names = (text: string): unknown => (parse(text) as { batch: unknown }).batch;

describe('A name set aside', () => {
  it('leaves the others of its list, in either style', async () => {
    const all = ['Mona', 'Iona', 'Nora'];
    for (const batch of [
      ' [Mona, Iona, Nora]',
      ' [ "Mona" ,Iona,  Nora ]',
      '\n  - Mona\n  - Iona # with a dot\n  - Nora',
    ]) {
      for (const rows of [[0], [1], [2], [0, 1], [0, 2], [2, 1]]) {
        const text = (await setAsideText(batch, ...rows))!;
        assert.deepEqual(
          names(text),
          all.filter((_, row) => !rows.includes(row)),
          text,
        );
        if (batch.includes('\n'))
          for (const row of rows) assert.ok(text.includes(`# - ${all[row]}`), 'it stays as a comment');
      }
    }
  });

  it('may have columns of its own', async () => {
    const batch = '\n  - {name: Mona, bed: 2}\n  - {name: Iona, bed: 3}';
    assert.deepEqual(names((await setAsideText(batch, 0))!), [{ name: 'Iona', bed: 3 }]);
    assert.equal(await setAsideText('\n  - name: Mona\n    bed: 2\n  - name: Iona\n    bed: 3', 0), undefined);
  });

  it('is not the only one', async () => {
    assert.equal(await setAsideText(' [Iona]', 0), undefined);
    assert.equal(await setAsideText(' [Iona, Mona]', 0, 1), undefined);
  });

  it('is left out of a table, which stays as it is', async () => {
    const without = async (batch: string, ...rows: number[]) => names((await setAsideText(batch, ...rows))!);
    assert.deepEqual(await without(' names.csv', 1), { table: 'names.csv', without: ['Iona'] });
    for (const more of [' {table: names.csv, without: Nora}', '\n  table: names.csv\n  without: [Nora]'])
      assert.deepEqual(await without(more, 1), { table: 'names.csv', without: ['Nora', 'Iona'] }, more);
    // Both rows of one name would go, and one of them suits.
    assert.equal(await setAsideText(' twice.csv', 1), undefined);
  });

  it('is offered where only it has a problem that no gentle fix solves, and never done unasked', async () => {
    const text = spec(' [Mona, Iona]');
    const report = await engine.compute(text, { ...options, row: 1 });
    const issue = report.issues.find(({ code }) => code === 'loose-part')!;
    const fixes = await findFixes(engine, report, issue, { ...options, row: 1 });
    const aside = fixes.find(({ title }) => title.startsWith('Leave “Iona” out of the batch'));
    assert.ok(aside, fixes.map(({ title }) => title).join('; '));
    assert.equal(aside, fixes.at(-1), 'whatever else helps comes first');
    assert.deepEqual(names(withEdits(text, aside.edits)), ['Mona']);
    // In its row would be another name, or none: there is no drawing to compare.
    const without = await engine.compute(withEdits(text, aside.edits), { ...options, row: 1 });
    assert.equal(isOfSameTag(aside, report, without), false);
    assert.equal(isOfSameTag(fixes[0]!, report, report), true);
    const { text: fixed } = await fixAll(engine, text, options);
    assert.deepEqual(names(fixed), ['Mona', 'Iona']);
  });
});

describe('A fix for a batch in a thin script', () => {
  it('slides the letters of all, of those too that only have thin strokes, and sets none aside', async () => {
    const thin = newEngine({ 'face.woff2': await packagedWoff2('dancing-script', 'latin', 400) });
    // Yara and Wanda hang askew as they are, by a degree less; Clara holds together.
    const batch = '[Lena, Yara, Wanda, Clara]';
    const text = `tagwright: 1\nstock: {material: birch plywood, thickness: 3 mm, kerf: 0.16 mm}\ntie: {twine: 1.5 mm}\nbatch: ${batch}\nshapes:\n  name: {text: "{name}", font: face.woff2, x_height: 12 mm}\npieces:\n  tag: {body: [name], hanger: {ring: auto}}\n`;
    const reports = await checkBatch(thin, await thin.compute(text, options), options);
    const codes = reports.all.map(({ issues }) => issues.map(({ code }) => code));
    assert.deepEqual(
      codes.map((each) => each.includes('loose-part')),
      [true, true, true, false],
    );
    assert.ok(codes[3]!.includes('thin-stroke'));
    const issue = reports.all[0]!.issues.find(({ code }) => code === 'loose-part')!;
    const fixes = await findFixes(thin, reports.all[0]!, issue, options);
    const slid = fixes.find(({ title }) => title.startsWith('Slide the letters of “name” together: overlap 0.6 mm ('));
    assert.ok(slid, fixes.map(({ title }) => title).join('\n'));
    assert.equal(slid.aside, undefined);
  });
});

describe('A fix for all names but one', () => {
  /** Their dots are loose; slid together, Tim alone hangs askew. */
  const all = ['David', 'Emil', 'Fiona', 'Ida', 'Tim'];
  const text = `tagwright: 1\nbatch:\n${all.map((name) => `  - ${name}\n`).join('')}shapes:\n  name: {text: "{name}", font: Pacifico, x_height: 12 mm}\npieces:\n  tag: {body: [name], hanger: {ring: auto}}\n`;

  for (const row of [0, all.indexOf('Tim')])
    it(`sets that aside and names it, asked for at “${all[row]}”`, async () => {
      const at = { ...options, row };
      const report = await engine.compute(text, at);
      const issue = report.issues.find(({ code }) => code === 'loose-part')!;
      const fixes = await findFixes(engine, report, issue, at);
      const fix = fixes.find(({ title }) => title.includes('out of the batch, to be made'));
      assert.match(
        fix?.title ?? '',
        /^Slide the letters .* overlap 0.6 mm.*, and leave “Tim” out of the batch, to be made in a spec of its own, as it would not suit it$/,
      );
      const fixed = withEdits(text, fix!.edits);
      assert.deepEqual(
        names(fixed),
        all.filter((name) => name !== 'Tim'),
      );
      const { all: reports } = await checkBatch(engine, await engine.compute(fixed, options), options);
      const before = await checkBatch(engine, await engine.compute(text, options), options);
      const kept = before.all.filter((each) => each.batch!.rows[each.row]!.label !== 'Tim');
      assert.ok(reports.every((each, index) => isNoWorse(kept[index]!, each)));
      assert.ok(!reports.some(({ issues }) => issues.some(({ code }) => code === 'loose-part')));
    });

  it('leaves it out of a table', async () => {
    const inTable = newEngine({ 'list.csv': `name\n${all.join('\n')}\n` });
    const written = text.replace(/batch:\n(  - .*\n)+/, 'batch: list.csv\n');
    const report = await inTable.compute(written, options);
    const issue = report.issues.find(({ code }) => code === 'loose-part')!;
    const fixes = await findFixes(inTable, report, issue, options);
    const fix = fixes.find(({ title }) =>
      title.endsWith(', and leave “Tim” out of the batch, to be made in a spec of its own, as it would not suit it'),
    );
    const fixed = withEdits(written, fix!.edits);
    assert.deepEqual(names(fixed), { table: 'list.csv', without: ['Tim'] });
    const { report: after, all: rest } = await checkBatch(inTable, await inTable.compute(fixed, options), options);
    assert.equal(rest.length, all.length - 1);
    assert.ok(!after.issues.some(({ code }) => code === 'loose-part' || code === 'hangs-askew'));
  });

  it('is never made unasked', async () => {
    const { text: fixed } = await fixAll(engine, text, options);
    assert.deepEqual(names(fixed), all);
  });

  it('sets aside three names in twenty, at least one and at most five', () => {
    assert.deepEqual(
      [5, 10, 11, 30, 500].map((count) => mostSetAside(count)),
      [1, 2, 2, 5, 5],
    );
  });
});
