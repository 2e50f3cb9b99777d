import assert from 'node:assert/strict';
import { jobOf } from '../../../src/output/job.ts';
import type { Job } from '../../../src/output/job.ts';
import { archiveOf, packOf } from '../../../src/output/pack.ts';
import { packReadme } from '../../../src/output/readme.ts';
import { make, specOf } from '../support/engine.ts';
import { samples } from '../support/samples.ts';
import { tools } from '../support/tools.ts';

async function jobFrom(text: string): Promise<Job> {
  return jobOf((await make(text)).report)!;
}

const sample = (name: string) => samples.find((each) => each.name.startsWith(name))!.text;

describe('A pack', () => {
  it('holds the files and their note, and is the same bytes every time', async () => {
    const job = await jobFrom(sample('5-'));
    const pack = () => packOf(job, 'lovage', tools);
    const files = await pack();
    assert.deepEqual(Object.keys(files), ['lovage.svg', 'lovage.dxf', 'lovage.pdf', 'lovage.png', 'README.txt']);
    assert.ok(Buffer.from(archiveOf(files)).equals(Buffer.from(archiveOf(await pack()))));
  }).timeout(20_000);

  it('stops when it is told to', async () => {
    const stop = new Error('enough');
    const checkpoint = () => {
      throw stop;
    };
    await assert.rejects(packOf(await jobFrom(sample('5-')), 'lovage', tools, checkpoint), stop);
  });
});

describe('The note of a pack', () => {
  it('tells sizes, material, tie, order and kerf, care and cautions, and fits a page of plain text', async () => {
    const lines = packReadme(await jobFrom(sample('5-')), 'lovage').split('\n');
    const note = lines.join('\n').replace(/\n {2}/g, ' ');
    for (const said of [
      'Lovage, stacked plate',
      'lovage.dxf',
      '84 × 52 mm',
      'walnut, 3 mm',
      'ribbon of 10 mm',
      'kerf of 0.18 mm',
    ])
      assert.ok(note.includes(said), said);
    assert.match(note, /In this order: Engrave \(#CC79A7\); Cut, inner \(#0072B2\); Cut, outer \(#009E73\)/);
    assert.match(note, /Keep dry/);
    assert.match(note, /never leave a running job alone/);
    assert.match(note, /strangle/);
    assert.match(note, /No problems were found/);
    for (const line of lines) assert.ok(line.length <= 100, line);
  });

  it('tells whose letters they are, and by which licence, from the font’s own tables', async () => {
    const note = packReadme(await jobFrom(sample('5-')), 'lovage').replace(/\n {2}/g, ' ');
    // Pacifico's name table, as fontTools shows it: its licence is the SIL Open Font License, version 1.1.
    assert.match(note, /Pacifico Regular\. Copyright/);
    assert.match(note, /SIL Open Font License/);
    const plain = packReadme(await jobFrom(specOf(['plate: {rectangle: [30, 20]}'], 'body: [plate]')), 'plate');
    assert.doesNotMatch(plain, /Lettering|font/i);
  });

  it('tells what was found, and not to cut what has errors', async () => {
    const note = packReadme(await jobFrom(sample('7-')), 'chives');
    assert.match(note, /^Chives, weak on purpose\n=+\n\nDO NOT CUT/);
    assert.match(note, /- Warning: /);
  });

  it('does not tell how to care for what it does not know', async () => {
    const spec = specOf(['plate: {rectangle: [30, 20]}'], 'body: [plate]', ['stock: {material: moon cheese}']);
    assert.doesNotMatch(packReadme(await jobFrom(spec), 'x'), /^Care$/m);
  });
});
