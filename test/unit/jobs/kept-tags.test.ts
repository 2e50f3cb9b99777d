/** Tags of a job that changes: those that come out the same are not made again, and all is as if they were. */

import assert from 'node:assert/strict';
import type { ComputeOptions } from '../../../src/engine/engine.ts';
import { checkJob } from '../../../src/jobs/job.ts';
import type { CheckedJob } from '../../../src/jobs/job.ts';
import { KeptTags } from '../../../src/jobs/orders/kept-tags.ts';
import { newEngine } from '../support/engine.ts';
import { files, jobOf, named } from '../support/jobs.ts';
import { never } from '../support/sheets.ts';

const leaf = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9"><path d="M0 0h9v9z"/></svg>';
const lined = (more: string): string =>
  named.replace('{text: "{name}", font: Nunito, height: 3 mm}', `{text: "{name}", font: Nunito, ${more}}`);

const beside: Readonly<Record<string, string>> = {
  ...files,
  // Its stroke is told at every name.
  'named.tag.yaml': named.replace('height: 3 mm', 'height: 1.2 mm').replace('shapes:', 'batch: [Rue]\nshapes:'),
  'fitted.tag.yaml': lined('fit: {in: plate, margin: 4 mm, same_size: true}'),
  'drawn.tag.yaml': named.replace('{text: "{name}", font: Nunito, height: 3 mm}', '{drawing: leaf.svg, width: 9 mm}'),
  'listed.tag.yaml': named.replace('shapes:', 'batch: names.csv\nshapes:'),
  'leaf.svg': leaf,
  'orders.csv': 'order,name,quantity,rush,note\n1,Rue,2,,\n2,Sorrel,two,,\n3,Dill,1,yes,\n4,Rue,1,,late\n',
  'names.csv': 'name\nRue\nDill\nKale\n',
};
const tags = [
  '{spec: named.tag.yaml, orders: orders.csv}',
  '{spec: layered.tag.yaml}',
  '{spec: drawn.tag.yaml}',
  '{spec: listed.tag.yaml}',
  '{spec: gone.tag.yaml}',
];
const sheets = ['ply3: [{size: [200 mm, 100 mm]}]', 'cherry2: [{size: [200 mm, 100 mm]}]'];
const text = jobOf(tags, sheets);

/** With how many tags the engine made. */
async function checked(
  kept: KeptTags | undefined,
  of = text,
  own = beside,
  severities: NonNullable<ComputeOptions['severities']> = {},
): Promise<{ job: CheckedJob; made: number }> {
  const engine = newEngine(own);
  let made = 0;
  const compute = engine.compute.bind(engine);
  engine.compute = (...asked) => {
    made++;
    return compute(...asked);
  };
  const locate = (relative: string) => `/specs/${relative}`;
  const reading = { engine, locate, optionsFor: () => ({ locate, severities }), checkpoint: never };
  return { job: await checkJob(of, 'swap.job.yaml', { ...reading, ...(kept ? { kept } : {}) }), made };
}

/** What is told, and what is laid out and left out. */
const shown = ({ issues, inFiles, leftOut, warnings, pieces, orders, files: all }: CheckedJob) => ({
  issues,
  inFiles: inFiles.map(({ file, issues: found }) => [file, found]),
  leftOut,
  warned: [...warnings].map(([issue, { tags: of }]) => [issues.includes(issue), issue.message, of.length]),
  pieces: pieces!.stocks.map(({ name, pieces: own, fixed }) => [
    name,
    fixed.length,
    own.map(({ of, copy, region }) => [of.spec, of.order, of.label, of.rush, copy, region]),
  ]),
  orders,
  all,
});

/** After the whole job: as many are made again as are expected, and it comes out as without anything kept. */
async function changed(
  expected: number,
  ...change: readonly [string?, Readonly<Record<string, string>>?]
): Promise<void> {
  const kept = new KeptTags();
  await checked(kept);
  const [again, anew] = [await checked(kept, ...change), await checked(undefined, ...change)];
  assert.equal(again.made, expected);
  assert.deepEqual(shown(again.job), shown(anew.job));
  assert.equal((await checked(kept, ...change)).made, 0, 'asked once more');
}

/** Rue and Dill of the table, both layers, the leaf, and three names of a list. */
const all = 7;

describe('The tags of a job', () => {
  it('are made once for all lines that ask for the same', async () => {
    assert.equal((await checked(undefined)).made, all);
  });

  it('are not made again when its text changes, and all is told where it is now', async () => {
    for (const [from, to] of [
      ['tagwright_job: 1\n', '# A line more, and a title.\ntagwright_job: 1\ntitle: Swap\n'],
      ['[200 mm, 100 mm]', '[300 mm, 200 mm], gap: 4 mm'],
      ['sheets:\n', 'effort: 2\nfixed:\n  - {spec: named.tag.yaml, order: 1, sheet: 1, at: [9 mm, 9 mm]}\nsheets:\n'],
      ['{spec: layered.tag.yaml}', '{spec: layered.tag.yaml, quantity: 2}'],
      ['  - {spec: gone.tag.yaml}\n', ''],
    ] as const)
      await changed(0, text.replace(from, to));
    await changed(1, text.replace('gone.tag.yaml', 'plate.tag.yaml'));
  });

  it('are made again where a line of their table has changed, and no others', async () => {
    const table = (from: string, to: string, name = 'orders.csv') =>
      ({ ...beside, [name]: beside[name]!.replace(from, to) }) as Readonly<Record<string, string>>;
    await changed(0, text, table('1,Rue,2', '1,Rue,5'));
    await changed(0, text, table('late', 'soon'));
    await changed(0, text, table('1,Rue,2,,\n', ''));
    await changed(1, text, table('3,Dill', '3,Lovage'));
    await changed(1, text, table('Dill', 'Lovage', 'names.csv'));
    await changed(1, text, table('Rue', 'Basil\nRue', 'names.csv'));
    await changed(0, text, table('Rue\n', '', 'names.csv'));
  });

  it('are all made again where they have one size, and the names that it comes from are others', async () => {
    const one = jobOf(['{spec: fitted.tag.yaml, orders: orders.csv}'], sheets);
    const own = (name: string) => ({ ...beside, 'orders.csv': beside['orders.csv']!.replace('Dill', name) });
    const kept = new KeptTags();
    assert.equal((await checked(kept, one)).made, 2);
    assert.equal((await checked(kept, one)).made, 0);
    const [again, anew] = [
      await checked(kept, one, own('Love-in-a-mist')),
      await checked(undefined, one, own('Love-in-a-mist')),
    ];
    assert.equal(again.made, 2);
    assert.deepEqual(shown(again.job), shown(anew.job));
  });

  it('are made again when their spec changes, or a file that it uses or is made of', async () => {
    const file = (name: string, from: string, to: string) => ({ ...beside, [name]: beside[name]!.replace(from, to) });
    await changed(2, text, file('named.tag.yaml', '1.2 mm', '2.4 mm'));
    await changed(1, text, file('leaf.svg', 'h9v9', 'h9v8'));
    await changed(3, text, file('listed.tag.yaml', 'height: 3 mm', 'height: 4 mm'));
    await changed(all, text, file('shop.workshop.yaml', 'kerf: 0.2 mm', 'kerf: 0.3 mm'));
  });

  it('are made again when they are judged otherwise', async () => {
    const kept = new KeptTags();
    assert.equal((await checked(kept)).job.warnings.size, 0);
    const severities = { 'fine-mark': 'warning' } as const;
    const { job, made } = await checked(kept, text, beside, severities);
    assert.equal(made, all);
    assert.equal(job.warnings.size, 1);
    assert.deepEqual(shown(job), shown((await checked(undefined, text, beside, severities)).job));
  });

  it('are made as soon as a file comes that was not there', async () => {
    const { 'leaf.svg': _, ...without } = beside;
    const kept = new KeptTags();
    const lacking = await checked(kept, text, without);
    assert.ok(lacking.job.issues.some(({ message }) => message.includes('leaf.svg')));
    assert.ok(lacking.job.files.includes('/specs/leaf.svg'), 'so that its coming is noticed');
    const { job, made } = await checked(kept);
    assert.equal(made, 1);
    assert.deepEqual(shown(job), shown((await checked(undefined)).job));
  });

  it('are kept for a change that is taken back, but not without end', async () => {
    const kept = new KeptTags(50);
    await checked(kept);
    const rows = (from: number) => ({
      ...beside,
      'plate.tag.yaml': named,
      'orders.csv': `order,name\n${Array.from({ length: 30 }, (_, index) => `1,${from + index} mm`).join('\n')}\n`,
    });
    const many = jobOf(['{spec: bare.tag.yaml, orders: orders.csv}'], sheets);
    const bare =
      'tagwright: 1\nuse: shop.workshop.yaml\nstock: ply3\nshapes: {plate: {rectangle: ["{name}", 40 mm]}}\npieces: {tag: {body: [plate]}}\n';
    const of = (from: number) => ({ ...rows(from), 'bare.tag.yaml': bare });
    await checked(kept, many, of(10));
    assert.equal((await checked(kept)).made, 0, 'taken back');
    await checked(kept, many, of(30));
    await checked(kept, many, of(60));
    await checked(kept, many, of(90));
    assert.equal((await checked(kept)).made, all, 'thirty others three times since then');
  });

  it('keep outlines, and not what these were made from', async () => {
    const { job } = await checked(new KeptTags());
    for (const { tag } of job.pieces!.tags) {
      assert.equal(tag.made.size, 0);
      for (const piece of tag.pieces) assert.deepEqual([piece.body, piece.sources], [[], []]);
    }
  });
});
