/** A job's layout on its way, the gaps of its sheets, and how long it is looked for. */

import assert from 'node:assert/strict';
import { withEdits } from '../../../src/core/issue.ts';
import { gapEdits, gapsOf } from '../../../src/jobs/layout/gaps.ts';
import { layOutJob } from '../../../src/jobs/job.ts';
import type { DraftSheet } from '../../../src/jobs/layout/layout.ts';
import { pieceTable } from '../../../src/jobs/papers/job-table.ts';
import { checkedJob, files, jobOf, plate } from '../support/jobs.ts';
import { littleEffort, never } from '../support/sheets.ts';

const sheets = ['ply3: [{size: [200 mm, 100 mm]}]', 'cherry2: [{size: [200 mm, 100 mm], gap: 1 cm}]'];
const tags = ['{spec: plate.tag.yaml, quantity: 9}', '{spec: layered.tag.yaml, quantity: 4}'];

/** Discs fill no sheet so well that nothing is left to look for. */
const disc = plate.replace('{rectangle: [60 mm, 40 mm]}', '{circle: 37 mm}');

const ids = (all: readonly DraftSheet[]) =>
  all.flatMap(({ pieces }) => pieces.map(({ of }) => `${of.of.spec} ${of.piece.id} ${of.copy}`)).sort();

describe('A job on its way to the best layout', () => {
  it('is whole at every step, on no more sheets than before, and ends as if nobody had looked', async () => {
    const job = await checkedJob(jobOf(tags, sheets));
    const steps: DraftSheet[][] = [];
    const options = { checkpoint: never, effort: littleEffort };
    const laid = await layOutJob(job, { ...options, onBetter: (drafts) => steps.push(drafts()) });
    assert.ok(steps.length > 2, String(steps.length));
    const all = ids(laid!.layout.sheets);
    assert.equal(all.length, 9 + 2 * 4);
    for (const step of steps) assert.deepEqual(ids(step), all);
    const counts = steps.map(({ length }) => length);
    assert.deepEqual(
      counts,
      [...counts].sort((a, b) => b - a),
    );
    // Numbers run through all sheets.
    const numbers = steps[0]!.flatMap(({ pieces }) => pieces.map(({ number }) => number));
    assert.deepEqual(
      numbers,
      [...numbers.keys()].map((index) => index + 1),
    );
    const unwatched = await layOutJob(await checkedJob(jobOf(tags, sheets)), options);
    assert.equal(pieceTable(laid!), pieceTable(unwatched!));
  });

  it('is looked for as long as the job says', async () => {
    const spent = async (effort: string): Promise<number> => {
      let turns = 0;
      const checkpoint = () => {
        turns += 1;
        return Promise.resolve();
      };
      const job = jobOf(['{spec: disc.tag.yaml, quantity: 9}'], sheets.slice(0, 1), [effort]);
      await layOutJob(await checkedJob(job, { ...files, 'disc.tag.yaml': disc }), { checkpoint });
      return turns;
    };
    const [little, more] = [await spent('effort: 0.1'), await spent('effort: 0.4')];
    assert.ok(more > 2 * little, `${little} ${more}`);
    const { issues } = await checkedJob(jobOf(tags, sheets, ['effort: 0']));
    assert.deepEqual(
      issues.map(({ code, path }) => [code, ...path]),
      [['bad-value', 'effort']],
    );
  });
});

describe('The gap of a job’s sheets', () => {
  it('is told by stock, and set at each of its entries in the unit that stands there', async () => {
    const text = jobOf(tags, [
      'ply3: [{size: [200 mm, 100 mm], count: 1}, {size: [300 mm, 200 mm], gap: 2.5}]',
      sheets[1]!,
    ]);
    const { model, source } = await checkedJob(text);
    assert.deepEqual(gapsOf(model!), [
      { stock: 'ply3', gap: 2.5, most: 10 },
      { stock: 'cherry2', gap: 10, most: 10 },
    ]);
    const set = (stock: string, gap: number) =>
      withEdits(
        text,
        gapEdits(stock, gap, { model: model!, source }).map((edit) => edit!),
      );
    assert.equal(set('ply3', 3), text.replace('count: 1}', 'count: 1, gap: 3 mm}').replace('gap: 2.5', 'gap: 3'));
    assert.equal(set('cherry2', 4), text.replace('1 cm', '0.4 cm'));
    const again = await checkedJob(set('ply3', 3));
    assert.equal(gapsOf(again.model!)[0]!.gap, 3);
  });
});
