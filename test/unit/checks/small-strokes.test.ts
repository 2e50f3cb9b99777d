import assert from 'node:assert/strict';
import { hardToRead } from '../../../src/checks/hard-to-read.ts';
import { checked } from '../support/checked.ts';
import { specOf } from '../support/engine.ts';

const plate = 'plate: {rectangle: [60, 30], radius: 3}';

async function said(text: string, { use = 'engrave', stock = '{kerf: 0.16}' } = {}): Promise<string[]> {
  const shapes = [plate, `note: {${text}, font: single line, place: {on: plate}}`];
  const { issues } = await checked(specOf(shapes, `body: [plate], ${use}: [note]`, [`stock: ${stock}`]), hardToRead);
  return issues.map(({ severity, message }) => `${severity}: ${message}`);
}

const severities = async (text: string, how?: { readonly use?: string; readonly stock?: string }) =>
  (await said(text, how)).map((each) => each.split(':')[0]);

describe('Lettering of single lines', () => {
  // Lines are drawn at least 0.2 mm wide (rule of thumb); 6 and 4 of these widths are our own judgement.
  it('is worth a note below six widths of its line, and a warning below four', async () => {
    for (const use of ['engrave', 'score']) {
      assert.deepEqual(await severities('text: Marigold, x_height: 1.2', { use }), []);
      assert.deepEqual(await severities('text: Marigold, x_height: 1.18', { use }), ['info']);
      assert.deepEqual(await severities('text: Marigold, x_height: 0.8', { use }), ['info']);
      assert.deepEqual(await severities('text: Marigold, x_height: 0.78', { use }), ['warning']);
    }
    assert.deepEqual(await said('text: Marigold seed, x_height: 1'), [
      'info: “Marigold seed” is too small for lines 0.20 mm wide: its letters are 1.00 mm high; minimum 1.20 mm.',
    ]);
  });

  it('needs more where the line is wider, and what was measured where that is known', async () => {
    const wide = '{kerf: 0.4}';
    assert.deepEqual(await severities('text: Marigold, x_height: 2.42', { stock: wide }), []);
    assert.deepEqual(await severities('text: Marigold, x_height: 2.38', { stock: wide }), ['info']);
    const measured = '{kerf: 0.16, min_x_height: 0.7}';
    assert.deepEqual(await severities('text: Marigold, x_height: 0.72', { stock: measured }), []);
    assert.deepEqual(await severities('text: Marigold, x_height: 0.68', { stock: measured }), ['warning']);
  });

  it('is measured as it comes out: scaled, turned, in several lines, and by its capitals if it has nothing else', async () => {
    assert.deepEqual(await severities('text: Marigold, width: 12'), []);
    assert.deepEqual(await severities('text: Marigold, width: 5'), ['warning']);
    assert.deepEqual(await severities('text: Marigold, x_height: 1, rotate: 30'), ['info']);
    assert.deepEqual(await severities('text: "1999", cap_height: 1.22'), []);
    assert.deepEqual(await severities('text: "1999", cap_height: 1.18'), ['info']);
    assert.deepEqual(await severities('text: "+", x_height: 0.5'), []);
  });
});

describe('Copies of a text of single lines', () => {
  it('are one finding', async () => {
    const shapes = [
      plate,
      'note: {text: Marigold, font: single line, x_height: 1}',
      'notes: {repeat: {shape: note, count: 3, spacing: 4, along: down}, place: {on: plate}}',
    ];
    const { issues } = await checked(specOf(shapes, 'body: [plate], score: [notes]'), hardToRead);
    assert.equal(issues.length, 1);
  });
});
