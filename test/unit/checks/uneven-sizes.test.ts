import assert from 'node:assert/strict';
import { sizeSetters, unevenSizes } from '../../../src/checks/uneven-sizes.ts';
import { checkBatch } from '../../../src/engine/batch.ts';
import type { ComputeOptions, Report } from '../../../src/engine/engine.ts';
import { findFixes, withEdits } from '../../../src/fixes/find-fixes.ts';
import { fixAll } from '../../../src/fixes/fix-all.ts';
import { newEngine } from '../support/engine.ts';

const engine = newEngine();
const located: ComputeOptions = { locate: () => undefined };

const names = '[Rue, Lovage, Nasturtium]';

const labels = (fit = '', batch = names, size = '[80 mm, 30 mm]'): string =>
  `tagwright: 1\nbatch: ${batch}\nshapes:\n  plate: {rectangle: ${size}}\n  name: {text: "{name}", font: Nunito, fit: {in: plate, margin: 4 mm${fit}}}\npieces:\n  label: {body: [plate], engrave: [name]}\n`;

async function checked(text: string, options = located): Promise<{ report: Report; all: readonly Report[] }> {
  return checkBatch(engine, await engine.compute(text, options), options);
}

const unevenIn = ({ report: { issues } }: { report: Report }) => issues.filter(({ code }) => code === 'uneven-sizes');

describe('Names of a batch that are fitted each by itself', () => {
  it('are told once, at the fit, with the largest and the smallest', async () => {
    const made = await checked(labels());
    const [found, ...more] = unevenIn(made);
    assert.deepEqual(more, []);
    assert.match(
      found!.message,
      /^“Rue” comes out \d\.\d times as large as “Nasturtium” \(small letters \d+\.\d mm and \d+\.\d mm high\), as each/,
    );
    assert.deepEqual([found!.severity, found!.row, found!.path], ['info', 2, ['shapes', 'name', 'fit']]);
    const shown = await checked(labels(), { ...located, row: 2 });
    assert.equal(unevenIn(shown)[0]!.row, undefined, 'the smallest is the one that is drawn');
  });

  it('count from twice the size', () => {
    const row = (label: string, xHeight: number, index: number) => ({
      row: index,
      label,
      fitted: [{ path: ['shapes', 'name', 'fit'], xHeight }],
    });
    const found = (least: number) => unevenSizes([row('Rue', 10, 0), row('Kale', 7, 1), row('Nasturtium', least, 2)]);
    assert.equal(found(5).length, 0);
    assert.equal(found(4.99).length, 1);
    const asked = (least: number) => {
      const rows = [row('Rue', 9, 0), row('Kale', least, 1)];
      return unevenSizes(
        rows.map(({ fitted, ...each }) => ({ ...each, fitted: [{ ...fitted[0]!, isLimited: true }] })),
      );
    };
    assert.equal(asked(6).length, 0);
    assert.equal(asked(5.99).length, 1);
    assert.deepEqual(unevenSizes([]), []);
    const dated = [row('Rue', 3, 0), row('Kale', 1, 1)].map(({ fitted, ...each }) => ({
      ...each,
      fitted: [{ ...fitted[0]!, words: '3 May' }],
    }));
    assert.match(unevenSizes(dated)[0]!.message, /^“3 May” comes out on “Rue” 3\.0 times as large as on “Kale” /);
  });

  it('are not told where a size was asked for, where all share one, and where they are alike', async () => {
    for (const text of [
      labels(', at_most: {x_height: 8 mm}'),
      labels(', same_size: true'),
      labels('', '[Lovage, Borage, Chives]'),
      labels('', '[Nasturtium]'),
    ])
      assert.deepEqual(unevenIn(await checked(text)), []);
  });

  it('are told sooner where one size was asked for, in the words that come out so', async () => {
    const made = await checked(labels(', at_most: {x_height: 12 mm}'));
    const [found, ...more] = unevenIn(made);
    assert.deepEqual(more, []);
    assert.match(found!.message, /^“Rue” comes out 1\.[5-9] times as large as “Nasturtium” /);
    const dated = [
      'tagwright: 1',
      'batch: [{name: Ivy, date: 3 May 2027}, {name: Max, date: 30 September 2027}]',
      'shapes:',
      '  plate: {rectangle: [40 mm, 32 mm]}',
      '  name: {text: "{name}", font: Pacifico, x_height: 4 mm, place: {on: plate, at: top, margin: 2 mm}}',
      '  date: {text: "{date}", font: Nunito, fit: {in: plate, margin: 3 mm, at_most: {cap_height: 6 mm}}}',
      'pieces:',
      '  tag: {body: [plate], engrave: [name, date]}',
      '',
    ].join('\n');
    const [date] = unevenIn(await checked(dated));
    assert.match(date!.message, /^“3 May 2027” comes out \d\.\d times as large as “30 September 2027” /);
    const fixes = await findFixes(engine, (await checked(dated)).report, date!, located);
    const fixed = await checked(withEdits(dated, fixes[0]!.edits));
    assert.deepEqual(unevenIn(fixed), []);
    const heights = fixed.all.map(({ tag }) => tag!.pieces[0]!.marks[1]!.lettering![0]!.xHeight);
    assert.ok(Math.max(...heights) - Math.min(...heights) < 0.05, String(heights));
  });

  it('can be accepted, and switched off', async () => {
    const accepted = await checked(
      labels().replace(/(fit: .*)$/m, '$1 # accept uneven-sizes: each goes out by itself'),
    );
    assert.deepEqual(unevenIn(accepted), []);
    assert.ok(accepted.report.accepted.some(({ code }) => code === 'uneven-sizes'));
    const off = await checked(labels(), { ...located, severities: { 'uneven-sizes': 'off' } });
    assert.deepEqual(unevenIn(off), []);
  });

  it('get one size by their fix, which is never made unasked', async () => {
    const { report } = await checked(labels());
    const fixes = await findFixes(engine, report, unevenIn({ report })[0]!, located);
    assert.deepEqual(
      fixes.map(({ title }) => title),
      ['Give all the size that every name has room for: same_size true'],
    );
    const after = await checked(withEdits(labels(), fixes[0]!.edits));
    assert.deepEqual(after.report.issues, []);
    const heights = after.all.map(({ tag }) => tag!.pieces[0]!.marks[0]!.lettering![0]!.xHeight);
    assert.ok(Math.max(...heights) - Math.min(...heights) < 0.01, String(heights));
    const { made, left } = await fixAll(engine, labels(), located);
    assert.deepEqual(made, []);
    assert.match(left[0]!.why, /^It is for you to decide: Give all the size/);
  });

  it('get no such fix where all would be too small to read', async () => {
    const text = labels('', '[Rue, "Nasturtium, Tagetes, Calendula and Borage"]', '[30 mm, 14 mm]');
    const { report } = await checked(text);
    const [found] = unevenIn({ report });
    assert.ok(found);
    assert.deepEqual(await findFixes(engine, report, found, located), []);
  });
});

describe('Names of a batch that have one size', () => {
  const fit = ', at_most: {x_height: 8 mm}, same_size: true';
  const batch = '[Fig, Tansy, Mallow, Ampelodesmos mauritanicus]';

  it('are told which of them keeps all others small, and by how much', async () => {
    const made = await checked(labels(fit, batch));
    const [found, ...more] = unevenIn(made);
    assert.deepEqual(more, []);
    const told =
      /^“Ampelodesmos mauritanicus” keeps all 4 small, .* \(small letters (\S+) mm high\): the others have room for (\S+) mm\.$/;
    const [, is, could] = told.exec(found!.message)!.map(Number);
    assert.deepEqual([found!.row, found!.path], [3, ['shapes', 'name', 'fit']]);
    const without = await checked(labels(fit, '[Fig, Tansy, Mallow]'));
    assert.deepEqual(unevenIn(without), []);
    const lettered = [...without.report.tag!.made.values()].find(({ lettering }) => lettering)!;
    const least = lettered.lettering![0]!.xHeight;
    assert.ok(Math.abs(least - could!) < 0.1, `${String(least)} mm without it, ${String(could)} mm told`);
    assert.ok(is! < could! / 1.5);
  });

  it('are told from twice the size, or from one and a half times if it is far less than asked for', () => {
    const size = (scales: readonly number[], most?: number) => ({
      path: ['shapes', 'name', 'fit'],
      scales,
      ...(most === undefined ? {} : { most }),
    });
    const setters = (...scales: number[]) => sizeSetters(size(scales), 1)?.rows;
    assert.equal(setters(3.99, 2, 3.99), undefined);
    assert.deepEqual(setters(4, 2, 4), [1]);
    assert.equal(setters(9, 1), undefined, 'of two, each has its say');
    assert.equal(setters(9, 1, 1, 9), undefined, 'two are more than one in ten');
    assert.deepEqual(sizeSetters(size([9, 1, 1.2, 9]), 2)?.rows, [1, 2]);
    assert.equal(sizeSetters(size([3, 2, 3], 5), 1), undefined);
    assert.deepEqual(sizeSetters(size([3, 2, 3], 5.01), 1), { rows: [1], times: 1.5, isTiny: true });
    assert.equal(sizeSetters(size([2.99, 2, 2.99], 6), 1), undefined);
  });

  it('are offered without those that keep them small, and come out larger', async () => {
    const made = await checked(labels(fit, batch));
    const issue = unevenIn(made)[0]!;
    assert.equal(issue.severity, 'warning');
    const [fix, ...more] = await findFixes(engine, made.report, issue, located);
    assert.deepEqual(more, []);
    assert.match(
      fix!.title,
      /^Leave “Ampelodesmos mauritanicus” out of the batch, to be made in a spec of its own: the others come out \d\.\d times as large$/,
    );
    const after = await checked(withEdits(made.report.source.text, fix!.edits));
    assert.equal(after.all.length, 3);
    assert.deepEqual(unevenIn(after), []);
  });

  it('are not set aside for what another keeps small', async () => {
    const small = labels(fit, '[Tansy, Fig, Kale, Ampelodesmos mauritanicus var. ruber, Rue]', '[40 mm, 12 mm]');
    const made = await checked(small);
    const issue = made.report.issues.find(({ code }) => code === 'hard-to-read')!;
    const titles = (await findFixes(engine, made.report, issue, located)).map(({ title }) => title);
    assert.ok(
      titles.some((title) => title.startsWith('Leave “Ampelodesmos')),
      titles.join('\n'),
    );
    assert.ok(!titles.some((title) => title.startsWith('Leave “Tansy')), titles.join('\n'));
  });
});
