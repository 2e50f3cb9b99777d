/** What a job is told of files that are not what they should be: one problem, at its place. */

import assert from 'node:assert/strict';
import { offcutChanges } from '../../../src/jobs/offcuts/write-offcuts.ts';
import type { CheckedJob } from '../../../src/jobs/job.ts';
import { checkedJob, files, jobOf, laidOutJob, plate } from '../support/jobs.ts';

const sheets = ['ply3: [{size: [200 mm, 100 mm]}]'];
const withOffcuts = ['ply3: [{offcuts: ply3.offcuts.yaml}, {size: [200 mm, 100 mm]}]'];
const byTable = ['{spec: named.tag.yaml, orders: orders.csv}', '{spec: plate.tag.yaml}'];

/** Where each problem is, and which. */
function told(job: CheckedJob): string[] {
  const at = ({ line, column }: { line: number; column: number }) => `${line}:${column}`;
  return [
    ...job.issues.map(({ code, range }) => `job:${at(job.source.position(range.start))} ${code}`),
    ...job.inFiles.flatMap(({ name, issues, position }) =>
      issues.map(({ code, range }) => `${name}:${at(position(range.start))} ${code}`),
    ),
  ];
}

/** Line and column of the table's name, and of the second entry. */
const atTable = 'job:4:36 bad-file';

describe('A table of orders that cannot be read', () => {
  // RFC 4180 has neither of them; what other files begin with is known of their formats, from memory.
  const cases: readonly [string, string | Uint8Array, string, RegExp][] = [
    [
      'has two columns of one name',
      'order,name,name\n1,Sorrel,Rue\n',
      'orders.csv:1:12 bad-file',
      /two columns “name”/,
    ],
    ['has a column without a name', 'order,,name\n1,x,Rue\n', 'orders.csv:1:7 bad-file', /a column without a name/],
    ['never closes a quotation mark', 'order,name\n1,"Rue\n2,Dill\n', 'orders.csv:2:3 bad-file', /never closed/],
    [
      'begins with a line for a spreadsheet',
      '\ufeffsep=;\r\norder;name\r\n1;Rue\r\n',
      'orders.csv:1:1 bad-file',
      /“sep=;”/,
    ],
    ['is a spreadsheet', new Uint8Array([0x50, 0x4b, 3, 4, 20, 0, 6, 0]), atTable, /a spreadsheet or another archive/],
    [
      'is an old spreadsheet',
      new Uint8Array([0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1, 0, 0]),
      atTable,
      /an old spreadsheet/,
    ],
    ['is a page of the web', '<!doctype html><table><tr><td>order</table>', atTable, /a web page/],
    ['is empty', '', atTable, /is empty/],
    ['has no lines', 'order,name\n', atTable, /no rows/],
  ];
  for (const [what, content, place, message] of cases)
    it(`and ${what} is told once, where that is`, async () => {
      const job = await checkedJob(jobOf(byTable, sheets), { ...files, 'orders.csv': content });
      assert.deepEqual(told(job), [place]);
      assert.equal(job.leftOut.length, 1);
      assert.match(job.leftOut[0]!.why, message);
      assert.equal(job.pieces!.tags.length, 1, 'the other spec is made');
    });

  it('and is not meant to be one is told so by its name', async () => {
    for (const name of ['plate.tag.yaml', 'orders.xlsx']) {
      const job = await checkedJob(jobOf([byTable[0]!.replace('orders.csv', name), byTable[1]!], sheets));
      assert.deepEqual(told(job), [atTable], name);
      assert.match(job.leftOut[0]!.why, /is no table; save it as CSV UTF-8/);
    }
  });
});

describe('A file of offcuts that is something else', () => {
  const changes = async (content: string) => {
    const job = await laidOutJob(jobOf(['{spec: plate.tag.yaml}'], withOffcuts), {
      ...files,
      'ply3.offcuts.yaml': content,
    });
    return { told: told(job), after: offcutChanges(job).map(({ after }) => after) };
  };

  it('is not written over, and told of once', async () => {
    for (const other of [plate, 'hello\n', '- 1\n', 'tagwright_offcuts: 1\noffcuts: [\n']) {
      const { told: problems, after } = await changes(other);
      assert.deepEqual(after, [], other);
      const [inJob, ...inFile] = problems;
      assert.equal(inJob, 'job:6:20 bad-file');
      assert.equal(inFile.length, 1, other);
      assert.match(inFile[0]!, /^ply3\.offcuts\.yaml:\d+:\d+ (not-a-spec|yaml-syntax)$/);
    }
  });

  it('is begun where it is empty', async () => {
    const { after } = await changes('\n');
    assert.equal(after.length, 1);
    assert.match(
      after[0]!,
      /^# Offcuts of ply3\.[^]*tagwright_offcuts: 1\noffcuts:\n {2}- \{id: 1, .*from: swap\.job\.yaml\}/,
    );
  });

  it('is not begun where there is something that cannot be read', async () => {
    const beside = { ...files } as Record<string, string>;
    // Listed in the folder, as a folder is.
    Object.defineProperty(beside, 'ply3.offcuts.yaml', { enumerable: true, value: undefined });
    const job = await laidOutJob(jobOf(['{spec: plate.tag.yaml}'], withOffcuts), beside);
    assert.deepEqual(told(job), ['job:6:20 bad-file']);
    assert.equal(job.issues[0]!.severity, 'error');
    assert.match(job.issues[0]!.message, /is there, but cannot be read/);
    assert.deepEqual(offcutChanges(job), []);
  });

  it('has outlines that cross themselves marked, and no piece put on them', async () => {
    const bow = 'tagwright_offcuts: 1\noffcuts:\n  - {id: 1, outline: [[0, 0], [190, 90], [190, 0], [0, 90]]}\n';
    const { told: problems } = await changes(bow);
    assert.deepEqual(problems, ['job:6:20 bad-file', 'ply3.offcuts.yaml:3:22 bad-value']);
    const holed = bow.replace(
      '[190, 90], [190, 0], [0, 90]]',
      '[190, 0], [190, 90], [0, 90]], holes: [[[9, 9], [9, 20], [20, 20]]]',
    );
    assert.deepEqual((await changes(holed)).told, []);
  });
});

describe('One mistake in a job', () => {
  it('in the file that all specs use is told where the job uses it, and not at every spec', async () => {
    const broken = ['tagwright: 1\nstocks: {ply3: {thickness: 3 mm\n', 'tagwright: 1\nuse: shop.workshop.yaml\n'];
    for (const shop of broken) {
      const job = await checkedJob(jobOf(['{spec: plate.tag.yaml}', '{spec: layered.tag.yaml}'], sheets), {
        ...files,
        'shop.workshop.yaml': shop,
      });
      assert.deepEqual(
        told(job).map((each) => each.slice(0, 8)),
        ['job:2:6 '],
      );
      assert.equal(job.leftOut.length, 2);
    }
  });

  it('in the name of a stock is told at that name, and not as sheets that are missing', async () => {
    const job = await checkedJob(
      jobOf(['{spec: layered.tag.yaml}'], [...sheets, 'chery2: [{size: [200 mm, 100 mm]}]']),
    );
    assert.deepEqual(told(job), ['job:7:3 unknown-name']);
    assert.match(job.leftOut[0]!.why, /no sheets of “cherry2”/);
  });

  it('in the size or the number of sheets is told there, and not as pieces without a sheet', async () => {
    for (const bad of [
      'size: [0, 100 mm]',
      'size: [200 mm, 100 mm], count: 0',
      'size: [200 mm, 100 mm], margin: 50 mm',
    ]) {
      const job = await checkedJob(jobOf(['{spec: plate.tag.yaml}'], [`ply3: [{${bad}}]`]));
      assert.equal(told(job).length, 1, told(job).join());
      assert.match(told(job)[0]!, /^job:6:\d+ bad-(length|value)$/);
      assert.equal(job.leftOut.length, 1);
    }
  });

  it('in its YAML is told where the slip is, with what mends it', async () => {
    const good = jobOf(['{spec: plate.tag.yaml, quantity: 2}', '{spec: layered.tag.yaml}'], sheets, ['title: Swap']);
    const slips: readonly [string, string, RegExp][] = [
      ['quantity: 2}', 'quantity: 2', /^job:5:/],
      ['title: Swap', 'title Swap', /^job:3:/],
      ['  - {spec: layered', '\t- {spec: layered', /^job:6:/],
      ['{spec: plate.tag.yaml, quantity', '{spec: plate.tag.yaml quantity', /^job:5:/],
    ];
    for (const [from, to, place] of slips) {
      const job = await checkedJob(good.replace(from, to));
      assert.equal(told(job).length, 1, `${to}: ${told(job).join()}`);
      assert.match(told(job)[0]!, place);
    }
    const { issues } = await checkedJob(good.replace('title: Swap', 'title Swap'));
    assert.equal(issues[0]!.repairs![0]!.title, 'Add a colon');
  });
});
