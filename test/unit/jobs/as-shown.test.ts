/** Sheets that are cut as they are shown: what makes them those of another job, and what is said of them. */

import assert from 'node:assert/strict';
import { checkJob, jobOnSheets, layOutJob } from '../../../src/jobs/job.ts';
import type { CheckedJob, LaidOutJob } from '../../../src/jobs/job.ts';
import type { DraftSheet } from '../../../src/jobs/layout/layout.ts';
import { KeptTags } from '../../../src/jobs/orders/kept-tags.ts';
import { pieceTable } from '../../../src/jobs/papers/job-table.ts';
import { isSameWork } from '../../../src/jobs/same-work.ts';
import { figuresOfJob } from '../../../src/scene/layout-figures.ts';
import { newEngine } from '../support/engine.ts';
import type { Beside } from '../support/engine.ts';
import { files, jobOf, laidOutJob, workshop } from '../support/jobs.ts';
import { littleEffort, never } from '../support/sheets.ts';

const offcuts = 'tagwright_offcuts: 1\noffcuts:\n  - {id: 4, size: [160 mm, 90 mm]}\n';
const beside = {
  ...files,
  'orders.csv': 'order,name,quantity\n7,Rue,2\n8,Kale,1\n',
  'ply3.offcuts.yaml': offcuts,
} as const;
const tags = ['{spec: plate.tag.yaml, quantity: 9}', '{spec: named.tag.yaml, orders: orders.csv}'];
const text = jobOf(tags, ['ply3: [{offcuts: ply3.offcuts.yaml}, {size: [200 mm, 100 mm]}]']);

function checked(kept: KeptTags, of = text, own: Beside = beside): Promise<CheckedJob> {
  const engine = newEngine(own);
  const locate = (relative: string) => `/specs/${relative}`;
  return checkJob(of, 'swap.job.yaml', { engine, locate, optionsFor: () => ({ locate }), checkpoint: never, kept });
}

describe('Sheets as they are shown', () => {
  it('are those of a job that is read once more, unless anything has changed that they are made of', async () => {
    const kept = new KeptTags();
    const first = await checked(kept);
    assert.ok(isSameWork(first, await checked(kept)));
    const others: readonly [what: string, text: string, files?: Beside][] = [
      ['the text', `${text}# later\n`],
      ['a gap', text.replace('{size: [200 mm, 100 mm]}', '{size: [200 mm, 100 mm], gap: 3 mm}')],
      [
        'a spec',
        text,
        { ...beside, 'plate.tag.yaml': files['plate.tag.yaml']!.toString().replace('[60 mm', '[61 mm') },
      ],
      ['an order', text, { ...beside, 'orders.csv': beside['orders.csv'].replace('Kale,1', 'Kale,2') }],
      ['a name', text, { ...beside, 'orders.csv': beside['orders.csv'].replace('Kale', 'Dill') }],
      ['an offcut', text, { ...beside, 'ply3.offcuts.yaml': offcuts.replace('160', '150') }],
      ['the workshop’s gap', text, { ...beside, 'shop.workshop.yaml': workshop.replace('gap: 2 mm', 'gap: 4 mm') }],
      ['the kerf', text, { ...beside, 'shop.workshop.yaml': workshop.replace('kerf: 0.2', 'kerf: 0.3') }],
      ['a line that cannot be made', text, { ...beside, 'orders.csv': `${beside['orders.csv']}9,,1\n` }],
    ];
    for (const [what, of, own] of others) assert.ok(!isSameWork(first, await checked(kept, of, own)), what);
    assert.ok(isSameWork(first, await checked(kept)));
    // Without what was kept nobody knows.
    assert.ok(!isSameWork(first, await checked(new KeptTags())));
  });

  it('are cut to the last piece where a search was stopped, and as they were at its end', async () => {
    const job = await checked(new KeptTags());
    const steps: DraftSheet[][] = [];
    const options = { checkpoint: never, effort: littleEffort };
    const laid = (await layOutJob(job, { ...options, onBetter: (drafts) => steps.push(drafts()) }))!;
    for (const drafts of [steps[0]!, steps.at(-1)!]) {
      const cut = (await jobOnSheets(job, drafts, never))!;
      assert.deepEqual(cut.layout.left, []);
      assert.deepEqual(
        cut.layout.sheets.map(({ name, pieces }) => [name, pieces.map(({ toSheet }) => toSheet)]),
        drafts.map(({ name, pieces }) => [name, pieces.map(({ toSheet }) => toSheet)]),
      );
    }
    const finished = (await jobOnSheets(job, laid.layout.sheets, never))!;
    assert.equal(pieceTable(finished), pieceTable(laid));
    assert.deepEqual(
      finished.layout.sheets.map(({ plan }) => plan.steps.length),
      laid.layout.sheets.map(({ plan }) => plan.steps.length),
    );
    assert.equal(await jobOnSheets(job, [], never), undefined);
  });

  it('say what is on no sheet', async () => {
    const job = await checked(new KeptTags());
    const laid = (await layOutJob(job, { checkpoint: never, effort: littleEffort }))!;
    const [first, ...others] = laid.layout.sheets;
    const cut = (await jobOnSheets(job, others, never))!;
    assert.equal(cut.layout.left.length, first!.pieces.length);
    assert.ok(cut.issues.some(({ message }) => /on no sheet/.test(message)));
  });
});

describe('The figures of a layout', () => {
  const valueOf = (job: LaidOutJob, name: string): string => {
    const { value, unit, digits } = figuresOfJob(job).find((each) => each.name === name)!;
    return `${value.toFixed(digits)} ${unit}`.trim();
  };

  it('are what it takes and what is left', async () => {
    // Four plates of 60 × 40 mm on 200 × 100 mm, with the beam's 0.2 mm, in a row of three and one beside.
    const laid = await laidOutJob(jobOf(['{spec: plate.tag.yaml, quantity: 4}'], ['ply3: [{size: [200 mm, 100 mm]}]']));
    assert.equal(valueOf(laid, 'Sheets'), '1');
    assert.equal(valueOf(laid, 'Filled'), `${((100 * 4 * 60.2 * 40.2) / 20_000).toFixed(1)} %`);
    // 6 EUR for a square metre.
    assert.equal(valueOf(laid, 'Whole sheets'), '0.12 EUR');
    const points = laid.layout.sheets[0]!.pieces.flatMap(({ enclosed }) => enclosed.flat());
    const x = Math.max(...points.map((point) => point.x));
    const y = Math.max(...points.map((point) => point.y));
    // A margin of 3 mm; the strip at the end that has more.
    const [up, across] = [100 - 3 - y, 200 - 3 - x];
    const free = up * 200 >= across * 100 ? up : across;
    assert.equal(valueOf(laid, 'Free on the last sheet'), `${free.toFixed(0)} mm`);
    assert.ok(!figuresOfJob(laid).some(({ name }) => name === 'Offcuts used'));
    const inches = await laidOutJob(
      jobOf(['{spec: plate.tag.yaml, quantity: 4}'], ['ply3: [{size: [200 mm, 100 mm]}]'], ['units: in']),
    );
    assert.equal(valueOf(inches, 'Free on the last sheet'), `${(free / 25.4).toFixed(2)} in`);
  });

  it('count offcuts by themselves', async () => {
    const laid = await laidOutJob(text, beside);
    assert.equal(valueOf(laid, 'Offcuts used'), '1');
  });
});
