import assert from 'node:assert/strict';
import Papa from 'papaparse';
import { parse } from 'yaml';
import { checkBatch } from '../../../src/engine/batch.ts';
import { specAsksForColumns } from '../../../src/spec/batch/row-values.ts';
import { TablePlaces } from '../../../src/spec/files/table-places.ts';
import { newEngine, placeOf, report } from '../support/engine.ts';
import type { Beside } from '../support/engine.ts';

const spec = (batch: string, shape: string, extra = ''): string =>
  `tagwright: 1\nstock: {material: birch plywood, thickness: 3 mm, kerf: 0}\nbatch: ${batch}\nshapes:\n  plate: {rectangle: [60 mm, 30 mm]}\n  mark: ${shape}\npieces:\n  tag: {body: [plate], engrave: [mark${extra}]}\n`;

const located = { locate: (name: string): string => `/specs/${name}` };

async function messagesOf(text: string, beside: Beside = {}): Promise<string[]> {
  const made = await report(text, newEngine(beside));
  return made.issues.map((issue) => `${issue.code} “${placeOf(made, issue).text}”: ${issue.message}`);
}

/** The model of each row, with whatever has its place in the text left out. */
async function models(text: string, rows: number, beside: Beside = {}): Promise<string[]> {
  const engine = newEngine(beside);
  return Promise.all(
    Array.from({ length: rows }, async (_, row) => {
      const { model, issues } = await engine.compute(text, { ...located, row });
      assert.ok(model, JSON.stringify(issues));
      return JSON.stringify([...model.shapes.values(), model.pieces]);
    }),
  );
}

describe('A value from a column', () => {
  it('is as if it were written there, whatever it is: lengths, numbers, words, names, entries of lists', async () => {
    const cases: [string, string, string][] = [
      ['{rectangle: ["{v}", 4 mm]}', '20 mm', '{rectangle: [20 mm, 4 mm]}'],
      ['{rectangle: ["{v} mm", 4 mm]}', '20', '{rectangle: [20 mm, 4 mm]}'],
      ['{ellipse: "{v}"}', '12', '{ellipse: 12}'],
      ['{text: Sorrel, font: "{v}", width: 30 mm}', 'Pacifico', '{text: Sorrel, font: Pacifico, width: 30 mm}'],
      [
        '{text: Sorrel, font: Nunito, weight: "{v}", width: 30 mm}',
        '800',
        '{text: Sorrel, font: Nunito, weight: 800, width: 30 mm}',
      ],
      [
        '{text: Sorrel, font: Nunito, italic: "{v}", width: 30 mm}',
        'true',
        '{text: Sorrel, font: Nunito, italic: true, width: 30 mm}',
      ],
      ['{from: plate, grow: "{v}"}', '-2 mm', '{from: plate, grow: -2 mm}'],
      ['{from: "{v}", width: 20 mm}', 'plate', '{from: plate, width: 20 mm}'],
      ['{ellipse: 5 mm, nudge: {right: "{v}"}}', '1/4 in', '{ellipse: 5 mm, nudge: {right: 1/4 in}}'],
    ];
    for (const [asked, value, written] of cases) {
      const [made] = await models(spec(`[{name: A, v: "${value}"}]`, asked), 1);
      const [expected] = await models(spec(`[{name: A, v: "${value}"}]`, written), 1);
      assert.equal(made, expected, asked);
    }
  });

  it('differs from row to row, of a table as well', async () => {
    const asked = '{rectangle: ["{long}", 4 mm]}';
    const beside = { 't.csv': 'name,long\nSorrel,20 mm\nBorage,30 mm\n' };
    const made = await models(spec('t.csv', asked), 2, beside);
    assert.match(made[0]!, /"width":20/);
    assert.match(made[1]!, /"width":30/);
  });

  it('leaves its key out where the cell is empty, and its entry out of a list', async () => {
    const asked = '{text: Sorrel, font: Pacifico, width: "{w}", x_height: "{h}"}';
    const rows = '[{name: A, w: 30 mm, h: ""}, {name: B, h: 5 mm}]';
    const [first, second] = await models(spec(rows, asked), 2);
    assert.match(first!, /"width":30/);
    assert.doesNotMatch(first!, /small letters/);
    assert.doesNotMatch(second!, /"width":30/);
    const listed = spec('[{name: A, also: ""}, {name: B, also: plate}]', '{ellipse: 5 mm}', ', "{also}", nothing');
    const issues = await messagesOf(listed);
    assert.deepEqual(
      issues,
      ['unknown-shape “nothing”: There is no shape “nothing”.'],
      'at its own place, though an entry before it is gone',
    );
  });

  it('leaves a shape out where the cell that makes it is empty, and its entries in pieces', async () => {
    const text = [
      'tagwright: 1',
      'batch: [{name: Sorrel, motif: leaf}, {name: Dill, motif: ""}, {name: Chard}]',
      'shapes:',
      '  plate: {rectangle: [60 mm, 30 mm]}',
      '  mark: {drawing: "{motif}.svg", width: 10 mm}',
      'pieces:',
      '  tag: {body: plate, engrave: [mark, {drawing: "{motif}.svg", width: 5 mm}, nothing]}',
      '  other: {body: plate, score: mark}',
    ].join('\n');
    const leaf = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9"><circle cx="4" cy="4" r="4"/></svg>';
    assert.deepEqual(await messagesOf(text, { 'leaf.svg': leaf }), [
      'unknown-shape “nothing”: There is no shape “nothing”.',
    ]);
    const [sorrel, dill, chard] = await models(text.replace(', nothing', ''), 3, { 'leaf.svg': leaf });
    assert.match(sorrel!, /leaf\.svg/);
    for (const without of [dill!, chard!]) assert.doesNotMatch(without, /svg/);
  });

  it('does not change words: a number in them is what is written', async () => {
    const [made] = await models(spec('[{name: "007"}]', '{text: "{name}", font: Pacifico, width: 20 mm}'), 1);
    assert.match(made!, /"text":"007"/);
  });

  it('is named at its cell where it is no good', async () => {
    const asked = '{rectangle: ["{long}", 4 mm]}';
    assert.deepEqual(await messagesOf(spec('[{name: Sorrel, long: 20 qq}]', asked)), [
      'bad-length “20 qq”: “20 qq” is not a length. Write a number with a unit, such as 3 mm or 1/4 in.',
    ]);
    const beside = { 't.csv': 'name;long\nSorrel;20 mm\n"Sea; Kale";20 qq\n' };
    const engine = newEngine(beside);
    const text = spec('t.csv', asked);
    const first = await engine.compute(text, located);
    assert.deepEqual(
      first.issues.filter(({ code }) => code === 'bad-length'),
      [],
    );
    const { report: whole, all } = await checkBatch(engine, first, located);
    const found = whole.issues.find(({ code }) => code === 'bad-length')!;
    assert.match(found.message, /^“Sea; Kale”: t\.csv, line 3: “20 qq” is not a length/);
    const [cell] = all[1]!.inUsed!;
    assert.equal(cell!.file, '/specs/t.csv');
    const { start, end } = cell!.issues[0]!.range;
    assert.equal(beside['t.csv'].slice(start, end), '20 qq');
    assert.deepEqual(cell!.source.position(start), { line: 3, column: 13 });
  });

  it('of a column that there is not is named with the nearest, once', async () => {
    assert.deepEqual(await messagesOf(spec('[{name: Sorrel, long: 20 mm}]', '{rectangle: ["{lnog}", 4 mm]}')), [
      'unknown-name “{lnog}”: There is no column “lnog” in the batch. Did you mean “long”?',
    ]);
  });

  it('has nothing to come from where there is no batch, which is said instead of what it is not', async () => {
    const text = spec('[{name: A}]', '{rectangle: ["{long}", 4 mm]}').replace(/batch: .*\n/, '');
    assert.deepEqual(await messagesOf(text), [
      'unknown-name “"{long}"”: There is no batch to take {long} from: give it as “batch”, a list or a CSV file.',
    ]);
    const [issue] = (await report(text.replace('shapes:', 'table: seeds.csv\nshapes:'))).issues;
    assert.match(issue!.message, /Unknown key “table”; here it is “batch”/);
  });

  it('may stand in a file that the spec uses', async () => {
    const beside = { 'marks.yaml': 'tagwright: 1\nshapes:\n  bar: {rectangle: ["{long}", 4 mm]}\n' };
    const text = spec('[{name: A, long: 20 mm}]', '{from: bar}').replace('batch:', 'use: marks.yaml\nbatch:');
    assert.deepEqual(await messagesOf(text, beside), []);
    const bad = await messagesOf(text.replace('20 mm', '20 qq'), beside);
    assert.match(bad.join(), /marks\.yaml, line 3: “20 qq” is not a length/);
  });

  it('is looked for in no spec that has none', () => {
    assert.equal(specAsksForColumns(parse('batch: [{a: "{b}"}]\nuse: "{x}"\nshapes: {a: {text: "{name}"}}')), false);
    assert.equal(specAsksForColumns(parse('shapes: {a: {ellipse: "{{x}}"}}')), false);
    assert.equal(specAsksForColumns(parse('shapes: {a: {rectangle: ["{x}", 3]}}')), true);
    assert.equal(specAsksForColumns(parse('shapes: {batch: {ellipse: "{x}"}}')), true, 'whatever its shape is called');
  });
});

describe('The places of a table’s cells', () => {
  it('hold what an independent reader of CSV (papaparse, RFC 4180) finds in them', () => {
    const texts = ['a,b\n1,2\n', 'a;b\r\n"x;""y""";z\r\n;\r\n', '"a\nb"\tc\n1\t"2\r\n3"\n\n4\t5', 'a\n', 'a,b,\n1,,3'];
    for (const text of texts) {
      const delimiter = /[;\t]/.exec(text)?.[0] ?? ',';
      const places = new TablePlaces(text, delimiter);
      let line = 1;
      for (const cells of Papa.parse<string[]>(text, { delimiter }).data) {
        for (const [column, cell] of cells.entries()) {
          const { start, end } = places.cell(line, column);
          assert.deepEqual(
            Papa.parse(text.slice(start, end), { delimiter }).data,
            cell === '' ? [] : [[cell]],
            JSON.stringify(text),
          );
        }
        line += 1 + cells.join('').split('\n').length - 1;
      }
    }
  });
});
