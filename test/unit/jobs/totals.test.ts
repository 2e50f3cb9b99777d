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
