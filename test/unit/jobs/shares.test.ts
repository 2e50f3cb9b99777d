import assert from 'node:assert/strict';
import fc from 'fast-check';
import { jobJson } from '../../../src/jobs/papers/job-json.ts';
import { pieceTable } from '../../../src/jobs/papers/job-table.ts';
import { pickList } from '../../../src/jobs/papers/pick-list.ts';
import { mapPages } from '../support/job-map.ts';
import { sharesOf, wholeShares } from '../../../src/jobs/shares.ts';
import { costsOfJob } from '../../../src/jobs/totals.ts';
import { assertNear } from '../support/engine.ts';
import { bySimpleReader } from '../support/csv-reader.ts';
import { files, jobOf, laidOutJob } from '../support/jobs.ts';
import { tools } from '../support/tools.ts';

const csv = 'order,product,quantity,name\n7,named,2,Rue\n7,plate,1,\n8,named,1,Dill\n9,named,4,Mint\n9,layered,1,\n';
const tags = ['named', 'plate', 'layered'].map((name) => `{spec: ${name}.tag.yaml, orders: orders.csv}`);
const sheets = ['ply3: [{size: [200 mm, 200 mm]}]', 'cherry2: [{size: [100 mm, 100 mm]}]'];
const wordsOf = (pages: readonly { readonly words: readonly { readonly text: string }[] }[]) =>
  pages.flatMap(({ words }) => words.map(({ text }) => text)).join(' ');

describe('What each order costs', () => {
  it('is shared in whole numbers that add up, none of them a whole one off', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 1e5, noNaN: true }),
        fc.array(fc.integer({ min: 1, max: 999 })),
        (all, parts) => {
          const shares = wholeShares(all, parts);
          const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);
          if (parts.length > 0) assert.equal(sum(shares), Math.round(all));
          for (const [index, share] of shares.entries()) {
            assert.ok(Number.isInteger(share));
            assert.ok(Math.abs(share - (all * parts[index]!) / sum(parts)) < 1 + 1e-6);
          }
        },
      ),
    );
    // Worked by hand: 3.33 each, and the hundredth that is missing to the first.
    assert.deepEqual(wholeShares(1000, [5, 5, 5]), [334, 333, 333]);
    assert.deepEqual(wholeShares(0, []), []);
  });

  it('is its share of the material cost and of the machine’s time, and on the pick list all add up', async () => {
    const job = await laidOutJob(jobOf(tags, sheets), { ...files, 'orders.csv': csv });
    const words = wordsOf(await pickList(job, tools));
    const [, all, machine] = /All of it: material ([\d.]+) EUR, machine (\d+) min (\d+) s/.exec(words) ?? [];
    assert.ok(all !== undefined && machine !== undefined, words);
    assert.equal(all, costsOfJob(job).material!.amount.toFixed(2));
    assert.match(wordsOf(await mapPages(job, tools)), new RegExp(`Material cost ${all} EUR.*`));
    const orders = [...words.matchAll(/(\d+) tags?, \d+ pieces? · material ([\d.]+) EUR/g)];
    assert.deepEqual(
      orders.map(([, count]) => count),
      ['3', '1', '5'],
    );
    const cents = (figures: readonly (string | undefined)[]) =>
      figures.reduce((sum, figure) => sum + Math.round(100 * Number(figure)), 0);
    assert.equal(cents(orders.map(([, , cost]) => cost)), cents([all]));
    const [first] = words.split('Order 8');
    const own = [...first!.matchAll(/(?<!· |: )material ([\d.]+) EUR/g)].map(([, cost]) => cost);
    assert.equal(own.length, 2, 'two names, one plate');
    assert.equal(cents(own), cents([orders[0]![2]]));
  });

  it('adds up in the table of pieces and in the JSON too, with what lies on no sheet', async () => {
    const job = await laidOutJob(jobOf(tags, ['ply3: [{size: [70 mm, 60 mm], count: 2}]', sheets[1]!]), {
      ...files,
      'orders.csv': csv,
    });
    assert.ok(job.layout.left.length > 0);
    const total = costsOfJob(job).material!.amount.toFixed(2);
    const { orders } = jobJson('swap.job.yaml', job, job, []) as {
      readonly orders: readonly {
        readonly order: string;
        readonly tags: number;
        readonly cost: { readonly amount: number; readonly currency: string };
        readonly seconds: number;
      }[];
    };
    assert.deepEqual(
      orders.map(({ order, tags: count, cost }) => [order, count, cost.currency]),
      [
        ['7', 3, 'EUR'],
        ['8', 1, 'EUR'],
        ['9', 5, 'EUR'],
      ],
    );
    const sum = (values: readonly number[]) => values.reduce((all, value) => all + value, 0);
    assert.equal(sum(orders.map(({ cost }) => cost.amount)).toFixed(2), total);
    const [header, ...rows] = bySimpleReader(pieceTable(job));
    const column = (name: string) => header!.indexOf(name);
    assert.ok(rows.some((row) => row[column('sheet')] === 'none'));
    for (const { order, cost, seconds } of orders) {
      const own = rows.filter((row) => row[column('order')] === order);
      assert.equal(sum(own.map((row) => Number(row[column('cost EUR')]))).toFixed(2), cost.amount.toFixed(2), order);
      assert.equal(sum(own.map((row) => Number(row[column('machine s')]))), seconds, order);
    }
    const words = wordsOf(await pickList(job, tools));
    for (const { order, cost } of orders)
      assert.match(
        words,
        new RegExp(`Order ${order} .*? · material ${cost.amount.toFixed(2).replace('.', '\\.')} EUR`),
      );
  });

  it('is in proportion to the boxes, and unknown where a price or a speed is', async () => {
    const workshop = (files['shop.workshop.yaml'] as string).replace('amount: 6,', 'amount: 6000,');
    const job = await laidOutJob(jobOf(tags.slice(0, 2), sheets.slice(0, 1)), {
      ...files,
      'orders.csv': csv,
      'shop.workshop.yaml': workshop,
    });
    const share = sharesOf(job);
    const of = (order: string) => share(job.pieces.tags.filter((tag) => tag.order === order));
    // 6000 EUR a square metre; boxes with a kerf of 0.2 mm, of names and of plates.
    const [name, plate] = [(50.2 * 20.2 * 6000) / 1e6, (60.2 * 40.2 * 6000) / 1e6];
    assertNear(of('7').cost!.amount, 2 * name + plate, 0.02);
    assertNear(of('9').cost!.amount, 4 * name, 0.02);
    assert.equal(of('7').cost!.currency, 'EUR');
    const bare = workshop.replace(/, price: \{amount: 6000[^}]*\}/, '').replace('cut: 10 mm/s, ', '');
    const unknown = await laidOutJob(jobOf(tags.slice(0, 2), sheets.slice(0, 1)), {
      ...files,
      'orders.csv': csv,
      'shop.workshop.yaml': bare,
    });
    assert.deepEqual(sharesOf(unknown)(unknown.pieces.tags), {});
    const [head, row] = bySimpleReader(pieceTable(unknown));
    assert.deepEqual(
      [head!.slice(-3, -1), row!.slice(-3, -1)],
      [
        ['cost', 'machine s'],
        ['', ''],
      ],
    );
    assert.doesNotMatch(wordsOf(await pickList(unknown, tools)), /material|machine/);
  });
});
