import assert from 'node:assert/strict';
import { jobFacts } from '../../../src/jobs/totals.ts';
import { files, jobOf, laidOutJob, workshop } from '../support/jobs.ts';

describe('What the whole sheets of a job cost', () => {
  /** The workshop's sheet is 200 × 100 mm. */
  const whole = async (price: string, size: string) => {
    const shop = workshop.replace('{amount: 6, per: m2, currency: EUR}', price);
    const asked = jobOf(['{spec: plate.tag.yaml}'], [`ply3: [{size: [${size}]}]`]);
    const facts = jobFacts(await laidOutJob(asked, { ...files, 'shop.workshop.yaml': shop }));
    return facts.find(({ name }) => name === 'Whole sheets')!.value;
  };
  const perSheet = '{amount: 9, per: sheet, currency: EUR}';

  it('says for which size a price per sheet is, where those of the job have another', async () => {
    assert.equal(await whole(perSheet, '100 mm, 100 mm'), '4.50 EUR; ply3 by area, 9.00 EUR for 200 × 100 mm');
  });

  it('says nothing of it where the size is the same, also when turned, or the price is by area', async () => {
    assert.equal(await whole(perSheet, '200 mm, 100 mm'), '9.00 EUR');
    assert.equal(await whole(perSheet, '100 mm, 200 mm'), '9.00 EUR');
    // 6 EUR a m² for 0.01 m².
    assert.equal(await whole('{amount: 6, per: m2, currency: EUR}', '100 mm, 100 mm'), '0.06 EUR');
  });
});

describe('The machine time of a job', () => {
  const machineOf = async (shop: string) => {
    const asked = jobOf(
      ['{spec: layered.tag.yaml}'],
      [`ply3: [{size: [200 mm, 100 mm]}]`, `cherry2: [{size: [200 mm, 100 mm]}]`],
    );
    const facts = jobFacts(await laidOutJob(asked, { ...files, 'shop.workshop.yaml': shop }));
    return facts.find(({ name }) => name === 'Machine')?.value;
  };

  it('is told to be unknown with the stock and the speed that is missing', async () => {
    assert.match((await machineOf(workshop))!, /^about \d+ s$/);
    const cut = workshop.replace('cut: 20 mm/s', 'engrave: 20 mm/s');
    assert.equal(await machineOf(cut), 'unknown: cherry2 has no speed to cut');
    const without = workshop.replace(', machine: {cut: 20 mm/s}', '');
    assert.equal(await machineOf(without), 'unknown: cherry2 has no machine');
    assert.equal(await machineOf(without.replace(/, machine: \{cut: 10[^}]*\}/, '')), undefined, 'nobody asked for it');
  });
});

describe('An order of which one line is a rush', () => {
  it('is one as a whole, also what other specs and tables make of it', async () => {
    const csv = 'order,quantity,name,rush\n902,1,Rue,yes\n902,1,Dill,\n903,1,Ivy,\n';
    const job = await laidOutJob(
      jobOf(
        ['{spec: named.tag.yaml, orders: a.csv}', '{spec: layered.tag.yaml, orders: b.csv}', '{spec: plate.tag.yaml}'],
        ['ply3: [{size: [200 mm, 100 mm]}, {size: [200 mm, 100 mm]}]', 'cherry2: [{size: [200 mm, 100 mm]}]'],
      ),
      { ...files, 'a.csv': csv, 'b.csv': 'order,quantity\n902,1\n903,1\n' },
    );
    assert.deepEqual(
      job.pieces.tags.map(({ order, rush }) => `${order} ${rush}`),
      ['902 true', '902 true', '903 false', '902 true', '903 false', ' false'],
    );
  });
});
