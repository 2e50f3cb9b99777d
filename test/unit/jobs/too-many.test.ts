import assert from 'node:assert/strict';
import { layOutJob } from '../../../src/jobs/job.ts';
import { mostPieces } from '../../../src/nesting/layout.ts';
import { checkedJob, files, jobOf, plate } from '../support/jobs.ts';
import { never } from '../support/sheets.ts';

const sheets = ['ply3: [{size: [200 mm, 100 mm]}]'];
const plates = (...quantities: readonly number[]): string =>
  jobOf(
    quantities.map((quantity) => `{spec: plate.tag.yaml, quantity: ${quantity}}`),
    sheets,
  );

describe('A job of too many pieces', () => {
  it('is refused as a whole before anything is laid out', async () => {
    const text = plates(1000, 1000, 1000, 1000, 1);
    const job = await checkedJob(text);
    const [issue, ...more] = job.issues;
    assert.deepEqual(more, []);
    assert.equal(
      issue!.message,
      `The job has 4001 pieces; at most ${mostPieces} are laid out at once. Split it into several jobs.`,
    );
    assert.equal(text.slice(issue!.range.start, issue!.range.end), 'tags');
    assert.deepEqual(
      job.leftOut.map(({ quantity, why }) => [quantity, why]),
      [1000, 1000, 1000, 1000, 1].map((quantity) => [quantity, issue!.message]),
    );
    assert.equal(await layOutJob(job, { checkpoint: never }), undefined);
  });

  it('is not one of as many as there may be', async () => {
    const { issues, pieces } = await checkedJob(plates(1000, 1000, 1000, 1000));
    assert.deepEqual(issues, []);
    assert.equal(pieces!.stocks[0]!.pieces.length, mostPieces);
  });

  it('counts only what can be cut', async () => {
    const text = plates(1000, 1000, 1000, 1000).replace(
      'sheets:',
      '  - {spec: layered.tag.yaml, quantity: 9}\nsheets:',
    );
    const { issues, pieces } = await checkedJob(text, files);
    assert.ok(issues.every(({ message }) => message.includes('cherry2')));
    assert.equal(pieces!.stocks[0]!.pieces.length, mostPieces);
  });

  it('may have as many lines of orders as a batch has rows', async () => {
    const spec = plate.replace('60 mm, 40 mm', '"{wide}", 40 mm');
    const orders = (count: number): string => `order,wide\n${'1,60 mm\n'.repeat(count)}`;
    const job = jobOf(['{spec: plate.tag.yaml, orders: orders.csv}'], sheets);
    const of = (count: number) => checkedJob(job, { ...files, 'plate.tag.yaml': spec, 'orders.csv': orders(count) });
    assert.equal((await of(2000)).pieces!.stocks[0]!.pieces.length, 2000);
    const { issues, inFiles } = await of(2001);
    const told = [...issues, ...inFiles.flatMap((file) => file.issues)].map(({ message }) => message);
    assert.match(told.join(), /has 2001 lines; a job takes at most 2000/);
  });
});
