/** Stocks that are laid out at once, by whatever has threads for it: as they are one after the other. */

import assert from 'node:assert/strict';
import { layOutJob } from '../../../src/jobs/job.ts';
import type { LaidOutJob } from '../../../src/jobs/job.ts';
import { nestHere } from '../../../src/nesting/best-of.ts';
import type { Nester } from '../../../src/nesting/best-of.ts';
import { checkedJob, jobOf } from '../support/jobs.ts';
import { littleEffort, never } from '../support/sheets.ts';

const text = jobOf(
  ['{spec: layered.tag.yaml, quantity: 5}'],
  ['ply3: [{size: [200 mm, 100 mm]}]', 'cherry2: [{size: [120 mm, 60 mm]}]'],
);

const placesOf = ({ layout }: LaidOutJob) =>
  layout.sheets.map(({ name, pieces }) => [name, ...pieces.map(({ number, toSheet }) => [number, toSheet])]);

describe('Stocks of a job', () => {
  it('are laid out at once where there are threads for it, each as if it were alone and in the order of the job', async () => {
    const job = await checkedJob(text);
    const inTurn = (await layOutJob(job, { checkpoint: never, effort: littleEffort }))!;
    assert.deepEqual([...new Set(inTurn.layout.sheets.map(({ stock }) => stock))], ['ply3', 'cherry2']);
    let asked = 0;
    let begin!: () => void;
    const bothAsked = new Promise<void>((resolve) => (begin = resolve));
    // The first has to wait for the second, and comes last.
    let last: Promise<unknown> = bothAsked;
    const nest: Nester = Object.assign(
      async (...how: Parameters<Nester>) => {
        if (++asked === 2) begin();
        const before = last;
        const found = before.then(() => nestHere(...how));
        last = found;
        return found;
      },
      { takesSeveral: true },
    );
    const atOnce = (await layOutJob(job, { checkpoint: never, effort: littleEffort, nest }))!;
    assert.deepEqual(placesOf(atOnce), placesOf(inTurn));
  });
});
