import assert from 'node:assert/strict';
import { checkedJob, files, jobOf } from '../support/jobs.ts';
import type { CheckedJob } from '../../../src/jobs/job.ts';

const sheets = ['ply3: [{size: [200 mm, 100 mm]}]'];

/** Code, what it is marked at, and where. */
function messages(job: CheckedJob): string[] {
  return job.issues.map(({ code, range }) => {
    const { line } = job.source.position(range.start);
    return `${line} ${code} ${job.source.text.slice(range.start, range.end)}`;
  });
}

function messagesInFiles(job: CheckedJob): string[] {
  return job.inFiles.flatMap(({ name, issues, position }) =>
    issues.map(({ code, range }) => {
      const { line, column } = position(range.start);
      return `${name}:${line}:${column} ${code}`;
    }),
  );
}

const made = (job: CheckedJob) =>
  (job.pieces?.tags ?? []).map(({ spec, label, order, copies }) => [spec, label, order, copies]);

describe('The job language', () => {
  it('is read with nothing to complain of', async () => {
    const job = await checkedJob(jobOf(['{spec: plate.tag.yaml, quantity: 2}'], sheets, ['title: Saturday swap']));
    assert.deepEqual(messages(job), []);
    assert.equal(job.title, 'Saturday swap');
    assert.deepEqual(made(job), [['plate.tag.yaml', '', '', 2]]);
  });

  it('says where something does not fit, and goes on with the rest', async () => {
    const cases: readonly [string, string][] = [
      ['{spec: plate.tag.yaml, quantity: 0}', '4 bad-value 0'],
      ['{spec: plate.tag.yaml, quantity: -3}', '4 bad-value -3'],
      ['{spec: plate.tag.yaml, quantity: two}', '4 bad-value two'],
      ['{spec: plate.tag.yaml, quantity: 5000}', '4 bad-value 5000'],
      ['{spec: gone.tag.yaml}', '4 bad-file gone.tag.yaml'],
      ['{spec: plate.tag.yaml, orders: gone.csv}', '4 bad-file gone.csv'],
      ['{spec: plate.tag.yaml, cuontity: 3}', '4 unknown-key cuontity'],
      ['{quantity: 3}', '4 missing-key {quantity: 3}'],
      ['{spec: named.tag.yaml}', '4 missing-key {spec: named.tag.yaml}'],
    ];
    for (const [entry, problem] of cases) {
      const job = await checkedJob(jobOf([entry, '{spec: plate.tag.yaml, quantity: 1}'], sheets));
      assert.deepEqual(messages(job), [problem], entry);
      const isMade = made(job).length === (entry.includes('cuontity') ? 2 : 1);
      assert.ok(isMade, `${entry}: ${JSON.stringify(made(job))}`);
      // The papers say what is not cut.
      const isLeftOut = /spec:(?!.*cuontity)/.test(entry);
      assert.equal(job.leftOut.length, isLeftOut ? 1 : 0, entry);
    }
  });

  it('says what a file that is no job should begin with', async () => {
    const job = await checkedJob('tags: [{spec: plate.tag.yaml}]\nsheets: {ply3: [{size: [200, 100]}]}\n');
    assert.equal(job.issues[0]!.message, 'A job starts with the line “tagwright_job: 1”.');
    assert.deepEqual(
      (await checkedJob('tagwright_job: [')).issues.map(({ code }) => code),
      ['yaml-syntax'],
    );
    assert.deepEqual(
      (await checkedJob('just words')).issues.map(({ code }) => code),
      ['not-a-spec'],
    );
    assert.deepEqual(
      (await checkedJob('')).issues.map(({ code }) => code),
      ['not-a-spec'],
    );
  });

  it('knows the stocks of the workshop’s file', async () => {
    const job = await checkedJob(jobOf(['{spec: plate.tag.yaml}'], [...sheets, 'chery2: [{size: [200 mm, 100 mm]}]']));
    assert.deepEqual(
      messages(job),
      ['6 unknown-name chery2'].map((line) => line.replace('6', '7')),
    );
    assert.match(job.issues[0]!.message, /Did you mean “cherry2”/);
  });

  it('needs sheets for every stock that is cut', async () => {
    const job = await checkedJob(jobOf(['{spec: layered.tag.yaml}', '{spec: plate.tag.yaml}'], sheets));
    assert.match(job.issues[0]!.message, /no sheets of “cherry2”, which layered\.tag\.yaml is cut from/);
    assert.deepEqual(made(job), [['plate.tag.yaml', '', '', 1]]);
  });

  it('needs a sheet that the piece goes on', async () => {
    // 60 × 40 mm with a kerf of 0.2 mm and a margin of 3 mm: 66.2 × 46.2 mm is just enough.
    for (const [size, goes] of [
      ['[66.2 mm, 46.2 mm]', true],
      ['[66.1 mm, 46.2 mm]', false],
      ['[66.2 mm, 46.1 mm]', false],
      ['[46.2 mm, 66.2 mm]', false],
    ] as const) {
      const job = await checkedJob(jobOf(['{spec: plate.tag.yaml}'], [`ply3: [{size: ${size}}]`]));
      assert.deepEqual(
        job.issues.map(({ code }) => code),
        goes ? [] : ['exceeds-sheet'],
        size,
      );
    }
    const turned = 'ply3: [{size: [46.2 mm, 66.2 mm], turn: quarter}]';
    assert.deepEqual((await checkedJob(jobOf(['{spec: plate.tag.yaml}'], [turned]))).issues, []);
  });

  it('cuts from its own sheets, whatever sheet the workshop’s file has', async () => {
    // The workshop has a sheet of 200 × 100 mm.
    const long = (files['plate.tag.yaml'] as string).replace('60 mm, 40 mm', '300 mm, 40 mm');
    const beside = { ...files, 'plate.tag.yaml': long };
    const job = await checkedJob(jobOf(['{spec: plate.tag.yaml}'], ['ply3: [{size: [400 mm, 100 mm]}]']), beside);
    assert.deepEqual([messages(job), made(job).length], [[], 1]);
    const small = await checkedJob(jobOf(['{spec: plate.tag.yaml}'], sheets), beside);
    assert.deepEqual(messages(small), ['6 exceeds-sheet ply3']);
  });

  it('does not call stocks unknown while the workshop’s file cannot be read', async () => {
    const gone = await checkedJob(jobOf(['{spec: plate.tag.yaml}'], sheets).replace('use: shop', 'use: shed'));
    assert.deepEqual(messages(gone), ['2 bad-file shed.workshop.yaml']);
    assert.equal(made(gone).length, 1);
  });

  it('offers a file of the same kind whose name is near, its ending aside', async () => {
    const near = await checkedJob(jobOf(['{spec: plat.tag.yaml}'], sheets));
    assert.match(near.issues[0]!.message, /Did you mean “plate\.tag\.yaml”\?$/);
    const far = await checkedJob(jobOf(['{spec: gone.tag.yaml}'], sheets));
    assert.match(far.issues[0]!.message, /cannot be found or read\.$/);
  });

  it('finds what uses itself', async () => {
    const beside = { ...files, 'a.yaml': 'tagwright: 1\nuse: b.yaml\n', 'b.yaml': 'tagwright: 1\nuse: a.yaml\n' };
    const text = jobOf(['{spec: plate.tag.yaml}'], sheets).replace(
      'use: shop.workshop.yaml',
      'use: [shop.workshop.yaml, a.yaml]',
    );
    const job = await checkedJob(text, beside);
    assert.deepEqual(messages(job), ['2 cycle a.yaml']);
    assert.equal(made(job).length, 1);
  });

  it('leaves out a spec with errors, and says which line of it', async () => {
    const broken = files['plate.tag.yaml'] as string;
    const beside = { ...files, 'broken.tag.yaml': broken.replace('[plate]', '[plaet]') };
    const job = await checkedJob(
      jobOf(['{spec: broken.tag.yaml, quantity: 3}', '{spec: plate.tag.yaml}'], sheets),
      beside,
    );
    assert.deepEqual(messages(job), ['4 unknown-shape broken.tag.yaml']);
    assert.match(job.issues[0]!.message, /^broken\.tag\.yaml cannot be cut and is left out: line 5: .*plaet/);
    assert.deepEqual(
      job.leftOut.map(({ spec, quantity }) => [spec, quantity]),
      [['broken.tag.yaml', 3]],
    );
    assert.equal(made(job).length, 1);
  });
});

describe('A table of orders', () => {
  const withOrders = (csv: string, entry = '{spec: named.tag.yaml, orders: orders.csv}') =>
    checkedJob(jobOf([entry], sheets), { ...files, 'orders.csv': csv });

  it('makes a tag of every line, as often as it says', async () => {
    const job = await withOrders('order,quantity,name\n1041,2,Sorrel\n1042,1,Rue\n1041,3,Rue\n');
    assert.deepEqual([messages(job), messagesInFiles(job)], [[], []]);
    assert.deepEqual(made(job), [
      ['named.tag.yaml', 'Sorrel', '1041', 2],
      ['named.tag.yaml', 'Rue', '1042', 1],
      ['named.tag.yaml', 'Rue', '1041', 3],
    ]);
  });

  it('lists faulty lines at their cell, and goes on with the others', async () => {
    const csv = [
      'order;quantity;name;rush',
      '1;0;Sorrel;',
      '2;-3;Sorrel;',
      '"3";two;"So;rrel";',
      '4;1;;',
      ';1;Sorrel;',
      '6;1;Sorrel;perhaps',
      '7;;Sorrel;',
      '8;2.5;Sorrel;',
      '9;1;Sorrel;yes',
      '',
    ].join('\r\n');
    const job = await withOrders(csv);
    assert.deepEqual(messages(job), []);
    assert.deepEqual(messagesInFiles(job), [
      'orders.csv:2:3 bad-value',
      'orders.csv:3:3 bad-value',
      'orders.csv:4:5 bad-value',
      'orders.csv:5:5 missing-key',
      'orders.csv:6:1 missing-key',
      'orders.csv:7:12 bad-value',
      'orders.csv:8:3 bad-value',
      'orders.csv:9:3 bad-value',
    ]);
    assert.deepEqual(made(job), [['named.tag.yaml', 'Sorrel', '9', 1]]);
    assert.equal(job.pieces!.tags[0]!.rush, true);
    // Every line is made, or is told.
    assert.equal(job.leftOut.length + made(job).length, 9);
  });

  it('says at its cell what stands beyond the columns, and makes the line', async () => {
    const job = await withOrders('order,name\n1,Rue\n2,Sorrel,late,,dry\n3,Dill,,\n');
    assert.deepEqual(messagesInFiles(job), ['orders.csv:3:10 odd-value']);
    assert.deepEqual(
      job.inFiles[0]!.issues.map(({ severity, message }) => [severity, message]),
      [
        [
          'warning',
          '“Sorrel” has more cells than there are columns: “late” and “dry” are left out (line 3 of “orders.csv”). A text that has the separator in it needs quotation marks.',
        ],
      ],
    );
    assert.equal(made(job).length, 3);
  });

  it('names the cell that is no length, and says that decimals have a point', async () => {
    const wide = (files['named.tag.yaml'] as string).replace('[50 mm, 20 mm]', '["{wide}", 20 mm]');
    const csv = 'order;name;wide;quantity\n1;Sorrel;60,5;2\n2;Rue;60.5 mm;1\n';
    const job = await checkedJob(jobOf(['{spec: named.tag.yaml, orders: orders.csv}'], sheets), {
      ...files,
      'named.tag.yaml': wide,
      'orders.csv': csv,
    });
    assert.deepEqual(messagesInFiles(job), ['orders.csv:2:10 bad-length']);
    assert.match(job.inFiles[0]!.issues[0]!.message, /Decimals are written with a point here: 60\.5, not 60,5\.$/);
  });

  it('must have the columns that the spec asks for', async () => {
    const job = await withOrders('order,quantity,plant\n1,1,Sorrel\n');
    assert.match(job.issues[0]!.message, /“orders\.csv” has no column “name”, which named\.tag\.yaml asks for/);
    assert.equal(messages(job)[0], '4 unknown-name orders.csv');
    assert.equal(job.leftOut.length, 1);
  });

  it('says at its name that a column is called otherwise than the quantity, and makes not one for five', async () => {
    for (const name of ['qty', 'Qty.', 'Quantitiy', 'count', 'how many']) {
      const job = await withOrders(`order,name,${name}\n1,Sorrel,5\n2,Rue,3\n`);
      assert.deepEqual(messagesInFiles(job), ['orders.csv:1:12 unknown-name'], name);
      const [issue] = job.inFiles[0]!.issues;
      assert.match(issue!.message, /and there is no “quantity”: all lines are left out\. Did you mean “quantity”\?$/);
      assert.deepEqual([issue!.severity, issue!.suggestions], ['error', ['quantity']]);
      assert.deepEqual([made(job), job.leftOut.length, job.issues.length], [[], 2, 0], name);
    }
    // It may as well number something: said, and made.
    const number = await withOrders('order,name,number\n1,Sorrel,5\n2,Rue,3\n');
    assert.deepEqual(messagesInFiles(number), ['orders.csv:1:12 odd-value']);
    assert.equal(number.inFiles[0]!.issues[0]!.severity, 'warning');
    assert.equal(made(number).length, 2);
  });

  it('says nothing of columns that are for people, of running numbers, and where the spec uses them', async () => {
    for (const csv of [
      'order,name,quantity,qty\n1,Sorrel,5,5\n',
      'order,name,Quantity\n1,Sorrel,5\n',
      'order,name,number\n1,Sorrel,1\n2,Rue,2\n3,Ivy,3\n',
      'order,name,keeper,date,count\n1,Sorrel,Hazel,May,a few\n',
    ])
      assert.deepEqual(messagesInFiles(await withOrders(csv)), [], csv);
    const counted = (files['named.tag.yaml'] as string).replace('"{name}"', '"{name} {count}"');
    const beside = { ...files, 'named.tag.yaml': counted, 'orders.csv': 'order,name,count\n1,Rue,5\n' };
    const job = await checkedJob(jobOf(['{spec: named.tag.yaml, orders: orders.csv}'], sheets), beside);
    assert.deepEqual([messagesInFiles(job), made(job).length], [[], 1]);
  });

  it('says that columns are meant as the order, the rush or the product', async () => {
    const job = await withOrders('Order No.,name,urgent\n1,Sorrel,yes\n');
    assert.deepEqual(messagesInFiles(job), ['orders.csv:1:1 odd-value', 'orders.csv:1:16 odd-value']);
    assert.match(
      job.inFiles[0]!.issues[0]!.message,
      /^Nothing uses the column “Order No\.”.*nothing is listed by order/,
    );
    assert.equal(made(job).length, 1);
    const csv = 'order,name,item\n1,Sorrel,Sign\n';
    const two = ['{spec: named.tag.yaml, orders: orders.csv}', '{spec: other.tag.yaml, orders: orders.csv}'];
    const both = await checkedJob(jobOf(two, sheets), {
      ...files,
      'other.tag.yaml': files['named.tag.yaml']!,
      'orders.csv': csv,
    });
    assert.deepEqual(messagesInFiles(both), ['orders.csv:1:12 odd-value']);
    assert.match(both.inFiles[0]!.issues[0]!.message, /each spec makes every line\. Did you mean “product”\?$/);
  });

  it('tells a column that differs by its capitals once, at its name, whatever asks for it', async () => {
    const two = ['{spec: named.tag.yaml, orders: orders.csv}', '{spec: other.tag.yaml, orders: orders.csv}'];
    const job = await checkedJob(jobOf(two, sheets), {
      ...files,
      'other.tag.yaml': (files['named.tag.yaml'] as string).replace('"{name}"', '"{name} {month}"'),
      'orders.csv': 'Order,Quantity,Name,Month\n1,1,Sorrel,May\n',
    });
    assert.deepEqual(
      job.inFiles.flatMap(({ issues }) => issues.map(({ message }) => message)),
      [
        'named.tag.yaml and other.tag.yaml ask for a column “name”; this one is called “Name”.',
        'other.tag.yaml asks for a column “month”; this one is called “Month”.',
      ],
    );
    assert.deepEqual([messages(job), job.leftOut.length], [[], 2]);
    const none = await checkedJob(jobOf([two[1]!], sheets), {
      ...files,
      'other.tag.yaml': (files['named.tag.yaml'] as string).replace('"{name}"', '"{name} {month}"'),
      'orders.csv': 'order,plant,sown\n1,Sorrel,May\n',
    });
    assert.match(
      none.issues[0]!.message,
      /^“orders\.csv” has no columns “name” and “month”, which other\.tag\.yaml asks for\.$/,
    );
  });

  it('may be empty, broken, or far too long, and is told as a whole', async () => {
    for (const [csv, message] of [
      ['', /is empty/],
      ['order,quantity,name\n', /has no rows/],
      ['order,quantity,name\n1,1,"Sorrel\n', /quotation mark/],
      [`order,quantity,name\n${'1,1,Sorrel\n'.repeat(10_000)}`, /has 10000 lines; a job takes at most 2000/],
    ] as const) {
      const job = await withOrders(csv);
      // In the table where it is at a place there.
      const told = [...job.issues, ...job.inFiles.flatMap(({ issues }) => issues)];
      assert.equal(told.length, 1);
      assert.match(told[0]!.message, message);
    }
  });

  it('takes the place of a batch that the spec has', async () => {
    const listed = (files['named.tag.yaml'] as string).replace('shapes:', 'batch: [Borage, Lovage]\nshapes:');
    const beside = { ...files, 'named.tag.yaml': listed, 'orders.csv': 'name\nRue\n' };
    const both = ['{spec: named.tag.yaml, quantity: 2}', '{spec: named.tag.yaml, orders: orders.csv}'];
    const job = await checkedJob(jobOf(both, sheets), beside);
    assert.deepEqual(
      made(job).map(([, label, , copies]) => [label, copies]),
      [
        ['Borage', 2],
        ['Lovage', 2],
        ['Rue', 1],
      ],
    );
  });

  it('says once what is wrong with every tag alike, such as a hole that is covered', async () => {
    // The plate is glued over the hole, whatever is engraved on it.
    const covered = (files['named.tag.yaml'] as string)
      .replace(
        'pieces: {tag: {',
        'pieces: {back: {body: [under], hanger: {hole: {diameter: 4, at: top}}}, tag: {glue_to: back, ',
      )
      .replace('shapes: {', 'shapes: {under: {rectangle: [40 mm, 20 mm]}, ');
    const beside = { ...files, 'named.tag.yaml': covered, 'orders.csv': 'order,name\n1,Rue\n2,Sorrel\n3,Dill\n' };
    const job = await checkedJob(jobOf(['{spec: named.tag.yaml, orders: orders.csv}'], sheets), beside);
    assert.deepEqual(messages(job), ['4 hole-blocked named.tag.yaml']);
    assert.deepEqual([messagesInFiles(job), job.leftOut.length], [[], 3]);
    // Of one tag alone it cannot be told that the others would have it.
    const one = await checkedJob(jobOf(['{spec: named.tag.yaml, orders: orders.csv}'], sheets), {
      ...beside,
      'orders.csv': 'order,name\n1,Rue\n2,Rue\n',
    });
    assert.deepEqual(messagesInFiles(one), ['orders.csv:2:3 hole-blocked', 'orders.csv:3:3 hole-blocked']);
  });

  it('has names of one size where the spec asks for it, as large as each of them has room for', async () => {
    const fitted = (same: boolean) =>
      (files['named.tag.yaml'] as string).replace('height: 3 mm', `fit: {in: plate, same_size: ${same}}`);
    const csv = 'order,name\n1,Rue\n2,Angelica\n3,Rue\n';
    const heights = async (same: boolean) => {
      const beside = { ...files, 'named.tag.yaml': fitted(same), 'orders.csv': csv };
      const job = await checkedJob(jobOf(['{spec: named.tag.yaml, orders: orders.csv}'], sheets), beside);
      return job.pieces!.tags.map(({ tag }) => tag.pieces[0]!.marks[0]!.lettering![0]!.xHeight);
    };
    const [own, same] = [await heights(false), await heights(true)];
    assert.ok(own[0]! > 1.2 * own[1]!, own.join());
    assert.deepEqual(
      own.map(() => own[1]!.toFixed(2)),
      same.map((height) => height.toFixed(2)),
    );
  });

  it('has names on one line where the spec asks for it, with room for the letters of all its orders', async () => {
    const even = (files['named.tag.yaml'] as string).replace(
      'height: 3 mm',
      'fit: {in: plate, margin: 1}, align: baseline',
    );
    const feet = async (names: readonly string[]) => {
      const csv = `order,name\n${names.map((name, index) => `${index},${name}\n`).join('')}`;
      const beside = { ...files, 'named.tag.yaml': even, 'orders.csv': csv };
      const job = await checkedJob(jobOf(['{spec: named.tag.yaml, orders: orders.csv}'], sheets), beside);
      return job.pieces!.tags.map(({ tag }) => [...tag.made].find(([{ name }]) => name === 'name')![1].band!.baseline);
    };
    const [tall, long] = await feet(['Elm', 'Yew']);
    assert.ok(Math.abs(tall! - long!) < 1e-6);
    const [first, deep] = await feet(['Elm', 'Bog Pygmy']);
    assert.ok(Math.abs(first! - deep!) < 1e-6);
    assert.ok(first! > tall!, 'stands higher where others go down');
  });

  it('is made with what is only a warning, which is told at the spec, once for each cause', async () => {
    // 0.6 mm between the plate and another: the workshop's plywood has a min_web of 1 mm.
    const more = 'left: {rectangle: [20, 20], nudge: {left: 40}}, neck: {rectangle: [40, 0.6], nudge: {left: 20}}';
    const thin = (files['named.tag.yaml'] as string)
      .replace('shapes: {', `shapes: {${more}, `)
      .replace('body: [plate]', 'body: [plate, left, neck]');
    const csv = 'order,name\n1,Rue\n2,Sorrel\n3,Rue\n4,Dill\n5,Sage\n6,Mint\n';
    const beside = { ...files, 'named.tag.yaml': thin, 'orders.csv': csv };
    const job = await checkedJob(jobOf(['{spec: named.tag.yaml, orders: orders.csv}'], sheets), beside);
    assert.deepEqual(messages(job), ['4 thin-stroke named.tag.yaml']);
    assert.equal(job.issues[0]!.severity, 'warning');
    assert.match(job.issues[0]!.message, /^“Rue”, “Sorrel”, “Dill” and 2 more \(named\.tag\.yaml, line 4\): /);
    const { spec, line, tags } = job.warnings.get(job.issues[0]!)!;
    assert.deepEqual(
      [spec, line, tags.map(({ label }) => label)],
      ['named.tag.yaml', 4, ['Rue', 'Sorrel', 'Dill', 'Sage', 'Mint']],
    );
    assert.deepEqual([made(job).length, job.leftOut], [6, []]);
    const plain = await checkedJob(jobOf(['{spec: named.tag.yaml}'], sheets), {
      ...files,
      'named.tag.yaml': thin.replace('"{name}"', 'Rue'),
    });
    assert.match(plain.issues[0]!.message, /^named\.tag\.yaml, line 4: /);
  });

  it('says a fault of the spec once, and not at every line', async () => {
    const broken = (files['named.tag.yaml'] as string).replace('height: 3 mm', 'hieght: 3 mm');
    const job = await checkedJob(jobOf(['{spec: named.tag.yaml, orders: orders.csv}'], sheets), {
      ...files,
      'named.tag.yaml': broken,
      'orders.csv': 'order,name\n1,Rue\n2,Sorrel\n3,\n',
    });
    assert.deepEqual(messages(job), ['4 unknown-key named.tag.yaml']);
    assert.deepEqual(messagesInFiles(job), ['orders.csv:4:3 missing-key']);
    assert.equal(job.leftOut.length, 3);
  });
});
