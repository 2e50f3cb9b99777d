import assert from 'node:assert/strict';
import { notCutInWords } from '../../../src/jobs/papers/not-cut.ts';
import { files, jobOf, laidOutJob } from '../support/jobs.ts';

describe('What a job leaves out', () => {
  const asked = (size: string) =>
    jobOf(['{spec: named.tag.yaml, orders: orders.csv}'], [`ply3: [{size: [${size}], count: 1}]`]);
  const orders = (...lines: readonly string[]) => ({
    ...files,
    'orders.csv': ['order,quantity,name', ...lines, ''].join('\n'),
  });

  it('is named with its order and the reason, one below the other', async () => {
    const job = await laidOutJob(asked('200 mm, 100 mm'), orders('7,1,Rue', '7,one,Dill', '8,0,Sage'));
    assert.deepEqual(notCutInWords(job), [
      [
        '2 lines cannot be made and are left out.',
        '7, Dill: “one” is not a quantity; write a whole number.',
        '8, Sage: A quantity of 0 makes nothing.',
      ].join('\n'),
    ]);
  });

  it('is counted beyond the first few', async () => {
    const faulty = Array.from({ length: 12 }, (_, index) => `${index},none,Rue ${index}`);
    const [words] = notCutInWords(await laidOutJob(asked('200 mm, 100 mm'), orders('100,1,Dill', ...faulty)));
    const lines = words!.split('\n');
    assert.equal(lines.length, 10);
    assert.match(lines[8]!, /^7, Rue 7: /);
    assert.equal(lines[9], 'And 4 more.');
  });

  it('names the pieces that find no room', async () => {
    // A sheet for one plate of 50 × 20 mm, with a margin of 3 mm.
    const job = await laidOutJob(asked('60 mm, 30 mm'), orders('7,1,Rue', '8,1,Rue'));
    assert.deepEqual(notCutInWords(job), ['1 piece goes on no sheet: 8, Rue.']);
  });

  it('is nothing where all is cut', async () => {
    assert.deepEqual(notCutInWords(await laidOutJob(asked('200 mm, 100 mm'), orders('7,1,Rue'))), []);
  });
});
