import assert from 'node:assert/strict';
import { PNG } from 'pngjs';
import { reportsOf } from '../../../src/engine/batch.ts';
import { sheetSizesFor } from '../../../src/edits/sheet-size.ts';
import { transform } from '../../../src/geometry/affine.ts';
import { area, boundsOf, ringArea } from '../../../src/geometry/measure.ts';
import type { Ring } from '../../../src/geometry/types.ts';
import { estimateJob } from '../../../src/toolpath/estimate.ts';
import { jobOf } from '../../../src/export/job/job.ts';
import type { Page } from '../../../src/export/page/page.ts';
import { pdfOf } from '../../../src/export/pdf/pdf.ts';
import { sheetFiles } from '../../../src/export/sheets/sheet-files.ts';
import { sheetJobs } from '../../../src/export/sheets/sheet-job.ts';
import type { SheetJobs } from '../../../src/export/sheets/sheet-job.ts';
import { sheetPage } from '../../../src/export/sheets/sheet-page.ts';
import { assertNear, newEngine } from '../support/engine.ts';
import { distance } from '../support/distance.ts';
import { readDxf, readPdf } from '../support/file-readers.ts';
import { offsetAreaByClipper2 } from '../support/reference.ts';
import { pathsOf, ringsOf } from '../support/svg-reader.ts';
import { nestSoon, never } from '../support/sheets.ts';
import { tools } from '../support/tools.ts';

const engine = newEngine();
const known = new Map<string, Promise<SheetJobs>>();

/** The same for every test that asks for the same. */
function laidOut(text: string): Promise<SheetJobs> {
  const made = known.get(text) ?? laidOutAnew(text);
  known.set(text, made);
  return made;
}

async function laidOutAnew(text: string): Promise<SheetJobs> {
  const options = { locate: () => undefined };
  const first = await engine.compute(text, options);
  assert.ok(first.tag, JSON.stringify(first.issues));
  const sheets = await sheetJobs(await reportsOf(engine, first, options), never, nestSoon);
  assert.ok(!('problem' in sheets), JSON.stringify(sheets));
  return sheets;
}

const names = ['Sorrel', 'Borage', 'Lovage', 'Chives', 'Rue'];

/** Names cut out, each with a ring, so that no two are alike. */
const script = (sheet: string, head = ''): string =>
  `tagwright: 1\ntitle: "Name, {name}"\n${head}stock: {kerf: 0.3 mm, thickness: 3 mm, material: walnut}\nsheet: ${sheet}\nbatch: [${names.join(', ')}]\nshapes:\n  word: {text: "{name}", font: Pacifico, width: 60 mm, grow: 1 mm}\npieces:\n  tag: {body: [word], parts: many, hanger: {ring: {on: word, at: left}}}\n`;

/** Plates with a hole and a line of engraving. */
const plate = (sheet: string, head = ''): string =>
  `tagwright: 1\ntitle: Plate\n${head}stock: {kerf: 0.2 mm}\nsheet: ${sheet}\nshapes:\n  plate: {rectangle: [40 mm, 20 mm]}\n  line: {rectangle: [20 mm, 2 mm]}\npieces:\n  tag: {body: [plate], engrave: [line], hanger: {hole: {diameter: 4 mm, inset: 3 mm, at: left}}}\n`;

describe('Tags on sheets', () => {
  it('lie with their names upright where turning would gain little', async () => {
    const { plan } = await laidOut(script('{size: [300, 200], margin: 5, gap: 3}'));
    const turned = plan.sheets.flatMap(({ pieces }) => pieces.filter(({ toSheet: { a } }) => Math.abs(a - 1) > 1e-9));
    assert.deepEqual([plan.sheets.length, turned.length], [1, 0]);
  });

  it('are all there, each as it is by itself, turned and moved at most', async () => {
    const { plan, jobs } = await laidOut(script('{size: [200, 120], margin: 5, gap: 3, copies: 2}'));
    const pieces = plan.sheets.flatMap((sheet) => sheet.pieces);
    assert.deepEqual(pieces.map(({ name }) => name).sort(), [...names, ...names].sort());
    for (const { piece, toSheet, region } of pieces) {
      assert.deepEqual(region, transform(piece.region, toSheet));
      assertNear(area(region), area(piece.region), 1e-6 * area(region));
      const { a, b, c, d } = toSheet;
      assertNear(a * d - b * c, 1, 1e-12, 'not mirrored');
      assertNear(b, 0, 1e-12, 'the grain keeps its way');
    }
    assert.equal(jobs.length, plan.sheets.length);
    // Hundreds of pieces wait for their files: none of their points is held.
    for (const path of jobs.flatMap(({ plan: { steps } }) => steps.flatMap(({ paths }) => paths)))
      assert.notEqual(path.contours, path.contours);
  });

  it('keep their distance in material, and from the edge with the beam’s path', async () => {
    // The finished pieces are half a kerf inside the beam’s path, and the beam takes half a kerf beside it.
    for (const gap of [0, 3]) {
      const { plan } = await laidOut(script(`{size: [200, 150], margin: 5, gap: ${gap}, turn: quarter}`));
      for (const { pieces } of plan.sheets) {
        for (const [i, one] of pieces.entries()) {
          const { minX, minY, maxX, maxY } = boundsOf(one.region)!;
          const nearest = Math.min(minX, minY, 200 - maxX, 150 - maxY);
          assert.ok(nearest >= 5 + 0.15 - 0.002, `${one.name}: ${nearest}`);
          // Point by point.
          for (const other of pieces.slice(i + 1)) {
            const apart = distance(one.region, other.region);
            assert.ok(apart >= gap + 2 * 0.3 - 0.002, `${one.name} and ${other.name} are ${apart} mm apart`);
          }
        }
      }
    }
  });

  it('are cut from files of the size of the sheet, in true millimetres, nothing lost on the way', async () => {
    const sheets = await laidOut(script('{size: [200, 120], margin: 5}'));
    const files = await sheetFiles(sheets, 'names', ['svg', 'dxf'], tools);
    const count = sheets.plan.sheets.length;
    assert.equal(Object.keys(files).length, 2 * count);
    for (const [index, { pieces }] of sheets.plan.sheets.entries()) {
      const svg = new TextDecoder().decode(files[`names-sheet-${index + 1}.svg`]);
      assert.match(svg, /width="200mm" height="120mm" viewBox="0 0 200 120"/);
      assert.match(svg, new RegExp(`<title>Name${count > 1 ? `, sheet ${index + 1} of ${count}` : ''}</title>`));
      const inSvg = ['cut-inner', 'cut-outer'].flatMap((group) => ringsOf(pathsOf(svg, group)));
      const read = readDxf(files[`names-sheet-${index + 1}.dxf`]!);
      const outer = read.outlines.filter(({ layer }) => layer === 'cut-outer');
      const parts = pieces.reduce((sum, { region }) => sum + region.filter((ring) => ringArea(ring) > 0).length, 0);
      assert.equal(outer.length, parts);
      assert.equal(inSvg.length, read.outlines.length);
      const total = (rings: readonly Ring[]) => rings.reduce((sum, ring) => sum + Math.abs(ringArea(ring)), 0);
      // Curves in the one are arcs in the other.
      assertNear(total(inSvg), total(read.outlines.map(({ ring }) => ring)), 0.001 * total(inSvg));
      for (const { ring } of read.outlines)
        for (const { x, y } of ring) assert.ok(x > 5 - 0.01 && x < 195.01 && y > 5 - 0.01 && y < 115.01);
      // The material of the pieces, grown by half a kerf by Clipper2.
      const inner = read.outlines.filter(({ layer }) => layer === 'cut-inner');
      const material = total(outer.map(({ ring }) => ring)) - total(inner.map(({ ring }) => ring));
      const wanted = pieces.reduce((sum, { region }) => sum + offsetAreaByClipper2(region, 0.15), 0);
      assertNear(material, wanted, 0.0005 * wanted);
    }
  });

  it('are engraved before anything is cut, and freed last', async () => {
    const { jobs } = await laidOut(plate('{size: [100, 70], margin: 2, copies: 6}'));
    assert.equal(jobs.length, 1);
    assert.deepEqual(
      jobs[0]!.plan.steps.map(({ operation, paths }) => [operation, paths.length]),
      [
        ['engrave', 6],
        ['cut-inner', 6],
        ['cut-outer', 6],
      ],
    );
  });

  it('are cut before the opening of another in which they lie', async () => {
    const text =
      'tagwright: 1\nsheet: {size: [70, 70], margin: 2}\npieces:\n' +
      '  frame: {body: [{rectangle: [60 mm, 60 mm]}], cut: [{rectangle: [40 mm, 40 mm]}]}\n' +
      '  token: {body: [{ellipse: 20 mm}], cut: [{ellipse: 5 mm}]}\n';
    const { plan, jobs } = await laidOut(text);
    const [frame, token] = plan.sheets[0]!.pieces.map(({ region }) => boundsOf(region)!);
    assert.ok(token!.minX > frame!.minX + 10 && token!.maxX < frame!.maxX - 10, 'the token lies in the frame');
    assert.deepEqual(
      jobs[0]!.plan.steps.flatMap(({ operation, paths }) => paths.map(({ piece }) => [operation, piece])),
      [
        ['cut-inner', 'token'],
        ['cut-inner', 'token'],
        ['cut-inner', 'frame'],
        ['cut-outer', 'frame'],
      ],
    );
  });

  it('take all that their tags take by themselves, on the whole of the sheets', async () => {
    const head =
      'machine: {cut: 10 mm/s, score: 50 mm/s, engrave: 200 mm/s, travel: 100 mm/s, acceleration: 1000 mm/s2}\n';
    const text = plate('{size: [100, 50], margin: 2, copies: 5}', head).replace(
      'kerf: 0.2 mm',
      'kerf: 0.2 mm, material: walnut, thickness: 3 mm, price: {amount: 4, per: sheet, currency: EUR}',
    );
    const { jobs, facts, plan } = await laidOut(text);
    // Two across and two up: (100 − 4) / 42.2 and (50 − 4) / 22.2.
    assert.deepEqual(
      plan.sheets.map(({ pieces }) => pieces.length),
      [4, 1],
    );
    const valueOf = new Map(facts.map(({ name, value }) => [name, value]));
    assert.equal(valueOf.get('Pieces'), '5');
    assert.equal(valueOf.get('Sheets'), '2 of 100 × 50 mm');
    // 40.2 × 20.2 mm less a hole of 3.8 mm, of 100 × 50 mm. Of the last sheet, 100 − 2 − 40.2 − 2.2 mm are left.
    assert.equal(valueOf.get('Filled'), '64 %, 16 %');
    assert.equal(valueOf.get('Left over'), '55.6 × 50 mm of the last');
    // Two sheets of 4 EUR; five rectangles of 40.2 × 20.2 mm, each what the tag costs by itself, of a sheet of 100 × 50 mm.
    assert.equal(valueOf.get('Whole sheets'), '8.00 EUR');
    const share = (40.2 * 20.2 * 4) / (100 * 50);
    assert.equal(valueOf.get('Material cost'), `${(5 * share).toFixed(2)} EUR for the boxes round the tags`);
    const alone = jobOf(await engine.compute(text, { locate: () => undefined }))!;
    const one = estimateJob(alone.tag, alone.plan);
    assertNear(one.cost!.amount, share, 1e-4);
    const all = jobs.map(({ tag, plan: work }) => estimateJob(tag, work));
    assertNear(
      all.reduce((sum, { cutLength }) => sum + cutLength, 0),
      5 * one.cutLength,
      0.01,
    );
    assertNear(
      all.reduce((sum, { engravedArea }) => sum + engravedArea, 0),
      5 * one.engravedArea,
      0.01,
    );
    assertNear(
      all.reduce((sum, { weight }) => sum + weight!, 0),
      5 * one.weight!,
      1e-6,
    );
    for (const { time } of all) assert.ok('seconds' in time && time.seconds > 0);
  });

  it('are named where they go on no sheet', async () => {
    const { plan, facts, jobs } = await laidOut(
      plate('{size: [45, 30]}').replace('pieces:', 'pieces:\n  wide: {body: [{rectangle: [60 mm, 10 mm]}]}'),
    );
    assert.deepEqual(
      plan.left.map(({ piece }) => piece.id),
      ['wide'],
    );
    assert.equal(facts.find(({ name }) => name === 'Too large')!.value, 'wide');
    assert.equal(jobs.length, 1);
  });

  it('are not laid out without a sheet, or without tags', async () => {
    const options = { locate: () => undefined };
    const without = await engine.compute(plate('{size: [45, 30]}').replace(/sheet: .*\n/, ''), options);
    const problemOf = async (reports: Parameters<typeof sheetJobs>[0]) => {
      const sheets = await sheetJobs(reports, never);
      return 'problem' in sheets && sheets.problem;
    };
    assert.match(String(await problemOf([without])), /^No sheet size given: add “sheet:/);
    assert.equal(await problemOf([]), 'There is nothing to lay out yet.');
    const many = await engine.compute(plate('{size: [45, 30], copies: 200}'), options);
    assert.equal(
      await problemOf(Array.from({ length: 21 }, () => many)),
      'These are 4200 pieces; at most 4000 are laid out at once. Ask for fewer “copies”, or split the table and lay out one part after the other.',
    );
  });

  it('stop being laid out once that is called off', async () => {
    const text = script('{size: [200, 120], copies: 20}');
    const options = { locate: () => undefined };
    const reports = await reportsOf(engine, await engine.compute(text, options), options);
    let left = 3;
    const checkpoint = () => (left-- > 0 ? Promise.resolve() : Promise.reject(new Error('enough')));
    await assert.rejects(sheetJobs(reports, checkpoint), /enough/);
  });

  it('say so where a tag has errors', async () => {
    const sheets = await laidOut(
      script('{size: [200, 120]}').replace(', parts: many', '').replace('grow: 1', 'grow: 0.2'),
    );
    assert.ok(sheets.jobs[0]!.issues.some(({ severity }) => severity === 'error'));
    const files = await sheetFiles(sheets, 'names', ['svg'], tools);
    assert.match(new TextDecoder().decode(files['names-sheet-1.svg']), /DO NOT CUT/);
  });

  it('are the same bytes every time', async () => {
    const text = script('{size: [200, 120], margin: 5}');
    const files = async () => sheetFiles(await laidOutAnew(text), 'names', ['svg', 'dxf', 'pdf', 'png'], tools);
    const [one, other] = [await files(), await files()];
    assert.deepEqual(Object.keys(one), Object.keys(other));
    for (const [name, bytes] of Object.entries(one)) assert.deepEqual(bytes, other[name], name);
  });
});

describe('The page of all sheets', () => {
  it('has them all, what they come to, and each at true size behind it', async () => {
    const sheets = await laidOut(script('{size: [200, 120], margin: 5, copies: 2}'));
    const files = await sheetFiles(sheets, 'names', ['pdf', 'png'], tools);
    assert.deepEqual(Object.keys(files).sort(), ['names-sheets.pdf', 'names-sheets.png']);
    const { pages } = await readPdf(files['names-sheets.pdf']!);
    assert.equal(pages.length, 1 + sheets.plan.sheets.length);
    // Points of 1/72 inch.
    for (const { width, height } of pages.slice(1)) {
      assertNear((width * 25.4) / 72, 200, 0.01);
      assertNear((height * 25.4) / 72, 120, 0.01);
    }
    const words = pages[0]!.text;
    for (const { name, value } of sheets.facts)
      assert.ok(words.includes(name) && words.includes(value), `${name} ${value}`);
    const { width } = PNG.sync.read(Buffer.from(files['names-sheets.png']!));
    assert.equal(width, 1600);
  });

  it('is written page by page: none waits for those behind it', async () => {
    const steps: string[] = [];
    function* pages(): Generator<Page> {
      for (const number of [1, 2, 3]) {
        steps.push(`made ${number}`);
        yield {
          width: 10,
          height: 10,
          words: [],
          get drawings() {
            steps.push(`written ${number}`);
            return [];
          },
        };
      }
    }
    assert.equal((await readPdf(await pdfOf(pages(), { title: 'Names' }, 'Sheets'))).pages.length, 3);
    assert.deepEqual(steps, ['made 1', 'written 1', 'made 2', 'written 2', 'made 3', 'written 3']);
  });

  it('shows the score lines of each piece, where the beam goes, in their colour', async () => {
    const text = plate('{size: [100, 50], margin: 2, copies: 2}', 'output: {score: {color: "#AA5500"}}\n').replace(
      'engrave: [line]',
      'engrave: [line], score: [{rectangle: [30 mm, 12 mm]}, {path: "M-8 8 L8 8", lines: true}]',
    );
    const sheets = await laidOut(text);
    const { drawings } = await sheetPage(sheets, tools);
    const scored = drawings.flatMap((each) => ('stroke' in each && each.stroke === '#AA5500' ? [each.path] : []));
    assert.equal(scored.length, 4);
    // A sheet of 100 mm, across a page of 210 less two margins of 15.
    const widths = scored.map((path) => {
      const xs = path.flatMap((step) => ('x' in step ? [step.x] : []));
      return (Math.max(...xs) - Math.min(...xs)) / 1.8;
    });
    const rounded = widths.map((width) => Number(width.toFixed(3)));
    assert.deepEqual(
      rounded.sort((a, b) => a - b),
      [16, 16, 30, 30],
    );
  });

  it('offers sizes where the spec has none', () => {
    assert.deepEqual(sheetSizesFor({ width: 350, height: 100 }, 'mm'), [
      { width: 400, height: 300 },
      { width: 600, height: 300 },
      { width: 600, height: 400 },
    ]);
  });

  it('writes no name beside a piece that is that name cut out, and one on a blank piece', async () => {
    const two = ['Sorrel', 'Borage'];
    const text = script('{size: [200, 120]}').replace(names.join(', '), two.join(', '));
    const wordsOf = async (spec: string) =>
      (await sheetPage(await laidOut(spec), tools)).words.map((word) => word.text).filter((word) => two.includes(word));
    assert.deepEqual(await wordsOf(text), []);
    const blank = text
      .replace(/word: .*/, 'word: {rectangle: [40 mm, 20 mm]}')
      .replace(', parts: many, hanger: {ring: {on: word, at: left}}', '');
    assert.deepEqual((await wordsOf(blank)).sort(), two.toSorted());
  });

  it('says which tags have errors, and rings them', async () => {
    const sheets = await laidOut(
      script('{size: [200, 120]}').replace(', parts: many', '').replace('grow: 1', 'grow: 0.2'),
    );
    const errors = sheets.jobs[0]!.issues.filter(({ severity }) => severity === 'error');
    const labels = new Set(errors.flatMap(({ label }) => label ?? []));
    assert.ok(labels.size > 0 && labels.size <= names.length);
    const page = await sheetPage(sheets, tools);
    const pageText = page.words.map(({ text }) => text).join(' ');
    const listed = [...labels].join(', ').replace(/, (?=[^,]*$)/, ' and ');
    assert.match(pageText, new RegExp(`DO NOT CUT: ${listed} have errors\\.`));
    const ringed = page.drawings.filter((each) => 'stroke' in each && each.stroke === '#B00020');
    assert.equal(ringed.length, labels.size);
  });
});
