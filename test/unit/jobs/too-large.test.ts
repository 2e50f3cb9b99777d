import assert from 'node:assert/strict';
import { checkedJob, files, jobOf, named } from '../support/jobs.ts';

const tags = ['{spec: named.tag.yaml, orders: orders.csv}'];

describe('Pieces that are too large for every sheet', () => {
  it('are told once for all names, each of which is left out', async () => {
    const orders = `name,quantity\n${['Rue', 'Kale', 'Dill', 'Leek', 'Beet', 'Rue'].map((name) => `${name},1\n`).join('')}`;
    const { issues, pieces } = await checkedJob(jobOf(tags, ['ply3: [{size: [40 mm, 40 mm]}]']), {
      ...files,
      'orders.csv': orders,
    });
    assert.deepEqual(
      issues.map(({ message }) => message),
      [
        '“tag” of “Rue”, “Kale”, “Dill”, “Leek” and “Beet” (named.tag.yaml) is too large for every sheet of “ply3”: it needs 50.2 × 20.2 mm with the kerf.',
      ],
    );
    assert.deepEqual(
      pieces!.leftOut.map(({ why }) => why).at(1),
      '“tag” of “Kale” (named.tag.yaml) is too large for every sheet of “ply3”: it needs 50.2 × 20.2 mm with the kerf.',
    );
  });

  it('are told with the size of the largest where they differ', async () => {
    const sized = named
      .replace('{rectangle: [50 mm, 20 mm]}', '{rectangle: ["{wide}", 20 mm]}')
      .replace('height: 3 mm', 'height: 1 mm');
    const { issues } = await checkedJob(jobOf(tags, ['ply3: [{size: [40 mm, 40 mm]}]']), {
      ...files,
      'named.tag.yaml': sized,
      'orders.csv': 'name,wide,quantity\nRue,60,1\nKale,70,1\nDill,30,1\n',
    });
    assert.match(
      issues.find(({ code }) => code === 'exceeds-sheet')!.message,
      /^“tag” of “Rue” and “Kale” \(named\.tag\.yaml\) is too large for every sheet of “ply3”: the largest needs 70\.2 × 20\.2 mm/,
    );
  });
});
