import assert from 'node:assert/strict';
import { jobOf } from '../../../src/export/job/job.ts';
import type { Job } from '../../../src/export/job/job.ts';
import { archiveOf, packOf } from '../../../src/export/pack.ts';
import { packReadme } from '../../../src/export/readme.ts';
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
    assert.deepEqual(Object.keys(files), [
      'lovage.svg',
      'lovage.dxf',
      'lovage.pdf',
      'lovage.png',
      'lovage-job.pdf',
      'README.txt',
    ]);
    assert.ok(Buffer.from(archiveOf(files)).equals(Buffer.from(archiveOf(await pack()))));
  }).timeout(180_000);

  it('has the spec along where its text is at hand, and says so', async () => {
    const job = { ...(await jobFrom(sample('5-'))), spec: 'tagwright: 1\n' };
    const files = await packOf(job, 'lovage', tools);
    assert.equal(new TextDecoder().decode(files['lovage.tag.yaml']), 'tagwright: 1\n');
    assert.match(packReadme(job, 'lovage'), /lovage\.tag\.yaml: what it was made from/);
  }).timeout(180_000);

  it('stops when it is told to', async () => {
    const stop = new Error('enough');
    const checkpoint = () => {
      throw stop;
    };
    await assert.rejects(packOf(await jobFrom(sample('5-')), 'lovage', tools, checkpoint), stop);
  });
});

describe('The note of a pack', () => {
  it('tells words, sizes, material and tie, care and cautions, and fits a page of plain text', async () => {
    const lines = packReadme(await jobFrom(sample('5-')), 'lovage').split('\n');
    const note = lines.join('\n').replace(/\n {2}/g, ' ');
    for (const phrase of [
      'Lovage, stacked plate',
      '“Lovage”, engraved, in Pacifico',
      'lovage.dxf',
      'Size: 84 mm wide, 52 mm high, 3 mm thick',
      'Material: Walnut',
      'Hangs on: Ribbon 10 mm wide',
    ])
      assert.ok(note.includes(phrase), phrase);
    assert.match(note, /Keep it dry/);
    assert.match(note, /strangled/);
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

  it('says when a tag is a draft, and leaves what is wrong with it to the job sheet', async () => {
    const note = packReadme(await jobFrom(sample('7-')), 'chives');
    assert.match(note, /^Chives, weak on purpose\n=+\n\nDraft: not ready to be made yet\.\n/);
    assert.doesNotMatch(note, /Warning|narrow/);
  });

  it('does not tell how to care for what it does not know', async () => {
    const spec = specOf(['plate: {rectangle: [30, 20]}'], 'body: [plate]', ['stock: {material: moon cheese}']);
    assert.doesNotMatch(packReadme(await jobFrom(spec), 'x'), /^Care$/m);
  });
});
