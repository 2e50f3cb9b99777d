/** Pieces that lie where the job says. Distances by jts, places by plain arithmetic. */

import assert from 'node:assert/strict';
import { boundsOf } from '../../../src/geometry/measure.ts';
import type { LaidOutJob } from '../../../src/jobs/job.ts';
import type { LaidJobPiece } from '../../../src/jobs/layout/layout.ts';
import { jobFacts } from '../../../src/jobs/totals.ts';
import { checkedJob, files, jobOf, laidOutJob } from '../support/jobs.ts';
import { distanceByJts } from '../support/reference.ts';

/** Plates of 60 × 40 mm on sheets of 200 × 100 mm with a margin of 3 mm; 2 mm of material between two, and on either side what the beam takes, 0.2 mm. */
const sheets = ['ply3: [{size: [200 mm, 100 mm]}]'];
const plates = (quantity: number) => [`{spec: plate.tag.yaml, quantity: ${quantity}}`];
const gap = 2.4;

const fixed = (...entries: readonly string[]) => ['fixed:', ...entries.map((entry) => `  - ${entry}`)];
const plateAt = (at: string, more = 'sheet: 1') => `{spec: plate.tag.yaml, at: [${at}], ${more}}`;

function assertApart({ layout }: LaidOutJob): void {
  for (const { pieces } of layout.sheets) {
    for (const [i, one] of pieces.entries()) {
      for (const other of pieces.slice(0, i)) {
        const distance = distanceByJts(one.enclosed, other.enclosed);
        assert.ok(distance >= 2 - 1e-3, `${distance} mm apart`);
      }
    }
  }
}

const fixedOn = ({ layout }: LaidOutJob) =>
  layout.sheets.flatMap(({ name, pieces }) =>
    pieces.flatMap((piece) => (piece.fixed ? [{ sheet: name, piece, box: boundsOf(piece.region)! }] : [])),
  );

const countOf = ({ layout }: LaidOutJob) => layout.sheets.reduce((sum, { pieces }) => sum + pieces.length, 0);

describe('A piece that a job fixes', () => {
  it('lies where it says, turned as it says, and the others go round it', async () => {
    for (const [turned, width, height] of [
      [0, 60, 40],
      [90, 40, 60],
      [180, 60, 40],
      // Its corners: 60 cos 30° + 40 sin 30°, and 60 sin 30° + 40 cos 30°.
      [30, 71.962, 64.641],
    ] as const) {
      const free = ['ply3: [{size: [200 mm, 100 mm], turn: quarter}]'];
      const text = jobOf(plates(7), free, fixed(plateAt('31 mm, 21 mm', `sheet: 1, turned: ${turned}`)));
      const laid = await laidOutJob(text);
      assert.deepEqual(laid.issues, []);
      const [{ sheet, box }, ...more] = fixedOn(laid) as [ReturnType<typeof fixedOn>[0]];
      assert.deepEqual([sheet, more], ['ply3 sheet 1', []]);
      assert.ok(Math.abs(box.minX - 31) < 1e-6 && Math.abs(box.minY - 21) < 1e-6);
      assert.ok(Math.abs(box.maxX - box.minX - width) < 1e-3, `${turned}: ${box.maxX - box.minX}`);
      assert.ok(Math.abs(box.maxY - box.minY - height) < 1e-3);
      assert.equal(countOf(laid), 7);
      assertApart(laid);
    }
  });

  it('is turned against the clock', async () => {
    const named = ['{spec: named.tag.yaml, orders: orders.csv}'];
    const beside = { ...files, 'orders.csv': 'name\nRue\n' };
    const text = jobOf(named, sheets, fixed('{spec: named.tag.yaml, sheet: 1, at: [10 mm, 10 mm], turned: 90}'));
    const [{ piece }] = fixedOn(await laidOutJob(text, beside)) as unknown as [{ piece: LaidJobPiece }];
    // What pointed to the right points up.
    const { a, b } = piece.toSheet;
    assert.deepEqual([a + 0, b], [0, 1]);
  });

  it('keeps its sheet, whatever else goes where', async () => {
    const text = jobOf(plates(7), sheets, fixed(plateAt('70 mm, 30 mm', 'sheet: 2')));
    const laid = await laidOutJob(text);
    assert.deepEqual(
      laid.layout.sheets.map(({ name }) => name),
      ['ply3 sheet 1', 'ply3 sheet 2'],
    );
    assert.equal(fixedOn(laid)[0]!.sheet, 'ply3 sheet 2');
    assert.equal(countOf(laid), 7);
    assertApart(laid);
    // Even if it is all that lies there.
    const alone = await laidOutJob(jobOf(plates(1), sheets, fixed(plateAt('70 mm, 30 mm', 'sheet: 3'))));
    assert.deepEqual(
      alone.layout.sheets.map(({ name, pieces }) => [name, pieces.length]),
      [['ply3 sheet 3', 1]],
    );
  });

  it('goes on an offcut as well, and what is laid there goes round it', async () => {
    const beside = {
      ...files,
      'ply3.offcuts.yaml': 'tagwright_offcuts: 1\noffcuts:\n  - {id: 4, size: [160 mm, 90 mm]}\n',
    };
    const from = ['ply3: [{offcuts: ply3.offcuts.yaml}, {size: [200 mm, 100 mm]}]'];
    const text = jobOf(plates(6), from, fixed(plateAt('95 mm, 45 mm', 'offcut: 4')));
    const laid = await laidOutJob(text, beside);
    assert.deepEqual(laid.issues, []);
    assert.equal(fixedOn(laid)[0]!.sheet, 'ply3 offcut 4');
    assert.ok(laid.layout.sheets[0]!.pieces.length > 1, 'others too');
    assert.equal(countOf(laid), 6);
    assertApart(laid);
  });

  it('is one of several by its order, its tag, its copy', async () => {
    const beside = { ...files, 'orders.csv': 'order,name,quantity\n7,Rue,2\n8,Kale,2\n' };
    const text = jobOf(
      ['{spec: named.tag.yaml, orders: orders.csv}'],
      sheets,
      fixed('{spec: named.tag.yaml, order: 8, tag: Kale, copy: 2, sheet: 1, at: [120 mm, 60 mm]}'),
    );
    const laid = await laidOutJob(text, beside);
    assert.deepEqual(laid.issues, []);
    const [{ piece }] = fixedOn(laid) as unknown as [{ piece: LaidJobPiece }];
    assert.deepEqual([piece.of.of.order, piece.of.of.label, piece.of.copy], ['8', 'Kale', 2]);
  });

  it('keeps its order with it, where orders are kept together', async () => {
    const beside = {
      ...files,
      'plate.tag.yaml': `${files['plate.tag.yaml'] as string}title: Plate {name}\n`,
      'orders.csv': 'order,name,quantity\na,Rue,3\nb,Kale,3\nc,Sorrel,3\nd,Lovage,3\n',
    };
    const text = jobOf(['{spec: plate.tag.yaml, orders: orders.csv}'], sheets, [
      'keep_together: true',
      ...fixed('{spec: plate.tag.yaml, order: d, tag: Lovage, sheet: 1, at: [3.1 mm, 3.1 mm]}'),
    ]);
    const laid = await laidOutJob(text, beside);
    const sheetsWith = (order: string) =>
      laid.layout.sheets.filter(({ pieces }) => pieces.some(({ of }) => of.of.order === order)).length;
    assert.deepEqual(['a', 'b', 'c', 'd'].map(sheetsWith), [1, 1, 1, 1]);
    assert.equal(countOf(laid), 12);
    assertApart(laid);
  });
});

describe('What cannot be fixed', () => {
  const beside = { ...files, 'orders.csv': 'order,name,quantity\n7,Rue,2\n8,Kale,1\n' };
  const tags = ['{spec: plate.tag.yaml, quantity: 3}', '{spec: named.tag.yaml, orders: orders.csv}'];

  /** The only problem: its severity, what is marked, what is said. */
  async function problem(...entries: readonly string[]): Promise<readonly [string, string, string]> {
    const { issues, source } = await checkedJob(jobOf(tags, sheets, fixed(...entries)), beside);
    assert.equal(issues.length, 1, issues.map(({ message }) => message).join('\n'));
    const { severity, range, message } = issues[0]!;
    return [severity, source.text.slice(range.start, range.end), message];
  }

  async function silent(...entries: readonly string[]): Promise<void> {
    const { issues } = await checkedJob(jobOf(tags, sheets, fixed(...entries)), beside);
    assert.deepEqual(
      issues.map(({ message }) => message),
      [],
    );
  }

  it('is told at what is unknown, and laid out like the rest', async () => {
    const named = (more: string) => `{spec: named.tag.yaml, sheet: 1, at: [5 mm, 5 mm], ${more}}`;
    const cases: readonly [entry: string, marked: string, message: RegExp][] = [
      ['{spec: plat.tag.yaml, sheet: 1, at: [5, 5]}', 'plat.tag.yaml', /Nothing .* Did you mean “plate\.tag\.yaml”\?/],
      [named('order: 9'), '9', /There is no order “9” among these: “7”, “8”\./],
      [named('order: 7, tag: Rue, copy: 3'), '3', /There are only 2 copies of “Rue” of order 7\./],
      [named('order: 7, tag: Kale'), 'Kale', /There is no tag “Kale” among these: “Rue”\./],
      [named('order: 8, piece: back'), 'back', /There is no piece “back” among these: “tag”\./],
      [plateAt('5 mm, 5 mm', 'offcut: 2'), '2', /“ply3” has no free offcut 2\./],
    ];
    for (const [entry, marked, message] of cases) {
      const [severity, text, reportedText] = await problem(entry);
      assert.deepEqual([severity, text], ['error', marked]);
      assert.match(reportedText, message);
    }
    const laid = await laidOutJob(jobOf(tags, sheets, fixed(named('order: 9'))), beside);
    assert.equal(countOf(laid), 6);
  });

  it('is told where it says too little or too much', async () => {
    assert.match(
      (await problem('{spec: named.tag.yaml, sheet: 1, at: [5, 5]}'))[2],
      /Say which order of named\.tag\.yaml: “7”, “8”\./,
    );
    assert.match((await problem('{spec: plate.tag.yaml, at: [5, 5]}'))[2], /Say on which “sheet” the piece lies/);
    assert.match((await problem(plateAt('5, 5', 'sheet: 1, offcut: 2')))[2], /not on both/);
    assert.match((await problem(plateAt('5, 5'), plateAt('80, 5')))[2], /is fixed already/);
  });

  it('is a sheet that there is not', async () => {
    const counted = ['ply3: [{size: [200 mm, 100 mm], count: 2}]'];
    const text = jobOf(plates(3), counted, fixed(plateAt('5 mm, 5 mm', 'sheet: 3')));
    const { issues } = await checkedJob(text);
    assert.deepEqual(
      issues.map(({ message }) => message),
      ['There is no sheet 3: “ply3” has only 2 sheets.'],
    );
    assert.deepEqual((await checkedJob(text.replace('sheet: 3', 'sheet: 2'))).issues, []);
  });

  it('reaches beyond the edge with its cut, or into the margin', async () => {
    // The beam takes 0.1 mm beyond the finished edge: 0.1 + 60 + 139.9 are the sheet's 200 mm.
    const [severity, marked, message] = await problem(plateAt('139.95 mm, 10 mm'));
    assert.deepEqual([severity, marked], ['error', '[139.95 mm, 10 mm]']);
    assert.match(message, /reaches 0\.05 mm beyond the edge of the sheet with its cut/);
    assert.match((await problem(plateAt('139.9 mm, 10 mm')))[2], /lies in the margin of 3\.0 mm/);
    assert.equal((await problem(plateAt('3 mm, 10 mm')))[0], 'warning');
    await silent(plateAt('3.1 mm, 10 mm'));
    await silent(plateAt('136.9 mm, 56.9 mm'));
  });

  it('lies across the grain, where the sheets do not allow it and the stock has any', async () => {
    const [severity, marked, message] = await problem(plateAt('10 mm, 10 mm', 'sheet: 1, turned: 90'));
    assert.deepEqual([severity, marked], ['warning', '90']);
    assert.match(message, /“tag” lies across the grain, unlike the others of “ply3”/);
    assert.match((await problem(plateAt('10 mm, 10 mm', 'sheet: 1, turned: -90')))[2], /across/);
    assert.match((await problem(plateAt('10 mm, 10 mm', 'sheet: 1, turned: 30')))[2], /askew to the grain/);
    for (const turned of [0, 180, -180, 360, 3, 177])
      await silent(plateAt('10 mm, 10 mm', `sheet: 1, turned: ${turned}`));
    const across = fixed(plateAt('10 mm, 10 mm', 'sheet: 1, turned: 90'));
    const free = ['ply3: [{size: [200 mm, 100 mm], turn: quarter}]'];
    assert.deepEqual((await checkedJob(jobOf(plates(1), free, across))).issues, []);
    const acrylic = {
      ...files,
      'shop.workshop.yaml': (files['shop.workshop.yaml'] as string).replace('birch plywood', 'acrylic'),
    };
    assert.deepEqual((await checkedJob(jobOf(plates(1), sheets, across), acrylic)).issues, []);
  });

  it('overlaps another, or comes too close to it', async () => {
    const other = (x: number) => plateAt(`${x} mm, 10 mm`, 'sheet: 1, copy: 2');
    // From 10 to 70 mm, and the beam's 0.1 mm on either side.
    const [severity, , message] = await problem(plateAt('10 mm, 10 mm'), other(70.1));
    assert.equal(severity, 'error');
    assert.match(message, /overlaps .*, which is fixed above; it is laid out like any other/);
    assert.deepEqual((await problem(plateAt('10 mm, 10 mm'), other(70 + gap - 0.05)))[0], 'warning');
    await silent(plateAt('10 mm, 10 mm'), other(70 + gap));
    await silent(plateAt('10 mm, 10 mm'), plateAt('20 mm, 10 mm', 'sheet: 2, copy: 2'));
  });
});

describe('Round a fixed piece', () => {
  const tags = ['{spec: plate.tag.yaml, orders: orders.csv}'];
  const beside = (csv: string) => ({
    ...files,
    'plate.tag.yaml': `${files['plate.tag.yaml'] as string}title: Plate {name}\n`,
    'orders.csv': csv,
  });
  const sheetsWith = ({ layout }: LaidOutJob, order: string) =>
    layout.sheets.filter(({ pieces }) => pieces.some(({ of }) => of.of.order === order)).map(({ name }) => name);
  const told = ({ issues, source }: LaidOutJob) =>
    issues.map(({ severity, message, range }) => [severity, source.position(range.start).line, message]);

  // Six plates go on a sheet, five where one of them lies in its middle.
  const inTheMiddle = (order: string, tag: string, sheet = 1) =>
    `{spec: plate.tag.yaml, order: ${order}, tag: ${tag}, sheet: ${sheet}, at: [70 mm, 30 mm]}`;

  it('orders stay together, on a sheet more if need be', async () => {
    // Without it a and b fill the first sheet; with it that has room for three plates beside a, and b goes with none of the others.
    const csv = 'order,name,quantity\na,Rue,2\nb,Kale,4\nc,Sorrel,5\n';
    const laid = await laidOutJob(
      jobOf(tags, sheets, ['keep_together: true', ...fixed(inTheMiddle('a', 'Rue'))]),
      beside(csv),
    );
    assert.deepEqual(
      ['a', 'b', 'c'].map((order) => sheetsWith(laid, order).length),
      [1, 1, 1],
    );
    assert.deepEqual([countOf(laid), laid.layout.sheets.length], [11, 3]);
    assert.deepEqual(laid.issues, []);
    assertApart(laid);
  });

  it('orders are together with what is fixed of them, on each of the sheets', async () => {
    // Six plates in all, which one sheet would hold; each of the two that are fixed has another of its order.
    const csv = 'order,name,quantity\na,Rue,2\nb,Kale,2\nc,Sorrel,2\n';
    const entries = fixed(inTheMiddle('b', 'Kale'), inTheMiddle('a', 'Rue', 2));
    const laid = await laidOutJob(jobOf(tags, sheets, ['keep_together: true', ...entries]), beside(csv));
    assert.deepEqual(sheetsWith(laid, 'a'), ['ply3 sheet 2']);
    assert.deepEqual(sheetsWith(laid, 'b'), ['ply3 sheet 1']);
    assert.equal(sheetsWith(laid, 'c').length, 1);
    assert.deepEqual(laid.issues, []);
  });

  it('an order that no longer goes on one sheet is told, at what is fixed', async () => {
    const csv = 'order,name,quantity\na,Rue,6\nb,Kale,1\n';
    const laid = await laidOutJob(
      jobOf(tags, sheets, ['keep_together: true', ...fixed(inTheMiddle('a', 'Rue'))]),
      beside(csv),
    );
    assert.equal(sheetsWith(laid, 'a').length, 2);
    const line = laid.source.text.split('\n').findIndex((each) => each.includes('order: a')) + 1;
    assert.deepEqual(told(laid), [
      ['info', line, 'Order a lies on ply3 sheet 1 and ply3 sheet 2, because of what is fixed.'],
    ]);
    assert.ok(
      jobFacts(laid).some(
        ({ name, value }) => name === 'Not together' && value === 'order a on several sheets of ply3',
      ),
    );
    assertApart(laid);
    // It would be silly to say so of orders that nobody wants together.
    const free = await laidOutJob(jobOf(tags, sheets, fixed(inTheMiddle('a', 'Rue'))), beside(csv));
    assert.deepEqual(free.issues, []);
  });

  it('an order that is more than a sheet is told at what asks for it to be kept together', async () => {
    const csv = 'order,name,quantity\na,Rue,8\n';
    const laid = await laidOutJob(jobOf(tags, sheets, ['keep_together: true']), beside(csv));
    assert.deepEqual(told(laid), [
      ['info', 3, 'Order a lies on ply3 sheet 1 and ply3 sheet 2: no sheet was found to have room for all of it.'],
    ]);
  });

  it('rush orders lie on as few sheets as without it, and ordinary ones give way', async () => {
    // A sheet is the rush order and one other plate, wherever that is fixed.
    const csv = 'order,name,quantity,rush\na,Rue,5,\nb,Kale,2,\nd,Borage,5,yes\n';
    for (const at of ['3.1 mm, 3.1 mm', '65.5 mm, 45.5 mm', '127.9 mm, 3.1 mm']) {
      const entry = `{spec: plate.tag.yaml, order: b, tag: Kale, copy: 2, sheet: 1, at: [${at}]}`;
      const laid = await laidOutJob(jobOf(tags, sheets, fixed(entry)), beside(csv));
      assert.equal(sheetsWith(laid, 'd').length, 1, at);
      assert.deepEqual([countOf(laid), laid.layout.sheets.length], [12, 2]);
      assert.deepEqual(laid.issues, []);
      assertApart(laid);
    }
  });

  it('rush orders that need a sheet more are told, with what they would need', async () => {
    const csv = 'order,name,quantity,rush\na,Rue,1,\nd,Borage,6,yes\n';
    const laid = await laidOutJob(jobOf(tags, sheets, fixed(inTheMiddle('d', 'Borage'))), beside(csv));
    assert.equal(sheetsWith(laid, 'd').length, 2);
    const line = laid.source.text.split('\n').findIndex((each) => each.includes('order: d')) + 1;
    assert.deepEqual(told(laid), [
      ['info', line, 'Rush orders lie on 2 sheets of “ply3”; if nothing were fixed, they would on 1.'],
    ]);
    assert.ok(jobFacts(laid).some(({ name }) => name === 'Rush orders'));
  });
});
