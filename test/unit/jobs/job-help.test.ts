import assert from 'node:assert/strict';
import { withEdits } from '../../../src/core/issue.ts';
import { changesOf } from '../../../src/fixes/slips.ts';
import type { CheckedJob } from '../../../src/jobs/job.ts';
import { jobDefinitionAt, jobHoverAt, jobLinksIn } from '../../../src/language/job-help.ts';
import { formatted } from '../../../src/language/refactor/format.ts';
import { offcutsSchema } from '../../../src/language/schema.ts';
import { SpecSource } from '../../../src/spec/yaml/source.ts';
import { checkedJob, files, jobOf } from '../support/jobs.ts';

const orders = 'order,name,quantity\nA-1,Rue,2\nA-1,Dill,1\nB-7,Sorrel,two\n';
const text = jobOf(
  ['{spec: plate.tag.yaml, quantity: 3}', '{spec: named.tag.yaml, orders: orders.csv}'],
  ['ply3: [{offcuts: ply3.offcuts.yaml}, {size: [200 mm, 100 mm]}]'],
);
const beside = { ...files, 'orders.csv': orders };

function hover(job: CheckedJob, word: string): string {
  return jobHoverAt(job.source, job.source.text.indexOf(word) + 1, job)?.markdown ?? '';
}

describe('Help in a job', () => {
  let job: CheckedJob;

  before(async () => {
    job = await checkedJob(text, beside);
  });

  it('says what a key is for, by the schema', () => {
    assert.match(hover(job, 'quantity'), /^\*\*quantity\*\* – whole number\n\n\S/);
    assert.match(hover(job, 'offcuts:'), /^\*\*offcuts\*\* – text\n\n\S/);
    const kept = new SpecSource('tagwright_offcuts: 1\noffcuts: []\n');
    assert.match(jobHoverAt(kept, 24, undefined, offcutsSchema)?.markdown ?? '', /^\*\*offcuts\*\* – list/);
    assert.equal(jobHoverAt(job.source, text.indexOf('200 mm'), job), undefined);
  });

  it('says how many tags a spec and a table of orders make, and how many are left out', () => {
    // Whatever means something in Markdown is escaped.
    assert.equal(hover(job, 'plate.tag'), String.raw`**plate\.tag\.yaml**` + '\n\n3 tags.');
    assert.match(hover(job, 'orders.csv'), /3 tags for 1 order/);
    assert.match(hover(job, 'named.tag'), /3 tags for 1 order; 1 left out\./);
  });

  it('says what the workshop knows of a stock, and how many pieces are cut from it', () => {
    assert.match(hover(job, 'ply3:'), /birch plywood[\s\S]*6 pieces of this job\./);
  });

  it('leads to every file, and to the stock in the workshop’s', () => {
    assert.deepEqual(
      jobLinksIn(job.source).map(({ file }) => file),
      ['shop.workshop.yaml', 'plate.tag.yaml', 'named.tag.yaml', 'orders.csv', 'ply3.offcuts.yaml'],
    );
    for (const { range, file } of jobLinksIn(job.source)) assert.equal(text.slice(range.start, range.end), file);
    const at = (word: string) => jobDefinitionAt(job.source, text.indexOf(word) + 1, job);
    assert.equal(at('orders.csv')?.file, 'orders.csv');
    const stock = at('ply3:')!;
    assert.equal(stock.file, 'shop.workshop.yaml');
    const { range, source } = stock.to!;
    assert.equal(source.text.slice(range.start, range.end), 'ply3');
    assert.equal(at('quantity'), undefined);
    assert.deepEqual(jobLinksIn(new SpecSource('- what\n')), []);
  });

  it('is set out evenly, comments and all', () => {
    const loose = 'tagwright_job:  1\ntags:\n    - {spec:  a.tag.yaml,quantity: 2}   # twice\n';
    const even = formatted(loose);
    assert.match(even, /^tagwright_job: 1\ntags:\n {2}- \{spec: a\.tag\.yaml, quantity: 2\} +# twice\n$/);
    assert.equal(formatted(even), even);
  });
});

describe('The nearest known word in a job', () => {
  /** The text after the first fix of the first problem that has one. */
  async function fixed(job: string, others = beside): Promise<string> {
    const { issues, source } = await checkedJob(job, others);
    const [change] = issues.flatMap(changesOf);
    return change ? withEdits(source.text, change.edits) : 'nothing is offered';
  }

  it('is offered for keys, specs, tables and stocks', async () => {
    for (const [right, wrong] of [
      ['quantity', 'quanttiy'],
      ['orders: orders.csv', 'orders: ordres.csv'],
      ['plate.tag.yaml', 'plat.tag.yaml'],
      ['  ply3:', '  pyl3:'],
      ['use: shop', 'use: shpo'],
    ] as const)
      assert.equal(await fixed(text.replace(right, wrong)), text, wrong);
  });

  it('is offered for a column, in the table', async () => {
    const table = orders.replace('name', 'nmae');
    const job = await checkedJob(text, { ...beside, 'orders.csv': table });
    const [found] = job.inFiles.flatMap(({ issues }) => issues.filter(({ suggestions }) => suggestions));
    assert.equal(found!.message, 'named.tag.yaml asks for a column “name”; this one is called “nmae”.');
    assert.equal(withEdits(table, changesOf(found!)[0]!.edits), orders);
    // What is nothing like it is not.
    const far = await checkedJob(text, { ...beside, 'orders.csv': orders.replace('name', 'colour') });
    assert.ok(far.inFiles.every(({ issues }) => issues.every(({ suggestions }) => !suggestions)));
  });
});
