import assert from 'node:assert/strict';
import { largestRectangle } from '../../../src/geometry/largest-rectangle.ts';
import { normalise } from '../../../src/geometry/clipper.ts';
import type { Region } from '../../../src/geometry/types.ts';
import type { JobSheet } from '../../../src/jobs/layout/layout.ts';
import { leftoversOf } from '../../../src/jobs/offcuts/leftovers.ts';
import { readOffcuts } from '../../../src/jobs/read/offcuts.ts';
import { keptOffcuts, offcutChanges } from '../../../src/jobs/offcuts/write-offcuts.ts';
import { SpecSource } from '../../../src/spec/yaml/source.ts';
import { assertNear } from '../support/engine.ts';
import type { Beside } from '../support/engine.ts';
import { checkedJob, files, jobOf, laidOutJob } from '../support/jobs.ts';
import { differenceAreaByJts, distanceByJts, intersectionAreaByJts, unionAreaByJts } from '../support/reference.ts';

const sheets = ['ply3: [{offcuts: ply3.offcuts.yaml}, {size: [200 mm, 150 mm]}]'];
const job = (quantity: number) => jobOf([`{spec: plate.tag.yaml, quantity: ${quantity}}`], sheets);
const withOffcuts = (text: string): Beside => ({ ...files, 'ply3.offcuts.yaml': text });

const head = '# by hand\ntagwright_offcuts: 1\n';

const box = (x: number, y: number, width: number, height: number): Region => [
  [
    { x, y },
    { x: x + width, y },
    { x: x + width, y: y + height },
    { x, y: y + height },
  ],
];

/** Corners of a circle that touches both axes, as a spec has them. */
const circle = (radius: number, corners: number): string[] =>
  Array.from({ length: corners }, (_, i) => {
    const angle = (2 * Math.PI * i) / corners;
    return `[${(radius + radius * Math.cos(angle)).toFixed(1)}, ${(radius + radius * Math.sin(angle)).toFixed(1)}]`;
  });

const regionOf = (text: string, id: number): Region => {
  const { offcuts, issues } = readOffcuts(new SpecSource(text));
  assert.deepEqual(issues, []);
  return offcuts.find((each) => each.id === id)!.region;
};

describe('The largest rectangle', () => {
  it('is all of one, and the right part of other outlines', () => {
    assert.deepEqual(largestRectangle(box(3, 4, 120, 70)), { minX: 3, minY: 4, maxX: 123, maxY: 74 });
    // An L of 100 × 80 whose upper right 60 × 50 is missing: 100 × 30 is more than 40 × 80 is not.
    const l = normalise([
      [
        { x: 0, y: 0 },
        { x: 100, y: 0 },
        { x: 100, y: 30 },
        { x: 40, y: 30 },
        { x: 40, y: 80 },
        { x: 0, y: 80 },
      ],
    ]);
    assert.deepEqual(largestRectangle(l), { minX: 0, minY: 0, maxX: 40, maxY: 80 });
    // In a disc it is a square of r·√2, within two cells of half a millimetre a side.
    const disc = normalise([
      Array.from({ length: 720 }, (_, i) => ({
        x: 50 * Math.cos((i * Math.PI) / 360),
        y: 50 * Math.sin((i * Math.PI) / 360),
      })),
    ]);
    const { minX, maxX, minY, maxY } = largestRectangle(disc)!;
    assert.ok(differenceAreaByJts(box(minX, minY, maxX - minX, maxY - minY), disc) < 1e-2);
    assertNear((maxX - minX) * (maxY - minY), 5000, 150, 'area');
  });

  it('keeps clear of holes', () => {
    const plate = normalise([...box(0, 0, 100, 60), [...box(60, 20, 20, 20)[0]!].reverse()], 'evenodd');
    const { minX, maxX, minY, maxY } = largestRectangle(plate)!;
    assert.deepEqual({ minX, maxX, minY, maxY }, { minX: 0, maxX: 60, minY: 0, maxY: 60 });
  });
});

describe('Offcuts', () => {
  it('are used first, within their outlines', async () => {
    const text = `${head}offcuts:\n  - {id: 4, size: [140 mm, 50 mm]}\n`;
    const { layout } = await laidOutJob(job(3), withOffcuts(text));
    assert.deepEqual(
      layout.sheets.map(({ name, pieces }) => [name, pieces.length]),
      [
        ['ply3 offcut 4', 2],
        ['ply3 sheet 1', 1],
      ],
    );
    const [first] = layout.sheets;
    assert.deepEqual([first!.width, first!.height], [140, 50]);
    for (const { enclosed } of first!.pieces) assert.ok(differenceAreaByJts(enclosed, box(3, 3, 134, 44)) < 1e-3);
  });

  it('are not opened for a label that a sheet which is cut anyway has room for', async () => {
    // Too low for plates, which are 40 mm high and have a margin of 3.
    const text = `${head}offcuts:\n  - {id: 4, size: [200 mm, 45 mm]}\n`;
    const lay = (labels: number, plates: number) =>
      laidOutJob(
        jobOf(['{spec: named.tag.yaml, orders: o.csv}', `{spec: plate.tag.yaml, quantity: ${plates}}`], sheets),
        { ...withOffcuts(text), 'o.csv': `name,quantity\nRue,${labels}\n` },
      );
    const namesOf = async (labels: number, plates: number) =>
      (await lay(labels, plates)).layout.sheets.map(({ name }) => name);
    assert.deepEqual(await namesOf(1, 3), ['ply3 sheet 1']);
    // Six cover two thirds of it, nine plates the sheet; and by itself the label needs no sheet.
    assert.deepEqual(await namesOf(6, 3), ['ply3 offcut 4', 'ply3 sheet 1']);
    assert.deepEqual(await namesOf(1, 9), ['ply3 offcut 4', 'ply3 sheet 1']);
    const alone = await laidOutJob(jobOf(['{spec: named.tag.yaml, orders: o.csv}'], sheets), {
      ...withOffcuts(text),
      'o.csv': 'name\nRue\n',
    });
    assert.deepEqual(
      alone.layout.sheets.map(({ name }) => name),
      ['ply3 offcut 4'],
    );
  });

  it('may be of any shape', async () => {
    // 70 × 50 below and at the left, the rest missing.
    const outline = '[[0, 0], [220, 0], [220, 60], [72, 60], [72, 130], [0, 130]]';
    const text = `${head}offcuts:\n  - {id: 1, outline: ${outline}}\n`;
    const { layout } = await laidOutJob(job(4), withOffcuts(text));
    const [first] = layout.sheets;
    assert.equal(first!.name, 'ply3 offcut 1');
    assert.ok(first!.pieces.length >= 3, `${first!.pieces.length} pieces`);
    for (const { enclosed } of first!.pieces) assert.ok(differenceAreaByJts(enclosed, first!.outline) < 1e-3);
    for (const [index, one] of first!.pieces.entries())
      for (const other of first!.pieces.slice(0, index))
        assert.ok(intersectionAreaByJts(one.enclosed, other.enclosed) < 1e-6);
  });

  // Of the largest rectangles within them, the first two hold 6 each (measured).
  for (const [name, outline, least] of [
    ['a triangle', '[[0, 0], [320, 0], [0, 240]]', 9],
    ['a circle', `[${circle(110, 60).join(', ')}]`, 8],
    [
      'a plate with a slit',
      '[[0, 0], [200, 0], [200, 150], [100.5, 150], [100.5, 20], [99.9, 20], [99.9, 150], [0, 150]]',
      6,
    ],
  ] as const) {
    for (const margin of [0, 3]) {
      it(`are filled by their outlines, with a margin of ${margin} mm: ${name}`, async () => {
        const own = [`ply3: [{offcuts: ply3.offcuts.yaml, margin: ${margin} mm}, {size: [200 mm, 150 mm]}]`];
        const text = `${head}offcuts:\n  - {id: 1, outline: ${outline}}\n`;
        const { layout } = await laidOutJob(jobOf(['{spec: plate.tag.yaml, quantity: 20}'], own), withOffcuts(text));
        const [{ offcut, outline: edge, pieces, gap }] = layout.sheets as [JobSheet];
        assert.ok(offcut && pieces.length >= least, `${pieces.length} pieces`);
        const outside = [...box(-50, -50, 500, 500), ...edge.map((ring) => [...ring].reverse())];
        for (const [index, { enclosed }] of pieces.entries()) {
          assert.ok(differenceAreaByJts(enclosed, edge) < 1e-6);
          // Half a micrometre for rounding to the grid.
          assert.ok(distanceByJts(enclosed, outside) >= margin - 5e-4);
          for (const other of pieces.slice(0, index)) assert.ok(distanceByJts(enclosed, other.enclosed) >= gap - 5e-4);
        }
      });
    }
  }

  it('are written back: what is used is marked, what is left is added, and lies nowhere on what was cut', async () => {
    const before = `${head}offcuts:\n  - {size: [140 mm, 50 mm]}   # the light one\n`;
    const laid = await laidOutJob(job(3), withOffcuts(before));
    const [change, ...more] = offcutChanges(laid);
    assert.deepEqual(more, []);
    const { after } = change!;
    assert.match(after, /^# by hand\n/);
    assert.match(after, /\{id: 1, size: \[140 mm, 50 mm\], used_by: swap\.job\.yaml\} *# the light one/);
    const { offcuts } = readOffcuts(new SpecSource(after));
    const left = offcuts.filter(({ from }) => from === 'swap.job.yaml');
    assert.equal(left.length, change!.kept.length);
    assert.ok(left.length >= 1);
    // Less than the sheet without the piece on it, and most of it.
    const sheet = laid.layout.sheets.find(({ offcut }) => !offcut)!;
    const rest = 200 * 150 - unionAreaByJts(sheet.pieces.map(({ enclosed }) => enclosed));
    const kept = left.reduce((sum, { region }) => sum + unionAreaByJts([region]), 0);
    assert.ok(kept < rest && kept > 0.8 * rest, `${kept} of ${rest} mm²`);
    for (const { region, at } of leftoversOf(sheet)) {
      const there = region.map((ring) => ring.map(({ x, y }) => ({ x: x + at.x, y: y + at.y })));
      assert.ok(differenceAreaByJts(there, box(0, 0, 200, 150)) < 1e-2);
      for (const { enclosed } of sheet.pieces) assert.ok(distanceByJts(there, enclosed) >= 2 - 1e-2);
    }
  });

  it('have an outline of few corners above a row of teeth, which lies on none of them', async () => {
    const tooth = (files['plate.tag.yaml'] as string).replace(
      '{rectangle: [60 mm, 40 mm]}',
      '{polygon: {points: [[0, 0], [28, -80], [56, 0]]}}',
    );
    const tags = ['{spec: plate.tag.yaml, quantity: 10}'];
    const { layout } = await laidOutJob(jobOf(tags, ['ply3: [{size: [640 mm, 100 mm], turn: never}]']), {
      ...files,
      'plate.tag.yaml': tooth,
    });
    const [sheet] = layout.sheets;
    const [largest] = leftoversOf(sheet!);
    const { region, at } = largest!;
    const corners = region.reduce((sum, ring) => sum + ring.length, 0);
    assert.ok(corners > 0 && corners <= 8, `${corners} corners`);
    // No less than above the highest tooth.
    const top = Math.max(...sheet!.pieces.flatMap(({ enclosed }) => enclosed.flat().map(({ y }) => y)));
    assert.ok(unionAreaByJts([region]) > 0.97 * 640 * (100 - top - sheet!.gap));
    const there = region.map((ring) => ring.map(({ x, y }) => ({ x: x + at.x, y: y + at.y })));
    for (const { enclosed } of sheet!.pieces) assert.ok(distanceByJts(there, enclosed) >= sheet!.gap - 1e-2);
  });

  it('are never used twice', async () => {
    const before = `${head}offcuts:\n  - {id: 1, size: [140 mm, 50 mm]}\n`;
    const first = await laidOutJob(job(2), withOffcuts(before), 'first.job.yaml');
    const [change] = offcutChanges(first);
    const second = await laidOutJob(job(2), withOffcuts(change!.after), 'second.job.yaml');
    assert.deepEqual(
      second.layout.sheets.map(({ name }) => name),
      ['ply3 sheet 1'],
    );
  });

  it('are the same when the job is exported again, and as before when the file is taken back', async () => {
    const before = `${head}offcuts:\n  - {id: 1, size: [140 mm, 50 mm]}\n`;
    const first = await laidOutJob(job(3), withOffcuts(before));
    const [change] = offcutChanges(first);
    const again = await laidOutJob(job(3), withOffcuts(change!.after));
    assert.deepEqual(offcutChanges(again), []);
    const places = ({ layout }: typeof first) =>
      layout.sheets.map(({ name, pieces }) => [name, pieces.map(({ toSheet }) => toSheet)]);
    assert.deepEqual(places(again), places(first));
    // With fewer tags, what is no longer used is free again.
    const less = await laidOutJob(
      jobOf(['{spec: named.tag.yaml, orders: o.csv}'], ['ply3: [{offcuts: ply3.offcuts.yaml}]']),
      {
        ...withOffcuts(change!.after),
        'o.csv': 'name\nRue\n',
      },
    );
    assert.equal(less.layout.sheets[0]!.name, 'ply3 offcut 1');
  });

  describe('of a job that is exported again after others', () => {
    // What a job takes and leaves is settled by its first export.
    const before = `${head}offcuts:\n  - {id: 1, size: [140 mm, 50 mm]}\n`;
    const places = ({ layout }: Awaited<ReturnType<typeof laidOutJob>>) =>
      layout.sheets.map(({ name, pieces }) => [name, pieces.map(({ toSheet }) => toSheet)]);
    const numbered = (laid: Awaited<ReturnType<typeof laidOutJob>>) => keptOffcuts(laid).map(({ id }) => id);
    const afterOf = (laid: Awaited<ReturnType<typeof laidOutJob>>, standing: string) =>
      offcutChanges(laid)[0]?.after ?? standing;

    it('are those that it took, not those that came later', async () => {
      const first = await laidOutJob(job(3), withOffcuts(before));
      const afterFirst = afterOf(first, before);
      const numbers = numbered(first);
      // Too many for what the first has left, so it cuts from both and leaves more.
      const second = await laidOutJob(job(12), withOffcuts(afterFirst), 'june.job.yaml');
      const afterSecond = afterOf(second, afterFirst);
      assert.ok(second.layout.sheets.some(({ offcut }) => offcut && numbers.includes(offcut.offcut.id)));
      assert.ok(numbered(second).length > 0);
      const again = await laidOutJob(job(3), withOffcuts(afterSecond));
      assert.deepEqual(places(again), places(first));
      assert.deepEqual(numbered(again), numbers);
      assert.deepEqual(offcutChanges(again), []);
      assert.deepEqual(again.issues, []);
      const secondAgain = await laidOutJob(job(12), withOffcuts(afterSecond), 'june.job.yaml');
      assert.deepEqual(places(secondAgain), places(second));
      assert.deepEqual(offcutChanges(secondAgain), []);
    });

    it('keep their numbers, which are on the wood', async () => {
      const first = await laidOutJob(job(3), withOffcuts(before));
      const afterFirst = afterOf(first, before);
      const later = afterFirst + '  - {id: 40, size: [150 mm, 90 mm], from: june.job.yaml}\n';
      const again = await laidOutJob(job(3), withOffcuts(later));
      assert.deepEqual(offcutChanges(again), []);
      // One more plate leaves another piece, which takes a number that nothing else has.
      const more = await laidOutJob(job(4), withOffcuts(later));
      const { offcuts } = readOffcuts(new SpecSource(afterOf(more, later)));
      assert.equal(new Set(offcuts.map(({ id }) => id)).size, offcuts.length);
      assert.ok(offcuts.some(({ id, usedBy }) => id === 40 && usedBy === undefined));
      assert.deepEqual(
        offcuts.filter(({ from }) => from === 'swap.job.yaml').map(({ id }) => id),
        numbered(first),
      );
    });

    it('are marked, and what is left is not written down, where a changed job had been cut from already', async () => {
      const text = `${head}offcuts:\n  - {id: 1, size: [140 mm, 50 mm]}\n  - {id: 7, size: [90 mm, 70 mm], from: swap.job.yaml, used_by: autumn.job.yaml}\n`;
      const laid = await laidOutJob(job(3), withOffcuts(text));
      assert.equal(afterOf(laid, text), text.replace('50 mm]}', '50 mm], used_by: swap.job.yaml}'));
      assert.deepEqual(numbered(laid), []);
    });

    it('written by hand later are told not to be taken, and how they are', async () => {
      const later = afterOf(await laidOutJob(job(3), withOffcuts(before)), before);
      const found = `${later}  - {id: 50, size: [150 mm, 90 mm]}\n`;
      const again = await laidOutJob(job(3), withOffcuts(found));
      assert.match(again.issues[0]!.message, /^Offcut 50 came after this job was exported, so it is not taken\./);
      const two = await laidOutJob(job(3), withOffcuts(`${found}  - {id: 52, size: [150 mm, 90 mm]}\n`));
      assert.deepEqual(
        two.issues.map(({ message }) => message),
        [
          'Offcuts 50 and 52 came after this job was exported, so they are not taken. To have one taken, add “used_by: swap.job.yaml” to its line.',
        ],
      );
      const taken = found.replace('90 mm]}', '90 mm], used_by: swap.job.yaml}');
      const with50 = await laidOutJob(job(3), withOffcuts(taken));
      assert.deepEqual(with50.issues, []);
      assert.ok(with50.layout.sheets.some(({ name }) => name === 'ply3 offcut 50'));
    });
  });

  it('that another job has cut from since stay as they are', async () => {
    const before = `${head}offcuts:\n  - {id: 7, size: [90 mm, 70 mm], from: swap.job.yaml, used_by: autumn.job.yaml}\n`;
    const laid = await laidOutJob(job(1), withOffcuts(before));
    assert.deepEqual(offcutChanges(laid), []);
    assert.match(laid.issues[0]!.message, /This job left offcut 7, and autumn\.job\.yaml has cut from it since/);
    const more = `${before}  - {id: 8, size: [80 mm, 70 mm], from: swap.job.yaml, used_by: winter.job.yaml}\n`;
    const both = await laidOutJob(job(1), withOffcuts(more));
    assert.deepEqual(
      both.issues.map(({ message }) => message),
      [
        'This job left offcuts 7 and 8, and autumn.job.yaml and winter.job.yaml have cut from them since. Now it would leave others, which are not written down.',
      ],
    );
  });

  it('begin a file of their own where there is none', async () => {
    const laid = await laidOutJob(job(1));
    assert.deepEqual(
      laid.issues.map(({ severity }) => severity),
      ['info'],
    );
    const [change] = offcutChanges(laid);
    assert.equal(change!.before, undefined);
    assert.match(change!.after, /^# Offcuts of ply3\./);
    assert.ok(regionOf(change!.after, 1).length > 0);
  });

  it('with something wrong are left alone, and told in their file', async () => {
    const text = `${head}offcuts:\n  - {id: 1, size: [140 mm, 50 mm]}\n  - {id: 1, size: [140 mm, 50 mm]}\n  - {id: 2}\n  - {id: 3, size: [0, 5]}\n  - {id: 4, outline: [[0, 0], [9, 9]]}\n  - {id: 5, sise: [90, 90]}\n`;
    const checked = await checkedJob(job(1), withOffcuts(text));
    assert.deepEqual(
      checked.inFiles
        .flatMap(({ issues, position }) => issues.map(({ code, range }) => `${position(range.start).line} ${code}`))
        .sort(),
      ['5 name-clash', '6 missing-key', '7 bad-length', '8 bad-value', '9 missing-key', '9 unknown-key'],
    );
    assert.equal(checked.offcuts.get('ply3.offcuts.yaml')!.offcuts.length, 1);
  });

  it('are told every problem of theirs, whatever their points are', () => {
    const outline = '[[x, 0], [100, 0], [100, 100, 3], [0, y], 7]';
    const text = `${head}offcuts:\n  - {id: 1, outline: ${outline}, holes: [[[1, 1], [b, 2], [3]], 5]}\n  - {id: 2, size: [140 mm, 50 mm]}\n`;
    const { offcuts, issues } = readOffcuts(new SpecSource(text));
    assert.deepEqual(
      offcuts.map(({ id }) => id),
      [2],
    );
    const told = issues.map(({ range: { start, end } }) => text.slice(start, end)).sort();
    assert.deepEqual(told, ['5', '7', '[100, 100, 3]', '[3]', 'b', 'x', 'y']);
  });

  it('of one file are not given to two stocks', async () => {
    const two = [...sheets, 'cherry2: [{offcuts: ply3.offcuts.yaml}]'];
    const checked = await checkedJob(jobOf(['{spec: plate.tag.yaml}'], two), withOffcuts(`${head}offcuts: []\n`));
    assert.match(checked.issues[0]!.message, /listed already, under “ply3”: an offcut is used once/);
  });
});
