import assert from 'node:assert/strict';
import { parse } from 'yaml';
import {
  jobText,
  jobTitle,
  largestPiece,
  namedStock,
  ofSpec,
  orderColumns,
  ordersText,
  stocksOf,
  usualSize,
} from '../../../src/language/new-job.ts';
import { SpecSource } from '../../../src/spec/yaml/source.ts';
import { parseTable } from '../../../src/spec/files/table.ts';
import { newEngine } from '../support/engine.ts';
import { checkedJob, files, layered, named, plate } from '../support/jobs.ts';
import { bySimpleReader } from '../support/csv-reader.ts';

const beside = { ...files };
const computed = (text: string) => newEngine(beside).compute(text, { locate: (relative) => `/specs/${relative}` });

describe('A new job', () => {
  it('is made of a spec without a problem, for its stocks', async () => {
    const report = await computed(layered);
    assert.deepEqual(stocksOf(report.tag!), ['ply3', 'cherry2']);
    const text = jobText({
      ...ofSpec(report.source),
      title: jobTitle(report, 'layered.tag.yaml'),
      spec: 'layered.tag.yaml',
      make: { quantity: 4 },
      sheets: [
        { stock: 'ply3', size: ['600 mm', '300 mm'] },
        { stock: 'cherry2', size: ['300 mm', '200 mm'] },
      ],
    });
    const job = await checkedJob(text, beside);
    assert.deepEqual(job.issues, []);
    assert.equal(job.title, 'layered');
    assert.deepEqual(
      job.pieces!.stocks.map(({ name, pieces }) => [name, pieces.length]),
      [
        ['ply3', 4],
        ['cherry2', 4],
      ],
    );
  });

  it('takes its orders from a new table, a line for each tag of the batch', async () => {
    const text = `${named}batch: [{name: 'Sorrel, red'}, {name: Borage}]\n`;
    const report = await computed(text);
    assert.deepEqual(orderColumns(report), ['name']);
    const table = ordersText(report);
    assert.deepEqual(bySimpleReader(table), [
      ['order', 'quantity', 'name'],
      ['1', '1', 'Sorrel, red'],
      ['2', '1', 'Borage'],
    ]);
    const job = jobText({
      ...ofSpec(report.source),
      title: 'Swap: {odd} “title”',
      spec: 'named.tag.yaml',
      make: { orders: 'orders.csv' },
      sheets: [{ stock: 'ply3', size: ['200 mm', '100 mm'], offcuts: 'ply3.offcuts.yaml' }],
    });
    const checked = await checkedJob(job, { ...beside, 'named.tag.yaml': text, 'orders.csv': table });
    assert.deepEqual(
      checked.issues.map(({ severity, message }) => `${severity} ${message}`),
      ['info “ply3.offcuts.yaml” is not there yet; exporting the job writes it.'],
    );
    assert.equal(checked.title, 'Swap: {odd} “title”');
    assert.equal(checked.pieces!.tags.length, 2);
  });

  it('has a line to fill in where the spec has no names yet', async () => {
    const table = parseTable(ordersText(await computed(named)));
    assert.ok('rows' in table);
    assert.deepEqual(
      table.rows.map(({ cells }) => cells),
      [['1', '1', '']],
    );
  });

  it('takes over what the spec uses, its units and how its own sheet is laid out', () => {
    const source = new SpecSource(
      'tagwright: 1\nunits: in\nuse: [a.workshop.yaml, b.workshop.yaml]\nsheet: {size: [12, 8], margin: 1/4 in, gap: 0.1, turn: quarter}\n',
    );
    const text = jobText({
      ...ofSpec(source),
      title: 'Tags',
      spec: 'x.tag.yaml',
      make: { quantity: 1 },
      sheets: [{ stock: 'ply', size: ['12 in', '8 in'], offcuts: 'ply.offcuts.yaml' }],
    });
    // Read by the yaml library alone.
    assert.deepEqual(parse(text), {
      tagwright_job: 1,
      title: 'Tags',
      units: 'in',
      use: ['a.workshop.yaml', 'b.workshop.yaml'],
      tags: [{ spec: 'x.tag.yaml', quantity: 1 }],
      sheets: {
        ply: [
          { offcuts: 'ply.offcuts.yaml', margin: '1/4 in', gap: 0.1, turn: 'quarter' },
          { size: ['12 in', '8 in'], margin: '1/4 in', gap: 0.1, turn: 'quarter' },
        ],
      },
    });
  });

  it('proposes the sheets of the workshop, else some that hold the largest piece', async () => {
    const report = await computed(plate);
    assert.deepEqual(usualSize(report, 'mm'), [200, 100]);
    assert.deepEqual(largestPiece(report.tag), [60, 40]);
    const own = plate
      .replace('use: shop.workshop.yaml\n', 'stocks: {ply3: {material: birch plywood, thickness: 3 mm}}\n')
      .replace('[60 mm, 40 mm]', '[590 mm, 310 mm]');
    assert.deepEqual(usualSize(await computed(own), 'mm'), [600, 400]);
  });

  const stock = 'material: birch plywood, thickness: 3 mm, kerf: 0.2 mm';
  const ways: readonly [string, string, string][] = [
    ['between braces', `stock: {${stock}}   # mine\n`, `stocks:\n  ply3: {${stock}}\nstock: ply3   # mine\n`],
    [
      'in lines',
      'stock:\n  # measured\n  material: birch plywood\n  thickness: 3 mm # with callipers\n',
      'stocks:\n  ply3:\n    # measured\n    material: birch plywood\n    thickness: 3 mm # with callipers\nstock: ply3\n',
    ],
    [
      'in lines that end as on Windows',
      'stock:\r\n  material: birch plywood\r\n  thickness: 3 mm\r\n',
      'stocks:\r\n  ply3:\r\n    material: birch plywood\r\n    thickness: 3 mm\r\nstock: ply3\r\n',
    ],
  ];
  for (const [how, before, after] of ways)
    it(`gives a stock a name that is written ${how}`, async () => {
      const spec = (written: string) =>
        `tagwright: 1\n${written}shapes: {plate: {rectangle: [60 mm, 40 mm]}}\npieces: {tag: {body: [plate]}}\n`;
      const source = new SpecSource(spec(before));
      const { name, edit } = namedStock(source)!;
      const changed = source.text.slice(0, edit.range.start) + edit.text + source.text.slice(edit.range.end);
      assert.equal(name, 'ply3');
      assert.equal(changed, spec(after));
      const [was, is] = [await computed(source.text), await computed(changed)];
      assert.deepEqual(stocksOf(was.tag!), [undefined]);
      assert.deepEqual(stocksOf(is.tag!), ['ply3']);
      assert.deepEqual(is.tag!.stock, { ...was.tag!.stock, name: 'ply3' });
    });

  it('leaves a stock alone that is no description, or stands beside others', () => {
    const of = (text: string) => namedStock(new SpecSource(`tagwright: 1\n${text}`));
    assert.equal(of('stock: ply3\n'), undefined);
    assert.equal(of('stocks: {ply3: {thickness: 3}}\nstock: {thickness: 3}\n'), undefined);
    assert.equal(of('shapes: {}\n'), undefined);
  });
});
