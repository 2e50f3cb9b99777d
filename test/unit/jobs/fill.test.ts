import assert from 'node:assert/strict';
import type { LaidOutJob } from '../../../src/jobs/job.ts';
import { files, jobOf, laidOutJob } from '../support/jobs.ts';

/** Orders of plates of 60 × 40 mm, each name for one of them. */
const plated = (csv: string) => ({
  ...files,
  'plate.tag.yaml': (files['plate.tag.yaml'] as string).replace(
    'shapes: {plate',
    'title: Plate for {name}\nshapes: {plate',
  ),
  'orders.csv': csv,
});

const tags = ['{spec: plate.tag.yaml, orders: orders.csv}'];

/** Six plates go on a sheet of 200 × 100 mm: three abreast, two up. */
const perSheet = 6;
const sheets = ['ply3: [{size: [200 mm, 100 mm]}]'];

const ordersOn = ({ layout }: LaidOutJob) =>
  layout.sheets.map(({ pieces }) => pieces.map(({ of }) => of.of.order).sort());

describe('Pieces of a job on their sheets', () => {
  it('take no more sheets than rows of boxes would', async () => {
    for (const count of [1, 6, 7, 18, 19]) {
      const { layout } = await laidOutJob(jobOf([`{spec: plate.tag.yaml, quantity: ${count}}`], sheets));
      assert.equal(layout.sheets.length, Math.ceil(count / perSheet), `${count} plates`);
      assert.equal(
        layout.sheets.reduce((sum, { pieces }) => sum + pieces.length, 0),
        count,
      );
    }
  });

  it('that are in a hurry are cut first, on no more sheets than otherwise', async () => {
    const csv = `order,name,quantity,rush\na,Rue,5,\nb,Kale,4,\nc,Sorrel,3,\nd,Borage,4,yes\n`;
    const laid = await laidOutJob(jobOf(tags, sheets), plated(csv));
    assert.equal(laid.layout.sheets.length, Math.ceil(16 / perSheet));
    const [first, ...others] = ordersOn(laid);
    assert.equal(first!.filter((order) => order === 'd').length, 4);
    assert.equal(first!.length, perSheet, 'the sheet is filled up with others');
    assert.ok(others.flat().every((order) => order !== 'd'));
  });

  it('of one order stay together where that is asked for', async () => {
    const csv = 'order,name,quantity\na,Rue,4\nb,Kale,4\nc,Sorrel,4\nd,Borage,2\ne,Lovage,2\n';
    const apart = await laidOutJob(jobOf(tags, sheets), plated(csv));
    const sheetsOf = (laid: LaidOutJob, order: string) =>
      ordersOn(laid).filter((orders) => orders.includes(order)).length;
    const orders = ['a', 'b', 'c', 'd', 'e'];
    assert.ok(
      orders.some((order) => sheetsOf(apart, order) > 1),
      'otherwise there is nothing to see',
    );
    const together = await laidOutJob(jobOf(tags, sheets, ['keep_together: true']), plated(csv));
    for (const order of orders) assert.equal(sheetsOf(together, order), 1, order);
    assert.equal(together.layout.sheets.length, 3);
    assert.equal(ordersOn(together).flat().length, 16);
  });

  it('of one order stay together on a sheet where an offcut has room for some of them only', async () => {
    const beside = {
      ...plated('order,name,quantity\na,Rue,3\nb,Kale,2\n'),
      // Room for two.
      'ply3.offcuts.yaml': 'tagwright_offcuts: 1\noffcuts:\n  - {id: 4, size: [140 mm, 50 mm]}\n',
    };
    const from = ['ply3: [{offcuts: ply3.offcuts.yaml}, {size: [200 mm, 100 mm]}]'];
    const laid = await laidOutJob(jobOf(tags, from, ['keep_together: true']), beside);
    assert.deepEqual(
      laid.layout.sheets.map(({ name, pieces }) => [name, pieces.map(({ of }) => of.of.order).join('')]),
      [
        ['ply3 offcut 4', 'bb'],
        ['ply3 sheet 1', 'aaa'],
      ],
    );
    assert.deepEqual(laid.issues, []);
    // All of it goes on the sheet, and nothing on the offcut.
    const alone = await laidOutJob(jobOf(tags, from, ['keep_together: true']), {
      ...beside,
      ...plated('order,name,quantity\na,Rue,3\n'),
    });
    assert.deepEqual(
      alone.layout.sheets.map(({ name, pieces }) => [name, pieces.length]),
      [['ply3 sheet 1', 3]],
    );
    // Of one that neither has room for, the offcut takes what goes on it.
    const more = { ...beside, ...plated('order,name,quantity\na,Rue,8\n') };
    const parted = await laidOutJob(jobOf(tags, from, ['keep_together: true']), more);
    assert.deepEqual(
      parted.layout.sheets.map(({ name, pieces }) => [name, pieces.length]),
      [
        ['ply3 offcut 4', 2],
        ['ply3 sheet 1', 6],
      ],
    );
  });

  it('of an order that goes on no sheet by itself are parted all the same', async () => {
    const laid = await laidOutJob(
      jobOf(tags, sheets, ['keep_together: true']),
      plated('order,name,quantity\na,Rue,8\nb,Kale,1\n'),
    );
    assert.equal(ordersOn(laid).flat().length, 9);
    assert.equal(laid.layout.left.length, 0);
  });

  it('are upright unless turning saves a sheet', async () => {
    const turned = ({ layout }: LaidOutJob) =>
      layout.sheets.flatMap(({ pieces }) => pieces).filter(({ toSheet: { a } }) => Math.abs(a - 1) > 1e-9).length;
    const plenty = await laidOutJob(
      jobOf(['{spec: plate.tag.yaml, quantity: 4}'], ['ply3: [{size: [200 mm, 100 mm], turn: quarter}]']),
    );
    assert.equal(turned(plenty), 0);
    // 130 × 70 mm: two abreast upright, or three on their sides.
    const narrow = (turn: string) =>
      laidOutJob(jobOf(['{spec: plate.tag.yaml, quantity: 3}'], [`ply3: [{size: [133 mm, 70 mm], turn: ${turn}}]`]));
    const [half, quarter] = [await narrow('half'), await narrow('quarter')];
    assert.deepEqual([half.layout.sheets.length, quarter.layout.sheets.length], [2, 1]);
    assert.equal(turned(half), 0);
    assert.ok(turned(quarter) > 0);
  });

  it('that go on none of the sheets there are are told, and counted', async () => {
    const laid = await laidOutJob(
      jobOf(
        ['{spec: plate.tag.yaml, quantity: 20}'],
        ['ply3: [{size: [200 mm, 100 mm], count: 2}, {size: [70 mm, 50 mm], count: 3}]'],
      ),
    );
    const count = laid.layout.sheets.reduce((sum, { pieces }) => sum + pieces.length, 0);
    assert.equal(count, 2 * perSheet + 3);
    assert.equal(laid.layout.left.length, 20 - count);
    assert.match(laid.issues[0]!.message, /^5 pieces of “ply3” go on no sheet/);
  });
});
