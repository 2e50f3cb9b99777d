import assert from 'node:assert/strict';
import { jobOf } from '../../../src/export/job/job.ts';
import type { Job } from '../../../src/export/job/job.ts';
import { archiveOf, packOf } from '../../../src/export/pack.ts';
import { packReadme } from '../../../src/export/readme.ts';
import { make, specOf } from '../support/engine.ts';
import { readPdf } from '../support/file-readers.ts';
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
    assert.deepEqual(Object.keys(files), ['lovage.svg', 'lovage.dxf', 'lovage-cover.png', 'lovage.pdf', 'README.txt']);
    assert.ok(Buffer.from(archiveOf(files)).equals(Buffer.from(archiveOf(await pack()))));
  }).timeout(180_000);

  it('has the spec along with the files that it needs, and says what is not in it', async () => {
    const along = {
      text: 'tagwright: 1\n',
      files: { 'fonts/mine.ttf': new Uint8Array([1]) },
      lacking: ['The font Theirs is not in it.'],
    };
    const job = { ...(await jobFrom(specOf(['plate: {rectangle: [30, 20]}'], 'body: [plate]'))), along };
    const files = await packOf(job, 'lovage', tools);
    assert.equal(new TextDecoder().decode(files['lovage.tag.yaml']), 'tagwright: 1\n');
    assert.deepEqual(files['fonts/mine.ttf'], new Uint8Array([1]));
    const note = packReadme(job, 'lovage').replace(/\n {2}/g, ' ');
    assert.match(note, /lovage\.tag\.yaml: the spec .*It needs what is in “fonts”\./);
    assert.match(note, /The font Theirs is not in it\./);
  }).timeout(180_000);

  it('has nothing of what the workshop pays, how fast it cuts, and what is wrong with the tag', async () => {
    const spec = specOf(['plate: {rectangle: [30, 20]}'], 'body: [plate]', [
      'stock: {material: oak, thickness: 3, price: {amount: 77.31, per: m2, currency: EUR}}',
      'machine: {cut: 13 mm/s, travel: 317 mm/s}',
    ]);
    const files = await packOf(await jobFrom(spec), 'plate', tools);
    const texts = Object.entries(files).map(
      ([name, bytes]) => [name, new TextDecoder('latin1').decode(bytes)] as const,
    );
    for (const [name, text] of texts) assert.doesNotMatch(text, /Material cost|EUR|77\.31|mm\/s/, name);
  }).timeout(180_000);

  it('has cut pages at true size in its PDF, and nothing to sign (read by pdfjs)', async () => {
    const { plan } = await jobFrom(sample('5-'));
    const files = await packOf(await jobFrom(sample('5-')), 'lovage', tools);
    const [page, ...others] = (await readPdf(files['lovage.pdf']!)).pages;
    assert.equal(others.length, 0);
    // The format's unit is 1/72 inch (ISO 32000-1).
    assert.ok(Math.abs(page!.width - (plan.bounds.maxX * 72) / 25.4) < 0.01);
    assert.doesNotMatch(page!.text, /sign|Proof/);
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
    assert.match(
      note,
      /Pacifico Regular: SIL Open Font License, version 1\.1 \(https?:\/\/scripts\.sil\.org\/OFL\)\. Copyright/,
    );
    assert.equal(note.match(/scripts\.sil\.org/g)?.length, 1, 'its address once');
    const plain = packReadme(await jobFrom(specOf(['plate: {rectangle: [30, 20]}'], 'body: [plate]')), 'plate');
    assert.doesNotMatch(plain, /Lettering|font/i);
  });

  it('names a licence of which a font gives the address alone', async () => {
    const job = await jobFrom(sample('5-'));
    const [font] = job.fonts;
    const licence = { copyright: 'Copyright A. Writer http://scripts.sil.org/OFL', url: 'http://scripts.sil.org/OFL' };
    const note = packReadme({ ...job, fonts: [{ ...font!, licence }] }, 'lovage').replace(/\n {2}/g, ' ');
    assert.match(
      note,
      /Pacifico Regular: SIL Open Font License \(http:\/\/scripts\.sil\.org\/OFL\)\. Copyright A\. Writer\.\n/,
    );
  });

  it('tells who cuts the files which kerf is in them, their unit and size, and what is done along which lines', async () => {
    const spec = specOf(
      ['plate: {rectangle: [30, 20]}', 'name: {text: Rue, x_height: 4}', 'edge: {from: plate, grow: -2}'],
      'body: [plate], engrave: [name], score: [edge]',
      ['stock: {material: oak, thickness: 3, kerf: 0.2}', 'output: {score: {color: "#123456", layer: Fine}}'],
    );
    const note = packReadme(await jobFrom(spec), 'rue').replace(/\n {2}/g, ' ');
    for (const phrase of [
      'rue.svg or rue.dxf: everything in it is 30.2 × 20.2 mm.',
      'Lengths in the files are millimetres',
      'Cut lines are compensated for a kerf of 0.2 mm.',
      'With a wider kerf parts come out smaller by the difference, and openings larger.',
      'Engrave (areas in #CC79A7, layer “engrave”); Score (lines in #123456, layer “Fine”); Cut, outer (lines in #009E73, layer “cut-outer”)',
    ])
      assert.ok(note.includes(phrase), `${phrase}\n${note}`);
  });

  it('tells the sheets of several stocks apart', async () => {
    const note = packReadme(await jobFrom(sample('3-')), 'x').replace(/\n {2}/g, ' ');
    assert.doesNotMatch(note, /, of /, 'one stock');
    const two = `tagwright: 1
stocks: {oak3: {material: oak, thickness: 3, kerf: 0.1}, ash1: {material: ash, thickness: 1, kerf: 0.2}}
shapes: {plate: {rectangle: [30, 20]}, dot: {ellipse: 8}}
pieces:
  back: {body: plate, stock: oak3}
  front: {body: dot, stock: ash1, glue_to: back}
`;
    const both = packReadme(await jobFrom(two), 'x').replace(/\n {2}/g, ' ');
    assert.match(both, /x-oak3\.svg or x-oak3\.dxf, of oak, 3 mm: everything in it is 30\.1 × 20\.1 mm\./);
    assert.match(both, /x-ash1\.svg or x-ash1\.dxf, of ash, 1 mm: everything in it is 8\.2 × 8\.2 mm\./);
    assert.match(both, /oak: Cut lines are compensated for a kerf of 0\.1 mm\./);
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
