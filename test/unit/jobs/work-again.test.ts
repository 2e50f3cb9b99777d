/** A job whose text changes without asking for other tags: they are not made again, and all else is as if they were. */

import assert from 'node:assert/strict';
import { checkJob } from '../../../src/jobs/job.ts';
import type { CheckedJob } from '../../../src/jobs/job.ts';
import { newEngine } from '../support/engine.ts';
import { files, jobOf, named } from '../support/jobs.ts';
import { never } from '../support/sheets.ts';

const beside = {
  ...files,
  // Its stroke is told at every name.
  'named.tag.yaml': named.replace('height: 3 mm', 'height: 1.2 mm').replace('shapes:', 'batch: [Rue]\nshapes:'),
  'orders.csv': 'order,name,quantity,rush\n1,Rue,2,\n2,Sorrel,two,\n3,Dill,1,yes\n',
};
const tags = ['{spec: named.tag.yaml, orders: orders.csv}', '{spec: layered.tag.yaml}', '{spec: gone.tag.yaml}'];
const sheets = ['ply3: [{size: [200 mm, 100 mm]}]'];
const text = jobOf(tags, sheets);

/** With how many tags were made. */
async function checked(of: string, before?: CheckedJob): Promise<{ job: CheckedJob; count: number }> {
  const engine = newEngine(beside);
  const locate = (relative: string) => `/specs/${relative}`;
  let count = 0;
  const reading = { engine, locate, optionsFor: () => ({ locate }), checkpoint: never, progress: () => count++ };
  const job = await checkJob(of, 'swap.job.yaml', reading, before);
  return { job, count };
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

describe('The tags of a job', () => {
  it('are not made again while it asks for the same, and all is told where it is now', async () => {
    const first = await checked(text);
    assert.ok(first.count > 0);
    const changes: readonly [string, string][] = [
      ['tagwright_job: 1\n', '# A line more, and a title.\ntagwright_job: 1\ntitle: Swap\n'],
      ['sheets:\n', 'sheets:\n  cherry2: [{size: [200 mm, 100 mm]}]\n'],
      ['[200 mm, 100 mm]', '[300 mm, 200 mm], gap: 4 mm'],
      ['sheets:\n', 'effort: 2\nfixed:\n  - {spec: named.tag.yaml, order: 1, sheet: 1, at: [9 mm, 9 mm]}\nsheets:\n'],
    ];
    for (const [from, to] of changes) {
      const changed = text.replace(from, to);
      const [again, anew] = [await checked(changed, first.job), await checked(changed)];
      assert.equal(again.count, 0, to);
      assert.equal(anew.count, first.count);
      assert.deepEqual(shown(again.job), shown(anew.job), to);
    }
  });

  it('are made again when it asks for others', async () => {
    const first = await checked(text);
    for (const changed of [
      text.replace('layered.tag.yaml', 'plate.tag.yaml'),
      text.replace('{spec: layered.tag.yaml}', '{spec: layered.tag.yaml, quantity: 2}'),
      text.replace('use: shop.workshop.yaml', 'use: other.workshop.yaml'),
    ]) {
      const [again, anew] = [await checked(changed, first.job), await checked(changed)];
      assert.equal(again.count, anew.count, changed);
      assert.deepEqual(shown(again.job), shown(anew.job), changed);
    }
  });

  it('are known with every file that they are made of', async () => {
    const { job } = await checked(text);
    for (const file of ['named.tag.yaml', 'gone.tag.yaml', 'orders.csv', 'shop.workshop.yaml'])
      assert.ok(job.files.includes(`/specs/${file}`), file);
    const drawn = {
      ...files,
      'drawn.tag.yaml': named.replace(
        '{text: "{name}", font: Nunito, height: 3 mm}',
        '{drawing: leaf.svg, width: 9 mm}',
      ),
    };
    const engine = newEngine({
      ...drawn,
      'leaf.svg': '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9"><path d="M0 0h9v9z"/></svg>',
    });
    const locate = (relative: string) => `/specs/${relative}`;
    const reading = { engine, locate, optionsFor: () => ({ locate }), checkpoint: never };
    const of = await checkJob(jobOf(['{spec: drawn.tag.yaml}'], sheets), 'swap.job.yaml', reading);
    assert.ok(of.files.includes('/specs/leaf.svg'), of.files.join());
  });
});
