import assert from 'node:assert/strict';
import { jobOf } from '../../../src/export/job/job.ts';
import type { Job } from '../../../src/export/job/job.ts';
import { toJobSheet } from '../../../src/export/bench/job-sheet.ts';
import { make, specOf } from '../support/engine.ts';
import { readPdf } from '../support/file-readers.ts';
import { hardSpecs } from '../support/hard-specs.ts';
import { samples } from '../support/samples.ts';
import { tools } from '../support/tools.ts';

async function jobFrom(text: string): Promise<Job> {
  return jobOf((await make(text)).report)!;
}

/** By pdfjs-dist, all pages, in one line. */
async function sheetOf(text: string): Promise<string> {
  const { pages } = await readPdf(await toJobSheet(await jobFrom(text), tools));
  return pages.map((page) => page.text.replace(/\s+/g, ' ')).join(' ');
}

const shapes = [
  'plate: {rectangle: [60, 20]}',
  'panel: {rectangle: [40, 10]}',
  'window: {ellipse: 6, nudge: {right: 25}}',
];
const machine = 'machine: {cut: 10 mm/s, engrave: 200 mm/s, score: 50 mm/s, hatch: 0.125}';
const piece = 'body: [plate], engrave: [panel], score: [panel], cut: [window]';

describe('The job sheet', () => {
  it('has the work in order, what each step is in the files, and what it takes', async () => {
    const stock = 'stock: {thickness: 3, density: 700, price: {amount: 30, per: m2}, kerf: {outer: 0.2, inner: 0.1}}';
    const sheet = await sheetOf(specOf(shapes, piece, [stock, machine, 'output: {cut_inner: {layer: Holes}}']));
    const at = ['Engrave', 'Score', 'Cut, inner', 'Cut, outer', 'Travel'].map((step) => sheet.indexOf(step));
    assert.deepEqual(
      at,
      [...at].sort((a, b) => a - b),
    );
    assert.ok(at[0]! > 0);
    // Exact: the outline of 60.2 × 20.2 with round corners, a circle of 5.9, a panel of 40 × 10, a sheet of 60.2 × 20.2.
    for (const phrase of [
      'Engrave #CC79A7 4 cm²',
      'Score #D55E00 1 outline 100 mm 2 s',
      `Cut, inner Holes 1 outline ${(5.9 * Math.PI).toFixed(1)} mm 2 s`,
      `Cut, outer #009E73 1 outline ${(160 + 0.2 * Math.PI).toFixed(1)} mm 16 s`,
      'Sheet 12.2 cm²',
      'Weight 2.5 g',
      'Material cost 0.04',
      'a kerf of 0.2 mm outside and 0.1 mm in openings',
    ])
      assert.ok(sheet.includes(phrase), `${phrase} in ${sheet}`);
    assert.match(sheet, /Total, about/);
  });

  it('says what it does not know, and which key would say it', async () => {
    const sheet = await sheetOf(specOf(['plate: {rectangle: [60, 20]}'], 'body: [plate]'));
    assert.match(sheet, /Machine time unknown; the spec has no “machine”\./);
    assert.match(sheet, /Material cost unknown/);
    assert.match(sheet, /Thickness not given/);
    assert.match(sheet, /The spec names no material\./);
  });

  it('says the least width that the checks go by, for pieces that others carry too', async () => {
    const stock = 'stock: {material: walnut, thickness: 3, min_web: 2}';
    const dumbbell =
      'union: [{rectangle: [8, 8], nudge: {left: 15}}, {rectangle: [8, 8], nudge: {right: 15}}, {rectangle: [30, 0.4]}]';
    const text = specOf([shapes[0]!, `thin: {${dumbbell}}`], 'body: [plate]', [stock]).replace(
      /$/,
      '  front: {body: [thin], glue_to: tag}\n',
    );
    const { report } = await make(text);
    const { minimum } = report.issues.find(({ code, piece: id }) => code === 'thin-stroke' && id === 'front')!;
    assert.ok(minimum! < 2, String(minimum));
    const glued = await sheetOf(text);
    assert.ok(glued.includes(`Least width 2 mm, ${minimum} mm for pieces glued on others; take care`), glued);
    const alone = await sheetOf(specOf([shapes[0]!], 'body: [plate]', [stock]));
    assert.match(alone, /Least width 2 mm; take care with what is narrower\./);
  });

  it('says how the machine is set for each operation that is needed, and what nobody has said', async () => {
    const set = 'power: {engrave: 30 %}, passes: {cut: 2}';
    const sheet = await sheetOf(specOf(shapes, piece, [`machine: {cut: 10 mm/s, ${set}}`]));
    assert.match(
      sheet,
      /Set by hand engrave 30 %, speed not set; score: not set; cut: power not set, 10 mm\/s, 2 passes/,
    );
    const inches = await sheetOf(specOf(shapes, 'body: [plate]', ['units: in', 'machine: {cut: 0.5 in/s}']));
    assert.match(inches, /Set by hand cut: power not set, 0\.5 in\/s/);
    assert.match(await sheetOf(specOf(shapes, 'body: [plate]')), /Set by hand cut: not set/);
  });

  it('has every problem with the line it comes from', async () => {
    const { text } = samples.find(({ name }) => name.startsWith('7-'))!;
    const { issues } = (await make(text)).report;
    assert.ok(issues.length >= 3);
    const sheet = await sheetOf(text);
    assert.match(sheet, /DO NOT CUT/);
    for (const { message, range, severity } of issues) {
      const line = text.slice(0, range.start).split('\n').length;
      const name = { error: 'Error', warning: 'Warning', info: 'Note' }[severity];
      assert.ok(sheet.includes(`${name}, line ${line} ${message}`), `${name}, line ${line} ${message} in ${sheet}`);
    }
  });

  it('says how layers are put together, each by its number', async () => {
    const sheet = await sheetOf(hardSpecs['three layers, with all that a workshop can say']!);
    assert.match(
      sheet,
      /Put together 1 Lay “Base” down with its face up\. 2 Glue “Mat” onto “Base”, over the scored lines\. 3 Glue the 4 parts of “Name” onto “Mat”\./,
    );
    assert.match(sheet, /9 mm thick \(three layers of 3 mm, glued\)/);
    assert.match(sheet, /Cut, outer, 2 passes/);
    assert.match(sheet, /Each part is held by 2 × 0\.5 mm/);
    const flat = await sheetOf(samples[0]!.text);
    assert.doesNotMatch(flat, /Put together/);
  });

  it('defers to the machine’s manual, and warns of what the material does', async () => {
    const of = (material: string) =>
      sheetOf(specOf(['plate: {rectangle: [60, 20]}'], 'body: [plate]', [`stock: {material: ${material}}`]));
    assert.match(await of('oak'), /Your machine’s manual comes before anything on this sheet\..*Wood flares up/);
    assert.match(await of('clear acrylic'), /methyl methacrylate/);
    assert.match(await of('kraft card'), /catch fire easily/);
    assert.match(await of('leather'), /Vegetable-tanned leather only/);
  });

  it('takes as many pages as it must, and loses no problem', async () => {
    const { report } = await make(samples.find(({ name }) => name.startsWith('7-'))!.text);
    const [issue] = report.issues;
    const issues = Array.from({ length: 60 }, (_, i) => ({ ...issue!, message: `Problem number ${i + 1}.` }));
    const { pages } = await readPdf(await toJobSheet(jobOf({ ...report, issues })!, tools));
    assert.ok(pages.length >= 3, String(pages.length));
    const all = pages.map(({ text }) => text).join(' ');
    for (const { message } of issues) assert.ok(all.includes(message), message);
    pages.forEach(({ text, height }, index) => {
      assert.ok(text.includes(`${index + 1} of ${pages.length}`));
      // ISO 216: A4 is 297 mm high.
      assert.ok(Math.abs(height - (297 * 72) / 25.4) < 1e-3);
    });
  });
});
