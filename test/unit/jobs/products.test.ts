import assert from 'node:assert/strict';
import { withEdits } from '../../../src/core/issue.ts';
import { changesOf } from '../../../src/fixes/slips.ts';
import type { CheckedJob } from '../../../src/jobs/job.ts';
import type { Page } from '../../../src/export/page/page.ts';
import { byOrder } from '../../../src/jobs/papers/by-order.ts';
import { pickList } from '../../../src/jobs/papers/pick-list.ts';
import { mapPages } from '../support/job-map.ts';
import { jobHoverAt } from '../../../src/language/job-help.ts';
import { jobOnPage } from '../../../src/scene/job-on-page.ts';
import { bySimpleReader } from '../support/csv-reader.ts';
import { checkedJob, files, jobOf, laidOutJob } from '../support/jobs.ts';
import { tools } from '../support/tools.ts';

const sheets = ['ply3: [{size: [200 mm, 100 mm]}]'];
const both = ['{spec: named.tag.yaml, orders: shop.csv}', '{spec: plate.tag.yaml, orders: shop.csv}'];
const told = [
  '{spec: named.tag.yaml, orders: shop.csv, product: [Pot label, 0042]}',
  '{spec: plate.tag.yaml, orders: shop.csv, product: Blank}',
];

const shop = 'order,product,quantity,name\n1,Pot label,2,Sorrel\n1,Blank,1,\n2,0042,3,Rue\n3,blank ,4,\n';

function made(job: CheckedJob): unknown[] {
  return (job.pieces?.tags ?? []).map(({ spec, label, order, copies }) => [spec, label, order, copies]);
}

function inTable({ inFiles }: CheckedJob): string[] {
  return inFiles.flatMap(({ name, issues, position }) =>
    issues.map(({ code, range }) => {
      const { line, column } = position(range.start);
      return `${name}:${line}:${column} ${code}`;
    }),
  );
}

describe('One table of orders for several specs', () => {
  const check = (tags: readonly string[], csv: string) =>
    checkedJob(jobOf(tags, sheets), { ...files, 'shop.csv': csv });

  it('has each line made by the spec of its product', async () => {
    const job = await check(told, shop);
    assert.deepEqual([job.issues, inTable(job), job.leftOut], [[], [], []]);
    assert.deepEqual(made(job), [
      ['named.tag.yaml', 'Sorrel', '1', 2],
      ['named.tag.yaml', 'Rue', '2', 3],
      ['plate.tag.yaml', 'Blank', '1', 1],
      ['plate.tag.yaml', 'blank', '3', 4],
    ]);
  });

  it('goes by the name of the spec’s file where the job does not say', async () => {
    const csv = 'order,Product,name\n1,named,Sorrel\n2,plate.tag.yaml,\n3,PLATE,\n';
    const job = await check(both, csv);
    assert.deepEqual([job.issues, inTable(job)], [[], []]);
    assert.deepEqual(
      job.pieces!.tags.map(({ spec, order }) => `${spec} ${order}`),
      ['named.tag.yaml 1', 'plate.tag.yaml 2', 'plate.tag.yaml 3'],
    );
    // People write spaces where files have hyphens.
    const hyphened = { ...files, 'pot-label.tag.yaml': files['plate.tag.yaml']!, 'shop.csv': 'product\nPot label\n' };
    const other = await checkedJob(jobOf(['{spec: pot-label.tag.yaml, orders: shop.csv}'], sheets), hyphened);
    assert.deepEqual([other.issues, inTable(other), made(other).length], [[], [], 1]);
  });

  it('lists a line of an unknown product once, at its cell, and makes the rest', async () => {
    const csv = `${shop}4,Pot lable,1,Dill\n5,,1,Dill\n6,Jar lid,two,Dill\n7,Blank,0,\n`;
    const job = await check(told, csv);
    assert.deepEqual(job.issues, []);
    assert.deepEqual(inTable(job), [
      'shop.csv:6:3 unknown-name',
      'shop.csv:7:3 missing-key',
      'shop.csv:8:3 unknown-name',
      'shop.csv:8:11 bad-value',
      'shop.csv:9:9 bad-value',
    ]);
    const issues = job.inFiles[0]!.issues;
    assert.match(issues[0]!.message, /No spec of this job makes “Pot lable”\. Did you mean “Pot label”\?/);
    assert.match(issues[2]!.message, /Write “product: Jar lid” at the one that does\./);
    // The fix is in the table.
    assert.equal(withEdits(csv, changesOf(issues[0]!)[0]!.edits), csv.replace('lable', 'label'));
    assert.deepEqual(
      job.leftOut.map(({ spec, order }) => [spec, order]),
      [
        ['', '4'],
        ['', '5'],
        ['', '6'],
        ['plate.tag.yaml', '7'],
      ],
    );
    assert.deepEqual(
      job.leftOut.map(({ product }) => product),
      ['Pot lable', '', 'Jar lid', 'Blank'],
    );
  });

  it('loses and doubles nothing: what is laid and what is left out are the table', async () => {
    const csv = `${shop}4,Pot lable,5,Dill\n5,Pot label,7,Dill\n6,Blank,9,\n`;
    const job = await laidOutJob(jobOf(told, sheets), { ...files, 'shop.csv': csv });
    const rows = bySimpleReader(csv.replaceAll('\n', '\r\n')).slice(1);
    const wanted = rows.reduce((sum, [, , quantity]) => sum + Number(quantity), 0);
    const laid = job.layout.sheets.reduce((sum, { pieces }) => sum + pieces.length, 0);
    const lost = job.leftOut.reduce((sum, { quantity }) => sum + quantity!, 0);
    assert.deepEqual([laid, lost, job.layout.left.length], [wanted - 5, 5, 0]);
    const picked = byOrder(job).map(({ order, tags, leftOut }) => `${order}: ${tags.length}, ${leftOut.length}`);
    // In the order of the table, although the specs are made one after another.
    assert.deepEqual(picked, ['1: 2, 0', '2: 1, 0', '3: 1, 0', '4: 0, 1', '5: 1, 0', '6: 1, 0']);
  });

  it('names tags by the column that their words ask for, wherever it is', async () => {
    const csv = [
      'order,date,keeper,wide,product,name',
      '1,2027-05-02,A,9,Pot label,Sorrel',
      '2,2027-05-02,B,9,Blank,',
      '3,2027-05-02,C,9,Pot label,',
      '4,2027-05-02,C,9,Pot lable,Dill',
    ].join('\n');
    const sized = (files['named.tag.yaml'] as string).replace('50 mm', '"5{wide} mm"');
    const job = await checkedJob(jobOf(told, sheets), { ...files, 'named.tag.yaml': sized, 'shop.csv': csv });
    assert.deepEqual(made(job), [
      ['named.tag.yaml', 'Sorrel', '1', 1],
      ['plate.tag.yaml', '2027-05-02', '2', 1],
    ]);
    // Not by the day, which says nothing of whose tag it is.
    assert.deepEqual(
      job.leftOut.map(({ order, label }) => [order, label]),
      [
        ['3', 'Pot label'],
        ['4', 'Dill'],
      ],
    );
  });

  it('calls tags of one name by what the shop calls them, on every list', async () => {
    const sets = [told[0]!, '{spec: wide.tag.yaml, orders: shop.csv, product: Long label}'];
    const wide = (files['named.tag.yaml'] as string).replace('50 mm', '60 mm');
    const csv = 'order,product,name\n1,Pot label,Rue\n1,Long label,Rue\n2,Long label,Dill\n3,Long label,\n';
    const job = await laidOutJob(jobOf(sets, sheets), { ...files, 'wide.tag.yaml': wide, 'shop.csv': csv });
    const words = async (pages: Promise<readonly Page[]>) =>
      (await pages).flatMap((page) => page.words.map(({ text }) => text)).join('\n');
    for (const list of [await words(pickList(job, tools)), await words(mapPages(job, tools))]) {
      assert.match(list, /Rue \(Pot label\)/);
      assert.match(list, /Rue \(Long label\)/);
      assert.match(list, /Dill \(Long label\)$/m);
    }
    const shown = jobOnPage(job.layout.sheets, job).sheets.flatMap(({ pieces }) => pieces.map(({ name }) => name));
    assert.deepEqual(shown.toSorted(), ['Dill (Long label)', 'Rue (Long label)', 'Rue (Pot label)']);
  });

  it('may have a product that is a set: every spec that names it makes its part', async () => {
    const set = [
      '{spec: named.tag.yaml, orders: shop.csv, product: Set}',
      '{spec: plate.tag.yaml, orders: shop.csv, product: [Set, Blank]}',
    ];
    const job = await check(set, 'order,product,name\n1,Set,Rue\n2,Blank,\n3,Set,\n');
    assert.deepEqual(
      job.pieces!.tags.map(({ spec, order }) => `${spec} ${order}`),
      ['named.tag.yaml 1', 'plate.tag.yaml 1', 'plate.tag.yaml 2', 'plate.tag.yaml 3'],
    );
    assert.deepEqual(inTable(job), ['shop.csv:4:7 missing-key']);
    assert.deepEqual(
      job.leftOut.map(({ spec, order }) => [spec, order]),
      [['named.tag.yaml', '3']],
    );
  });

  it('without the column has every line made by every spec, and what is wrong with a line told once', async () => {
    const job = await check(both, 'order,quantity,name\n1,2,Rue\n2,two,Dill\n');
    assert.equal(made(job).length, 2);
    assert.deepEqual(inTable(job), ['shop.csv:3:3 bad-value']);
    assert.deepEqual(
      job.leftOut.map(({ spec }) => spec),
      ['named.tag.yaml', 'plate.tag.yaml'],
    );
  });

  it('needs the column where the job names products', async () => {
    const none = await check(told, 'order,name\n1,Rue\n');
    assert.deepEqual(
      none.issues.map(({ code, path }) => `${code} ${path.join('.')}`),
      ['unknown-name tags.0.product', 'unknown-name tags.1.product'],
    );
    const csv = 'order,produkt,name\n1,Pot label,Rue\n';
    const job = await check(told, csv);
    assert.deepEqual(job.issues, [], 'told at its name');
    const [near] = job.inFiles[0]!.issues;
    assert.equal(withEdits(csv, changesOf(near!)[0]!.edits), csv.replace('produkt', 'product'));
    assert.equal(made(job).length, 0);
    assert.equal(job.leftOut.length, 2);
  });

  it('suggests a product as the other lines spell it', async () => {
    const job = await check(both, 'order,product,name\n1,Named,Rue\n2,Namde,Dill\n');
    assert.match(job.inFiles[0]!.issues[0]!.message, /makes “Namde”\. Did you mean “Named”\?/);
    const alone = await check(both, 'order,product,name\n2,Namde,Dill\n');
    assert.match(alone.inFiles[0]!.issues[0]!.message, /Did you mean “named”\?/);
  });

  it('leaves the column to a spec that engraves it', async () => {
    const priced = files['named.tag.yaml']!.toString().replace('{name}', '{product}');
    const beside = { ...files, 'named.tag.yaml': priced, 'shop.csv': 'order,product\n1,Seed tin\n' };
    const job = await checkedJob(jobOf(['{spec: named.tag.yaml, orders: shop.csv}'], sheets), beside);
    assert.deepEqual([job.issues, inTable(job), made(job)], [[], [], [['named.tag.yaml', 'Seed tin', '1', 1]]]);
  });

  it('takes no lines twice for one spec', async () => {
    const twice = [told[0]!, '{spec: named.tag.yaml, orders: shop.csv, product: pot label}', told[1]!];
    const job = await check(twice, shop);
    assert.match(job.issues[0]!.message, /takes these orders from “shop\.csv” already: they would be made twice/);
    assert.deepEqual(job.issues[0]!.path, ['tags', 1, 'product']);
    assert.equal(made(job).length, 4);
    const parts = [
      told[0]!.replace('[Pot label, 0042]', 'Pot label'),
      told[0]!.replace('[Pot label, 0042]', '0042'),
      told[1]!,
    ];
    const apart = await check(parts, shop);
    assert.deepEqual([apart.issues, made(apart).length], [[], 4]);
  });

  it('leaves out the lines of a spec that is not there, each with its order', async () => {
    const gone = [told[0]!, told[1]!.replace('plate.tag', 'gone.tag')];
    const job = await check(gone, shop);
    assert.deepEqual(
      job.issues.map(({ code, path }) => `${code} ${path.join('.')}`),
      ['bad-file tags.1.spec'],
    );
    assert.deepEqual(
      job.leftOut.map(({ order, quantity }) => [order, quantity]),
      [
        ['1', 1],
        ['3', 4],
      ],
    );
    assert.equal(made(job).length, 2);
  });

  it('is told of under the pointer', async () => {
    const job = await check(told, shop);
    const at = job.source.text.indexOf('Pot label') + 1;
    assert.match(jobHoverAt(job.source, at, job)!.markdown, /\*\*Pot label\*\*\n\n5 tags for 2 orders\./);
    const key = job.source.text.indexOf('product:') + 1;
    assert.match(jobHoverAt(job.source, key, job)!.markdown, /Which lines of the table are for this spec/);
  });
});
