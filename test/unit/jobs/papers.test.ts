import assert from 'node:assert/strict';
import type { Page } from '../../../src/export/page/page.ts';
import type { Issue } from '../../../src/core/issue.ts';
import { boxRing } from '../../../src/geometry/measure.ts';
import { sheetMap } from '../../../src/jobs/papers/sheet-map.ts';
import { mapPages } from '../support/job-map.ts';
import { keptLabel } from '../../../src/jobs/papers/kept-label.ts';
import { TagWarnings, warningOnPaper } from '../../../src/jobs/orders/tag-warnings.ts';
import { SpecSource } from '../../../src/spec/yaml/source.ts';
import { files, jobOf, laidOutJob, named, plate } from '../support/jobs.ts';
import { tools } from '../support/tools.ts';

describe('The papers of a job', () => {
  it('draw each sheet of the map when its page is written, and not before', async () => {
    const job = await laidOutJob(jobOf(['{spec: plate.tag.yaml, quantity: 30}'], ['ply3: [{size: [200 mm, 100 mm]}]']));
    assert.ok(job.layout.sheets.length >= 4);
    const drawn = new Set<object>();
    const watched = job.layout.sheets.map((sheet) => {
      const pieces = sheet.pieces.map(
        (piece) =>
          new Proxy(piece, {
            get(of, key) {
              if (key === 'region') drawn.add(sheet);
              return Reflect.get(of, key) as unknown;
            },
          }),
      );
      return { ...sheet, plan: sheet.plan, pieces };
    });
    const pages = await sheetMap({ ...job, layout: { ...job.layout, sheets: watched } }, tools);
    // What is left of each sheet has been looked for.
    drawn.clear();
    const counts: number[] = [];
    for (const page of pages) if (page.drawings.length > 0) counts.push(drawn.size);
    assert.equal(counts.at(-1), watched.length);
    assert.ok(counts[0]! < watched.length);
    assert.deepEqual(
      counts,
      [...counts].sort((a, b) => a - b),
    );
  });

  it('name the worst tag where the message differs from tag to tag, and no letter that others do not have', () => {
    const source = new SpecSource('a: 1\nb: 2\n');
    const warned = (widths: Readonly<Record<string, [width: number | undefined, message: string]>>) => {
      const warnings = new TagWarnings();
      for (const [label, [width, message]] of Object.entries(widths)) {
        const issue: Issue = {
          code: 'weak-bridge',
          severity: 'warning',
          message,
          path: ['b'],
          range: { start: 5, end: 9 },
          ...(width === undefined ? {} : { width, minimum: 1 }),
        };
        warnings.add({ row: 0, issues: [issue], source }, label);
      }
      return warnings.of('word.tag.yaml');
    };
    const [differing] = warned({
      Poppy: [0.9, 'Weak bridge at “P”.'],
      Nigella: [0.4, 'Weak bridge at “g”.'],
      Rue: [0.6, 'Weak bridge at “R”.'],
      Dill: [0.7, 'Weak bridge at “D”.'],
      Sage: [0.8, 'Weak bridge at “S”.'],
    });
    assert.equal(
      differing!.message,
      '“Poppy”, “Nigella”, “Rue” and 2 more (word.tag.yaml, line 2), worst in “Nigella”: Weak bridge at “g”.',
    );
    // At the bench: every name, the numbers on the maps, and last the place in the file.
    const numbers: Readonly<Record<string, readonly number[]>> = { Poppy: [3], Nigella: [1, 7], Dill: [2], '': [4, 5] };
    const numbersOf = (spec: string, { label }: { readonly label: string }) => {
      assert.equal(spec, 'word.tag.yaml');
      return numbers[label] ?? [];
    };
    assert.equal(
      warningOnPaper(differing!, numbersOf),
      '“Poppy” (3), “Nigella” (1, 7), “Rue”, “Dill” (2) and “Sage”, worst in “Nigella”: Weak bridge at “g”. (word.tag.yaml, line 2)',
    );
    const [unnamed] = warned({ '': [0.5, 'Weak bridge.'] });
    assert.equal(warningOnPaper(unnamed!, numbersOf), 'Pieces 4, 5: Weak bridge. (word.tag.yaml, line 2)');
    assert.equal(
      warningOnPaper(unnamed!, () => []),
      'Weak bridge. (word.tag.yaml, line 2)',
    );
    const [alike] = warned({ Rue: [0.5, 'Weak bridge.'], Dill: [0.5, 'Weak bridge.'] });
    assert.equal(alike!.message, '“Rue” and “Dill” (word.tag.yaml, line 2): Weak bridge.');
    const [unmeasured] = warned({ Rue: [undefined, 'Not “R”.'], Dill: [undefined, 'Not “D”.'] });
    assert.equal(unmeasured!.message, '“Rue” and “Dill” (word.tag.yaml, line 2), in “Rue”: Not “R”.');
    assert.equal(warned({ '': [0.5, 'Weak bridge.'] })[0]!.message, 'word.tag.yaml, line 2: Weak bridge.');
  });

  it('show the score lines of every piece on the map, in the colour that the work is listed with', async () => {
    const scored = plate.replace('body: [plate]', 'body: [plate], score: [{rectangle: [30 mm, 20 mm]}]');
    const asked = jobOf(['{spec: plate.tag.yaml, quantity: 2}'], ['ply3: [{size: [140 mm, 60 mm]}]']);
    const [, page] = await mapPages(await laidOutJob(asked, { ...files, 'plate.tag.yaml': scored }), tools);
    const lines = page!.drawings.flatMap((each) => ('stroke' in each && each.stroke === '#D55E00' ? [each.path] : []));
    const widths = lines.map((path) => {
      const xs = path.flatMap((step) => ('x' in step ? [step.x] : []));
      // A sheet of 140 mm, across a page of 210 less two margins of 15.
      return ((Math.max(...xs) - Math.min(...xs)) * 140) / 180;
    });
    assert.deepEqual(
      widths.map((width) => Number(width.toFixed(3))),
      [30, 30],
    );
    const swatches = page!.drawings.filter((each) => 'fill' in each && each.fill === '#D55E00');
    assert.equal(swatches.length, 1);
  });

  const wordsOf = (pages: readonly Page[]): string[] =>
    pages.map((page) => page.words.map(({ text }) => text).join(' '));

  it('say which pieces a warning is about, by their numbers on the maps', async () => {
    const thin = plate
      .replace('shapes: {', 'shapes: {right: {rectangle: [9, 9], nudge: {right: 45}}, neck: {rectangle: [90, 0.6]}, ')
      .replace('body: [plate]', 'body: [plate, right, neck]');
    const asked = jobOf(
      ['{spec: named.tag.yaml, quantity: 2}', '{spec: plate.tag.yaml, quantity: 2}'],
      ['ply3: [{size: [240 mm, 200 mm]}]'],
    );
    const engraved = named.replace('"{name}"', 'Rue');
    const job = await laidOutJob(asked, { ...files, 'plate.tag.yaml': thin, 'named.tag.yaml': engraved });
    const numbers = job.layout.sheets.flatMap(({ pieces }) =>
      pieces.flatMap(({ of, number }) => (of.of.spec === 'plate.tag.yaml' ? [number] : [])),
    );
    assert.equal(numbers.length, 2);
    const [summary] = wordsOf(await mapPages(job, tools));
    assert.match(summary!, new RegExp(`To look at .*Pieces ${numbers.join(', ')}: .*\\(plate\\.tag\\.yaml, line 4\\)`));
  });

  it('list what is not in the cut files by order, as the pick list does', async () => {
    const orders =
      'order,product,quantity,name\n7,sign,1,Rue\n8,named,two,Dill\n9,named,1,\n5,shed,1,Sage\n6,named,1,Mint\n';
    const asked = jobOf(['{spec: named.tag.yaml, orders: orders.csv}'], ['ply3: [{size: [140 mm, 60 mm]}]']);
    const job = await laidOutJob(asked, { ...files, 'orders.csv': orders });
    const inTurn = ['7', '8', '9', '5'];
    assert.deepEqual(
      job.leftOut.map(({ order }) => order),
      inTurn,
    );
    const [summary] = wordsOf(await mapPages(job, tools));
    const listed = /Not in the cut files (.*) Material:/.exec(summary!)![1]!;
    const found = [...listed.matchAll(/(?<= |^)([5-9]) (?=\d × |Dill)/g)].map(([, order]) => order);
    assert.deepEqual(found, inTurn, listed);
  });

  it('call a line without a name by its product, not by its month', async () => {
    const orders = 'order,product,quantity,name,month\n7,named,1,Rue,May\n9,named,4,,March\n';
    const asked = jobOf(['{spec: named.tag.yaml, orders: orders.csv}'], ['ply3: [{size: [140 mm, 60 mm]}]']);
    const dated = named
      .replace(
        'height: 3 mm}}',
        'height: 3 mm}, when: {text: "{month}", font: Nunito, height: 3 mm, place: {below: name}}}',
      )
      .replace('[name]', '[name, when]');
    const { leftOut } = await laidOutJob(asked, { ...files, 'orders.csv': orders, 'named.tag.yaml': dated });
    assert.deepEqual(
      leftOut.map(({ label, why }) => [label, why]),
      [['named', 'it has no “name”.']],
    );
  });

  it('keep the list and the work of a sheet on its page, drawing it smaller where that is enough', async () => {
    const asked = jobOf(['{spec: plate.tag.yaml, quantity: 16}'], ['ply3: [{size: [130 mm, 130 mm]}]']);
    const scored = plate
      .replace('[60 mm, 40 mm]', '[26 mm, 26 mm]')
      .replace('body: [plate]', 'body: [plate], score: [{rectangle: [20, 20]}], cut: [{circle: 4}]');
    const pages = await mapPages(await laidOutJob(asked, { ...files, 'plate.tag.yaml': scored }), tools);
    const sheets = wordsOf(pages).filter((words) => /130 × 130 mm · /.test(words));
    assert.deepEqual([sheets.length, pages.length], [1, 2]);
    assert.match(sheets[0]!, /Work in this order Score .* Travel between them/);
    // The paper of ISO 216 that is asked for.
    for (const { height } of pages) assert.equal(height, 297);
  });

  it('have a sign for pieces of a rush order, and say what it means, without a colour of its own', async () => {
    const orders = 'order,quantity,rush,name\n7,2,yes,Rue\n8,1,,Dill\n';
    const asked = jobOf(['{spec: named.tag.yaml, orders: orders.csv}'], ['ply3: [{size: [140 mm, 60 mm]}]']);
    const pages = await mapPages(await laidOutJob(asked, { ...files, 'orders.csv': orders }), tools);
    const words = wordsOf(pages).join(' ');
    assert.match(words, /3 pieces · 2 rush \(»\) · /);
    // On the piece and in the list below.
    assert.equal([...words.matchAll(/(?<= )\d»(?= )/g)].length, 4, words);
    const red = pages.flatMap(({ drawings }) => drawings).filter((each) => JSON.stringify(each).includes('#B00020'));
    assert.deepEqual(red, []);
  });

  it('repeat on each sheet what it is, how the machine is set, what is not said of it, and its caution', async () => {
    const workshop = (files['shop.workshop.yaml'] as string).replace(
      'machine: {cut: 10 mm/s, engrave: 200 mm/s}',
      'caution: Mask the face., machine: {cut: 10 mm/s, engrave: 200 mm/s, power: {cut: 80 %}, passes: {cut: 2}}',
    );
    const scored = named
      .replace('"{name}"', 'Rue')
      .replace('engrave: [name]', 'engrave: [name], score: [{rectangle: [40 mm, 10 mm]}]');
    const beside = { ...files, 'shop.workshop.yaml': workshop, 'named.tag.yaml': scored };
    const asked = jobOf(
      ['{spec: named.tag.yaml, quantity: 3}'],
      ['ply3: [{size: [60 mm, 70 mm], count: 1}, {size: [70 mm, 60 mm]}]'],
    );
    const job = await laidOutJob(asked, beside);
    assert.equal(job.layout.sheets.length, 2);
    const set = 'engrave: power not set, 200 mm/s; score: not set; cut 80 %, 10 mm/s, 2 passes';
    const pages = wordsOf(await mapPages(job, tools));
    assert.equal(pages.join(' ').split(`Birch plywood, 3 mm · ${set} · Mask the face.`).length - 1, 2);
    assert.ok(pages[0]!.includes(`Set by hand ${set}`), pages[0]);
  });

  it('put a sheet on the page that is begun, where all of it goes there', async () => {
    const flat = (height: number) => jobOf(['{spec: plate.tag.yaml}'], [`ply3: [{size: [280 mm, ${height} mm]}]`]);
    const [page, ...none] = await mapPages(await laidOutJob(flat(60)), tools);
    assert.deepEqual(none, []);
    assert.match(wordsOf([page!])[0]!, /Safety .* ply3 sheet 1 .* Work in this order .* swap: ply3 sheet 1$/);
    const high = wordsOf(await mapPages(await laidOutJob(flat(240)), tools));
    assert.equal(high.length, 2);
    assert.match(high[1]!, /^ply3 sheet 1 .* swap: ply3 sheet 1 2 of 2$/);
  });

  it('give the number of an offcut room on it, on more lines where it is narrow', async () => {
    const face = await tools.captions(600);
    const labelIn = (width: number, height: number) => {
      const label = keptLabel([boxRing({ minX: 5, minY: 7, maxX: 5 + width, maxY: 7 + height })], 7, face)!;
      const { minX, maxX, minY, maxY } = label.box;
      return { ...label, room: Math.min(minX - 5, 5 + width - maxX, minY - 7, 7 + height - maxY) };
    };
    const wide = labelIn(60, 40);
    assert.deepEqual([wide.lines, wide.size], [['keep: offcut 7'], 3]);
    // As wide as the words at that size, and a strip.
    for (const width of [18.3, 11]) {
      const narrow = labelIn(width, 44);
      assert.ok(narrow.lines.length > 1, narrow.lines.join('/'));
      assert.equal(narrow.lines.join(' '), 'keep: offcut 7');
      assert.ok(narrow.room >= 1.2 - 1e-6, `${narrow.room} mm on ${width}`);
    }
    assert.equal(labelIn(3, 44).lines.length, 3, 'a label all the same');
    assert.equal(keptLabel([], 7, face), undefined);
  });
});
