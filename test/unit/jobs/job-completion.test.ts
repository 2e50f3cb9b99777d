import assert from 'node:assert/strict';
import { completionsAt } from '../../../src/language/completion/complete.ts';
import { jobGrammar, offcutsGrammar } from '../../../src/language/grammar.ts';
import { plainOf } from '../../../src/language/completion/snippets.ts';
import type { WorkspaceNames } from '../../../src/language/workspace-names.ts';
import { readJob } from '../../../src/jobs/read/read-job.ts';
import { SpecSource } from '../../../src/spec/yaml/source.ts';
import type { Uses } from '../../../src/spec/files/used-files.ts';
import { workshop } from '../support/jobs.ts';

const uses: Uses = {
  used: [
    {
      name: 'shop.workshop.yaml',
      file: '/specs/shop.workshop.yaml',
      path: ['use'],
      source: new SpecSource(workshop),
      uses: [],
    },
  ],
  issues: [],
  files: [],
};

const around: WorkspaceNames = {
  fonts: [],
  samples: [],
  uses,
  files: ['plate.tag.yaml', 'orders.csv', 'ply3.offcuts.yaml', 'shop.workshop.yaml', 'leaf.svg'],
  grammar: jobGrammar,
};

/** What is offered where the bar stands. */
function offered(marked: string, names = around): string[] {
  const offset = marked.indexOf('|');
  return completionsAt(marked.replace('|', ''), offset, names).map(({ label }) => label);
}

const start = 'tagwright_job: 1\nuse: shop.workshop.yaml\n';

describe('Completion in a job', () => {
  it('offers the keys of a job, and none of a spec', () => {
    assert.deepEqual(offered('|'), [
      'tagwright_job',
      'title',
      'units',
      'use',
      'tags',
      'keep_together',
      'sheets',
      'effort',
      'fixed',
    ]);
    const left = offered(`${start}|`);
    assert.ok(left.includes('tags') && !left.includes('use') && !left.includes('shapes'));
  });

  it('offers the keys of an entry, and those that go with what is there', () => {
    assert.deepEqual(offered(`${start}tags:\n  - {|}\n`), ['spec', 'quantity', 'orders', 'product']);
    // A table of orders has the quantities.
    assert.deepEqual(offered(`${start}tags:\n  - {spec: plate.tag.yaml, orders: orders.csv, |}\n`), ['product']);
    const sheet = offered(`${start}sheets:\n  ply3: [{size: [600 mm, 300 mm], |}]\n`);
    assert.ok(sheet.includes('count') && sheet.includes('margin') && !sheet.includes('offcuts'));
  });

  it('offers the files that fit', () => {
    assert.deepEqual(offered(`${start}tags:\n  - {spec: |}\n`), ['plate.tag.yaml']);
    assert.deepEqual(offered(`${start}tags:\n  - {spec: plate.tag.yaml, orders: |}\n`), ['orders.csv']);
    assert.deepEqual(offered(`${start}sheets:\n  ply3: [{offcuts: |}]\n`), ['ply3.offcuts.yaml']);
  });

  it('offers the products of the table', () => {
    const products = new Map([['orders.csv', ['Pot label', 'Sign: large', '']]]);
    const marked = `${start}tags:\n  - {spec: plate.tag.yaml, orders: orders.csv, product: |}\n`;
    const names = { ...around, products };
    assert.deepEqual(offered(marked, names), ['Pot label', 'Sign: large']);
    assert.deepEqual(offered(marked.replace('|', '[Pot label, |]'), names), ['Pot label', 'Sign: large']);
    const large = completionsAt(marked.replace('|', ''), marked.indexOf('|'), names)[1]!;
    const text = `${marked.replace('|', plainOf(large.snippet))}sheets: {ply3: [{size: [600 mm, 300 mm]}]}\n`;
    const { model, issues } = readJob(new SpecSource(text), uses);
    assert.deepEqual([issues, model!.tags[0]!.products], [[], ['Sign: large']]);
  });

  it('offers the stocks that have no sheets yet', () => {
    assert.deepEqual(offered(`${start}sheets:\n  |\n`), ['ply3', 'cherry2']);
    assert.deepEqual(offered(`${start}sheets:\n  ply3: [{size: [600 mm, 300 mm]}]\n  |\n`), ['cherry2']);
  });

  it('writes what can be read', () => {
    const marked = `${start}tags: [{spec: plate.tag.yaml}]\nsheets:\n  |\n`;
    const [first] = completionsAt(marked.replace('|', ''), marked.indexOf('|'), around);
    const text = marked.replace('|', plainOf(first!.snippet));
    assert.deepEqual(readJob(new SpecSource(text), uses).issues, []);
  });

  it('knows files of offcuts as well', () => {
    const keys = offered('tagwright_offcuts: 1\noffcuts:\n  - {|}\n', { ...around, grammar: offcutsGrammar });
    assert.deepEqual(keys.filter((key) => ['size', 'id'].includes(key)).sort(), ['id', 'size']);
  });
});
