import assert from 'node:assert/strict';
import { boundsOf } from '../../../src/geometry/measure.ts';
import { byOrder } from '../../../src/jobs/papers/by-order.ts';
import { jobAssembly } from '../../../src/jobs/papers/job-assembly.ts';
import { pieceTable } from '../../../src/jobs/papers/job-table.ts';
import { jobFiles } from '../../../src/jobs/papers/job-files.ts';
import type { LaidOutJob } from '../../../src/jobs/job.ts';
import { mapPages } from '../support/job-map.ts';
import { costsOfJob, estimateOfJob, piecesWanted } from '../../../src/jobs/totals.ts';
import { bySimpleReader } from '../support/csv-reader.ts';
import { assertNear } from '../support/engine.ts';
import { readDxf, readPdf } from '../support/file-readers.ts';
import { files, jobOf, laidOutJob, named } from '../support/jobs.ts';
import { never } from '../support/sheets.ts';
import { distanceByJts } from '../support/reference.ts';
import { pathsOf, ringsOf } from '../support/svg-reader.ts';
import { tools } from '../support/tools.ts';
import { area } from '../support/clipper2.ts';

const csv = 'order,quantity,name,rush\n1041,2,Sorrel,\n1042,1,Rue,yes\n1043,3,"Sea ""Kale"", young",\n1044,1,,\n';

const tags = ['{spec: layered.tag.yaml, quantity: 4}', '{spec: named.tag.yaml, orders: orders.csv}'];
const sheets = ['ply3: [{size: [140 mm, 110 mm]}]', 'cherry2: [{size: [200 mm, 100 mm]}]'];

let job: LaidOutJob;
let written: Readonly<Record<string, Uint8Array>>;
const text = (name: string) => new TextDecoder().decode(written[name]);

describe('The files of a job', () => {
  before(async () => {
    job = await laidOutJob(jobOf(tags, sheets, ['title: Saturday swap']), { ...files, 'orders.csv': csv });
    written = await jobFiles(job, tools, never);
  });

  it('have a cut file for each sheet, in both formats', () => {
    const cut = Object.keys(written).filter((name) => /\.(svg|dxf)$/.test(name));
    assert.deepEqual(cut.sort(), [
      'swap-cherry2-sheet-1.dxf',
      'swap-cherry2-sheet-1.svg',
      'swap-ply3-sheet-1.dxf',
      'swap-ply3-sheet-1.svg',
      'swap-ply3-sheet-2.dxf',
      'swap-ply3-sheet-2.svg',
    ]);
  });

  it('have every piece of every order once, and none twice', () => {
    // Four tags of two pieces, and 2 + 1 + 3 with names; the order without a name is left out.
    const [header, ...all] = bySimpleReader(text('swap-pieces.csv'));
    const rows = all.filter((row) => row[header!.indexOf('sheet')] !== 'none');
    assert.deepEqual([rows.length, all.length - rows.length], [4 * 2 + 6, 1]);
    assert.equal(piecesWanted(job.pieces.tags), rows.length);
    const column = (name: string) => header!.indexOf(name);
    const numbers = rows.map((row) => Number(row[column('number')]));
    assert.deepEqual(
      [...numbers].sort((a, b) => a - b),
      [...rows.keys()].map((index) => index + 1),
    );
    const kinds = new Map<string, number>();
    for (const row of rows) {
      const kind = ['order', 'tag', 'piece'].map((name) => row[column(name)]).join('/');
      kinds.set(kind, (kinds.get(kind) ?? 0) + 1);
    }
    assert.deepEqual(Object.fromEntries(kinds), {
      '//back': 4,
      '//front': 4,
      '1041/Sorrel/tag': 2,
      '1042/Rue/tag': 1,
      '1043/Sea "Kale", young/tag': 3,
    });
    assert.deepEqual(
      job.leftOut.map(({ order }) => order),
      ['1044'],
    );
  });

  it('have their table in inches where the job is', () => {
    const inMm = bySimpleReader(text('swap-pieces.csv'));
    const inches = bySimpleReader(pieceTable({ ...job, model: { ...job.model, units: 'in' } }));
    const heads = ['x', 'y', 'width', 'height'];
    for (const name of heads) {
      const [a, b] = [inMm[0]!.indexOf(`${name} mm`), inches[0]!.indexOf(`${name} in`)];
      assert.ok(a >= 0 && b === a, name);
      for (const [nth, row] of inMm.slice(1).entries())
        assertNear(Number(inches[nth + 1]![b]) * 25.4, Number(row[a]), 0.02, name);
    }
  });

  it('cut what the table says, where it says', () => {
    const [header, ...rows] = bySimpleReader(text('swap-pieces.csv'));
    const at = (row: readonly string[], name: string) => row[header!.indexOf(name)]!;
    for (const [sheet, height] of [
      ['ply3 sheet 1', 110],
      ['ply3 sheet 2', 110],
      ['cherry2 sheet 1', 100],
    ] as const) {
      const kerf = sheet.startsWith('ply3') ? 0.2 : 0.1;
      const own = rows.filter((row) => at(row, 'sheet') === sheet);
      const paths = pathsOf(text(`swap-${sheet.replaceAll(' ', '-')}.svg`), 'cut-outer');
      assert.equal(paths.length, own.length, sheet);
      for (const row of own) {
        const path = paths.find(({ piece }) => piece.startsWith(`${at(row, 'number')}:`))!;
        const [ring] = ringsOf([path]);
        const [xs, ys] = [ring!.map(({ x }) => x), ring!.map(({ y }) => height - y)];
        assertNear(Math.min(...xs) + kerf / 2, Number(at(row, 'x mm')), 0.006, 'x');
        assertNear(Math.min(...ys) + kerf / 2, Number(at(row, 'y mm')), 0.006, 'y');
        assertNear(Math.max(...xs) - Math.min(...xs) - kerf, Number(at(row, 'width mm')), 0.012, 'width');
      }
      const rings = ringsOf(paths);
      // Margins and gaps, by jts.
      for (const [index, ring] of rings.entries()) {
        for (const { x, y } of ring) assert.ok(x >= 3 - 1e-3 && y >= 3 - 1e-3, `${x} ${y}`);
        for (const other of rings.slice(0, index)) {
          const distance = distanceByJts([[...ring].reverse()], [[...other].reverse()]);
          assert.ok(distance >= 2 + kerf - 2e-3, `${distance} mm apart`);
        }
      }
    }
  });

  it('have in both formats the area that the specs ask for', () => {
    const areaIn = (
      names: readonly string[],
      read: (name: string) => readonly (readonly { x: number; y: number }[])[],
    ) => names.flatMap(read).reduce((sum, ring) => sum + Math.abs(area([ring])), 0);
    const grown = (width: number, height: number, kerf: number) =>
      (width + kerf) * (height + kerf) - (4 - Math.PI) * (kerf / 2) ** 2;
    const expected = {
      ply3: 4 * grown(60, 40, 0.2) + 6 * grown(50, 20, 0.2),
      cherry2: 4 * grown(30, 20, 0.1),
    };
    for (const stock of ['ply3', 'cherry2'] as const) {
      const names = Object.keys(written).filter((name) => name.includes(stock));
      const svg = areaIn(
        names.filter((name) => name.endsWith('.svg')),
        (name) => ringsOf(pathsOf(text(name), 'cut-outer')),
      );
      const dxf = areaIn(
        names.filter((name) => name.endsWith('.dxf')),
        (name) =>
          readDxf(written[name]!)
            .outlines.filter(({ layer }) => layer === 'cut-outer')
            .map(({ ring }) => ring),
      );
      assertNear(svg, expected[stock], 0.5, `${stock} as SVG`);
      assertNear(dxf, expected[stock], 0.5, `${stock} as DXF`);
    }
  });

  it('weigh and cost what that comes to', () => {
    const weight = (4 * 2400 + 6 * 1000) * 3 * 700e-6 + 4 * 600 * 2 * 600e-6;
    assertNear(estimateOfJob(job)!.weight!, weight, 0.01, 'weight');
    const { material, sheets: whole } = costsOfJob(job);
    assertNear(whole!.amount, (2 * 140 * 110 * 6 + 200 * 100 * 50) / 1e6, 1e-9, 'whole sheets');
    const each = (60.2 * 40.2 * 6 + 30.1 * 20.1 * 50) / 1e6;
    assertNear(material!.amount, 4 * each + (6 * 50.2 * 20.2 * 6) / 1e6, 1e-6, 'material');
  });

  it('show each sheet on the map, with every number, and the lines that are left out', async () => {
    const { pages } = await readPdf(written['swap-sheets.pdf']!);
    const all = pages.map(({ text: words }) => words);
    assert.equal(pages.length, 4);
    assert.match(all[0]!, /Saturday swap/);
    for (const [index, words] of all.entries()) assert.ok(words.includes(`${index + 1} of 4`), 'numbered through');
    assert.match(all[0]!, /Not in the cut files.*1044/s);
    for (const [index, { name, pieces }] of job.layout.sheets.entries()) {
      const words = pages[index + 1]!.text;
      assert.ok(words.includes(name), name);
      for (const { number } of pieces)
        assert.ok(
          words.split(/\s+/).filter((word) => word.replace(/»$/, '') === String(number)).length >= 2,
          `${number}, on the map and in the list`,
        );
    }
  });

  it('say on the map what to look at, how each stock is worked and what to beware of', async () => {
    const workshop = (files['shop.workshop.yaml'] as string)
      .replace('machine: {cut: 10 mm/s,', 'machine: {power: {cut: 75 %}, cut: 10 mm/s,')
      .replace('material: cherry,', 'material: cherry, caution: Mask both faces.,');
    const beside = { ...files, 'shop.workshop.yaml': workshop, 'orders.csv': csv };
    const thin = (files['named.tag.yaml'] as string).replace('height: 3 mm', 'height: 1.2 mm');
    const made = await laidOutJob(jobOf(tags, sheets), { ...beside, 'named.tag.yaml': thin });
    const pages = await mapPages(made, tools);
    const words = pages.map((page) => page.words.map(({ text: word }) => word).join(' '));
    const summary = words.filter((page) => !/Work in this order/.test(page)).join(' ');
    const warnings = made.issues.filter(({ severity }) => severity === 'warning');
    assert.ok(warnings.length > 0);
    for (const warning of warnings) {
      const { text, spec, line } = made.warnings.get(warning)!;
      assert.ok(summary.includes(`${text} (${spec}, line ${line})`), warning.message);
    }
    assert.match(summary, /To look at/);
    assert.match(
      summary,
      /Material: ply3 .*kerf of 0\.2 mm.*Set by hand engrave: power not set, 200 mm\/s; cut 75 %, 10 mm\/s.*Material: cherry2/,
    );
    assert.match(summary, /Safety · cherry2: Mask both faces\. · .*extinguisher/);
    assert.equal(
      words.filter((page) => /Work in this order.*Total, about/.test(page)).length,
      made.layout.sheets.length,
    );
  });

  it('show how the layers of each spec go together, once, and nothing where there are none', async () => {
    const { pages } = await readPdf(written['swap-assembly.pdf']!);
    const [words] = pages.map((page) => page.text);
    assert.match(words!, /layered: 4 tags/);
    assert.match(words!, /Put together/);
    assert.equal(pages.filter((page) => /Assembly sheet, for the bench/.test(page.text)).length, 1);
    const flat = await laidOutJob(jobOf([tags[1]!], sheets), { ...files, 'orders.csv': csv });
    assert.ok(!Object.keys(await jobFiles(flat, tools, never)).some((name) => name.includes('assembly')));
  });

  it('show where the layers of each different tag go, with its name, and the steps once', async () => {
    const glued = `tagwright: 1
use: shop.workshop.yaml
stock: ply3
shapes: {plate: {rectangle: [60 mm, 25 mm]}, name: {text: "{name}", font: Nunito, weight: 800, height: 9 mm}}
pieces: {back: {body: [plate]}, letters: {body: [name], parts: many, glue_to: back, stock: cherry2}}
`;
    const orders = 'order,name,quantity,note\n7,Bo,2,\n8,Ida,1,\n9,Bo,1,left\n9,Rue,1,\n';
    const beside = { ...files, 'glued.tag.yaml': glued, 'orders.csv': orders };
    const made = await laidOutJob(jobOf(['{spec: glued.tag.yaml, orders: orders.csv}', tags[0]!], sheets), beside);
    const pages = await jobAssembly(made, tools);
    const words = pages.map((page) => page.words.map(({ text: word }) => word).join(' '));
    const all = words.join(' ');
    assert.match(all, /glued: 5 tags The steps are those of “Bo”/);
    for (const [name, copies] of [
      ['Bo', '3 tags'],
      ['Ida', '1 tag'],
      ['Rue', '1 tag'],
    ])
      assert.ok(all.includes(`“${name}”`) && all.includes(`${copies}, at true size`), name);
    assert.equal(all.split('“back” down with its face up').length - 1, 2, 'once for each spec');
    // One for each letter.
    assert.match(all, /2 Glue the 2 parts of “letters”/);
    assert.match(all, /Layer 2: Glue the 3 parts of “letters” onto “back”\./);
    // At true size, as the engine has them.
    const blue = pages.flatMap(({ drawings }) =>
      drawings.flatMap((each) => ('stroke' in each && each.stroke === '#0072B2' ? [each.path] : [])),
    );
    const layers = [...new Set(made.pieces.tags.map(({ tag }) => tag))].map(({ pieces }) =>
      boundsOf(pieces[1]!.region)!,
    );
    const widthOf = (points: readonly { readonly x: number }[]) =>
      Math.max(...points.map(({ x }) => x)) - Math.min(...points.map(({ x }) => x));
    const drawn = blue.map((path) => widthOf(path.flatMap((point) => ('x' in point ? [point] : []))));
    assert.equal(drawn.length, 4);
    for (const { minX, maxX } of layers)
      assert.ok(
        drawn.some((width) => Math.abs(width - (maxX - minX)) < 0.1),
        `${maxX - minX} in ${drawn.join()}`,
      );
    assert.deepEqual(
      words.map((page) => /(\d+) of (\d+)$/.exec(page)?.slice(1).map(Number)),
      pages.map((_, index) => [index + 1, pages.length]),
    );
  });

  it('show one drawing of the layers where only what is engraved differs', async () => {
    const carved = (files['layered.tag.yaml'] as string)
      .replace('shapes: {', 'shapes: {name: {text: "{name}", font: Nunito, height: 3 mm}, ')
      .replace('front: {', 'front: {engrave: [name], ');
    const beside = { ...files, 'layered.tag.yaml': carved, 'orders.csv': csv };
    const made = await laidOutJob(jobOf(['{spec: layered.tag.yaml, orders: orders.csv}'], sheets), beside);
    const [page, ...others] = await jobAssembly(made, tools);
    const all = page!.words.map(({ text: word }) => word).join(' ');
    assert.match(all, /layered: 6 tags .*Layer 1 from the front, at true size: blue is where layer 2 goes/);
    assert.doesNotMatch(all, /Rue|Sorrel/);
    assert.deepEqual(others, []);
  });

  it('list by order what goes into each parcel', async () => {
    const { pages } = await readPdf(written['swap-pick-list.pdf']!);
    const words = pages.map(({ text: own }) => own).join('\n');
    assert.ok(words.indexOf('Order 1042') < words.indexOf('Order 1041'), 'what is in a hurry comes first');
    assert.match(words, /3 × Sea "Kale", young/);
    assert.match(words, /Not made: 1 × .*no “name”/);
    const labels = bySimpleReader(text('swap-labels.csv'));
    assert.deepEqual(labels.slice(1), [
      ['1042', 'yes', '1', '1', '1 × Rue', ''],
      ['1041', '', '2', '2', '2 × Sorrel', ''],
      ['1043', '', '3', '3', '3 × Sea "Kale", young', ''],
    ]);
    const printed = await readPdf(written['swap-labels.pdf']!);
    const [first] = printed.pages;
    for (const order of ['1041', '1042', '1043']) assert.ok(first!.text.includes(order), order);
  });

  it('say on the label of a parcel what is not in it, and on the pick list', async () => {
    const lines = 'order,name,quantity\n510,Rue,2\n510,Dill,1.5\n511,Ida,1\n';
    const part = await laidOutJob(jobOf([tags[1]!], sheets), { ...files, 'orders.csv': lines });
    const made = await jobFiles(part, tools, never);
    const labels = bySimpleReader(new TextDecoder().decode(made['swap-labels.csv']));
    assert.deepEqual(labels, [
      ['order', 'rush', 'tags', 'pieces', 'contents', 'missing'],
      ['510', '', '2', '2', '2 × Rue', 'Dill'],
      ['511', '', '1', '1', '1 × Ida', ''],
    ]);
    for (const paper of ['swap-labels.pdf', 'swap-pick-list.pdf']) {
      const [page] = (await readPdf(made[paper]!)).pages;
      assert.equal(page!.text.match(/Not complete: without Dill/g)?.length, 1, paper);
    }
    // On the label, before what is in the parcel.
    const [label] = (await readPdf(made['swap-labels.pdf']!)).pages;
    assert.ok(label!.text.indexOf('Not complete') < label!.text.indexOf('2 × Rue'));
  });

  it('tell tags of one label apart, by the rest of their line and by their spec', async () => {
    const roles = named.replace('{name}"', '{name} {role}"');
    const both = { ...files, 'roles.tag.yaml': roles, 'roles.csv': 'order,name,role\n7,Bo,seeds\n7,Bo,cake\n7,Ida,\n' };
    const asked = [...tags.slice(1), '{spec: roles.tag.yaml, orders: roles.csv}'];
    const names = 'order,name,note\n7,Ida,by the gate\n8,Bo,\n8,Bo,left\n';
    const two = await laidOutJob(jobOf(asked, sheets), { ...both, 'orders.csv': names });
    const contents = byOrder(two).map(({ order, tags: own }) => [
      order,
      ...own.map(({ name, copies }) => `${copies} × ${name}`),
    ]);
    // Of a column that no tag asks for nothing is said: those two are the same.
    assert.deepEqual(contents, [
      ['7', '1 × Ida (named)', '1 × Bo, seeds', '1 × Bo, cake', '1 × Ida (roles)'],
      ['8', '2 × Bo'],
    ]);
    const made = await jobFiles(two, tools, never);
    const { pages } = await readPdf(made['swap-pick-list.pdf']!);
    assert.match(pages.map(({ text: own }) => own).join('\n'), /1 × Bo, seeds[^]*1 × Ida \(roles\)/);
  });

  it('are the same bytes every time', async () => {
    const again = await laidOutJob(jobOf(tags, sheets, ['title: Saturday swap']), { ...files, 'orders.csv': csv });
    const second = await jobFiles(again, tools, never);
    assert.deepEqual(Object.keys(second), Object.keys(written));
    for (const [name, bytes] of Object.entries(second))
      assert.deepEqual(Buffer.from(bytes), Buffer.from(written[name]!), name);
  });

  it('hold no formulas, whatever an order is called', async () => {
    const hostile = 'order,name\n"=1+2","<b>&amp;"\n@x,"+Rue"\n';
    const odd = await laidOutJob(jobOf([tags[1]!], sheets), { ...files, 'orders.csv': hostile });
    const made = await jobFiles(odd, tools, never);
    const rows = bySimpleReader(new TextDecoder().decode(made['swap-pieces.csv']));
    for (const cell of rows.flat()) assert.ok(!/^[=+@-]/.test(cell), cell);
    const svg = new TextDecoder().decode(made['swap-ply3-sheet-1.svg']);
    assert.ok(!svg.includes('<b>'));
  });

  it('have a row for each tag that is left out, with the reason, so that the table adds up', async () => {
    const beside = {
      ...files,
      'orders.csv': 'order,name,quantity\n7,Rue,2\n7,Rue,3\n8,Dill,one\n9,,4\n10,Sage,0\n11,Kale,1\n',
    };
    const narrow = ['ply3: [{size: [106 mm, 30 mm], count: 2}]'];
    const laid = await laidOutJob(jobOf(['{spec: named.tag.yaml, orders: orders.csv}'], narrow), beside);
    const [header, ...rows] = bySimpleReader(pieceTable(laid));
    const at = (column: string) => header!.indexOf(column);
    const ordered = new Map([
      ['7', 5],
      // Nobody knows how many.
      ['8', 1],
      ['9', 4],
      ['10', 1],
      ['11', 1],
    ]);
    for (const [order, count] of ordered)
      assert.equal(rows.filter((row) => row[at('order')] === order).length, count, order);
    assert.equal(rows.length, 12);
    const copies = rows.filter((row) => row[at('order')] === '7').map((row) => row[at('copy')]);
    assert.deepEqual(new Set(copies), new Set(['1', '2', '3', '4', '5']));
    assert.equal(copies.length, 5);
    for (const row of rows) {
      assert.equal(row.length, header!.length);
      assert.equal(row[at('sheet')] === 'none', row[at('why')] !== '', row.join());
    }
    const whyOf = (order: string) =>
      rows.find((row) => row[at('order')] === order && row[at('why')] !== '')![at('why')];
    assert.match(whyOf('8')!, /“one” is not a quantity/);
    assert.match(whyOf('9')!, /it has no “name”/);
    assert.equal(whyOf('7'), 'All sheets of “ply3” are used up.');
  });
});
