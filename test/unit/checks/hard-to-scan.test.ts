import assert from 'node:assert/strict';
import { boundsOf } from '../../../src/geometry/measure.ts';
import { newEngine, report, specOf } from '../support/engine.ts';

interface Laid {
  readonly head?: string;
  readonly plate?: string;
  readonly link?: string;
  readonly piece?: string;
}

/** A code of 21 modules in the middle of a plate, engraved by a beam of 0.2 mm. */
async function reported({
  head = '',
  plate = '40, 40',
  link = 'size: 21',
  piece = 'engrave: [link]',
}: Laid): Promise<string[]> {
  const shapes = [
    `plate: {rectangle: [${plate}]}`,
    `link: {code: "SEED 4711", ${link}, place: {on: plate, by: box}}`,
    'dot: {ellipse: 2, nudge: {up: 12.5}}',
  ];
  const { issues } = await report(specOf(shapes, `body: [plate], ${piece}`, [`stock: {kerf: 0.2 mm${head}}`]));
  return issues.filter(({ code }) => code === 'hard-to-scan').map(({ message }) => message);
}

// A module of this code is a twenty-first of its side.
describe('hard-to-scan', () => {
  it('is silent about a code with modules of three beams and four modules clear', async () => {
    assert.deepEqual(await reported({}), []);
    assert.deepEqual(await reported({ link: `size: ${21 * 0.601}` }), []);
    assert.deepEqual(await reported({ plate: '29.1, 29.1' }), []);
  });

  it('tells modules that are less than three beams', async () => {
    assert.deepEqual(await reported({ link: `size: ${21 * 0.59}` }), [
      'The modules of this code are 0.59 mm; minimum 0.60 mm for this beam, 3 times its width: a size of 12.6 mm.',
    ]);
    assert.equal(
      (await reported({ link: `size: ${21 * 0.7}`, head: '}\nmachine: {cut: 10 mm/s, hatch: 0.25 mm' })).length,
      1,
    );
    assert.equal(
      (await reported({ link: `size: ${21 * 0.76}`, head: '}\nmachine: {cut: 10 mm/s, hatch: 0.25 mm' })).length,
      0,
    );
  });

  it('tells how much is clear where an edge, an opening or another mark is nearer than four modules', async () => {
    const [edge] = await reported({ plate: '27, 40' });
    assert.match(
      edge!,
      /^Only 3\.\d\d mm is clear round this code; minimum 4\.00 mm, 4 of its modules \(ISO\/IEC 18004\)\.$/,
    );
    // The dot begins 1 mm above the code.
    assert.match(
      (await reported({ piece: 'engrave: [link, dot]' }))[0]!,
      /^“dot” leaves only 1\.0\d mm clear round “link”; minimum 4\.00 mm, 4 of its modules \(ISO\/IEC 18004\)\.$/,
    );
    assert.match((await reported({ piece: 'engrave: [link], cut: [dot]' }))[0]!, /^“dot” leaves only 1\.\d\d mm clear/);
    assert.deepEqual(await reported({ piece: 'engrave: [link, {from: dot, nudge: {up: 3.1}}]' }), []);
  });

  it('is silent about lettering fitted beside it, drawn before it or after it, however little it is to keep clear', async () => {
    const shapes = [
      'plate: {rectangle: [80, 36], radius: 4}',
      'link: {code: "SEED 4711", size: 21, place: {on: plate, at: right, margin: 5}}',
      'note: {text: Borrow me, font: Nunito, fit: {in: plate, margin: 2, clear: 1}}',
    ];
    for (const engrave of ['link, note', 'note, link']) {
      const { issues, tag } = await report(specOf(shapes, `body: [plate], engrave: [${engrave}]`));
      assert.deepEqual(
        issues.filter(({ code }) => code === 'hard-to-scan').map(({ message }) => message),
        [],
      );
      const note = tag!.pieces[0]!.marks.find(({ shape }) => shape.name === 'note')!;
      // The code is 21 modules of 1 mm, 5 mm from the edge at 40; its quiet zone reaches 4 mm further.
      const right = Math.max(...note.region.flat().map(({ x }) => x));
      assert.ok(right <= 40 - 5 - 21 - 4 + 0.01 && right > 40 - 5 - 21 - 4 - 1, `${right}`);
    }
  });

  it('is silent about a code that is as large as goes: it keeps its quiet zone, at a side and beside others too', async () => {
    for (const [link, note] of [
      ['fit: {in: plate}', 'width: 30, place: {on: plate, at: left, margin: 4}'],
      ['fit: {in: plate, margin: 5, clear: 1.5}', 'width: 30, place: {on: plate, at: left, margin: 4}'],
      ['fit: {in: plate, margin: 1}, place: {on: plate, at: right}', 'width: 30, place: {left_of: link}'],
      [
        'fit: {in: plate, margin: 2}, place: {on: plate, at: top}',
        'width: 14, place: {on: plate, at: left, margin: 1}',
      ],
    ]) {
      const text = specOf(
        [
          'plate: {rectangle: [80, 36], radius: 4}',
          `note: {text: Swap, font: Nunito, weight: 700, ${note}}`,
          `link: {code: "https://example.org/lend/42", ${link}}`,
        ],
        'body: [plate], engrave: [note, link]',
      );
      const { issues, tag } = await newEngine().compute(text, { locate: () => undefined });
      assert.deepEqual(
        issues.filter(({ code }) => code === 'hard-to-scan').map(({ message }) => message),
        [],
        link,
      );
      const mark = tag!.pieces[0]!.marks.find(({ codes = [] }) => codes.length > 0)!;
      // No larger than half the plate is high would be a waste of it; 36 mm less eight of 33 modules is 29.
      assert.ok(boundsOf(mark.region)!.maxY - boundsOf(mark.region)!.minY > 18, link);
    }
  });

  it('tells a code of which only the outlines are scored', async () => {
    assert.deepEqual(await reported({ piece: 'score: [link]' }), [
      'Only the outlines of this code would be scored, which nothing reads; engrave it.',
    ]);
  });

  it('tells a code that comes out light on dark, and not one that is left out of a light panel', async () => {
    const message =
      'This code comes out light on dark, which many phones do not read. Engrave a panel without it instead, or the code alone.';
    const clear = ', material: black acrylic';
    assert.deepEqual(await reported({ head: clear }), [message]);
    const panel = 'engrave: [{difference: [{rectangle: [30, 30]}, link]}]';
    assert.deepEqual(await reported({ head: clear, piece: panel }), []);
    assert.deepEqual(await reported({ piece: panel }), [message]);
    const tight = 'engrave: [{difference: [{rectangle: [25, 25]}, link]}]';
    assert.match((await reported({ head: clear, piece: tight }))[0]!, /^Only 2\.00 mm is clear/);
  });

  it('tells bridges that hide more than half of a module', async () => {
    const cut = { plate: '60, 60', link: 'size: 42, bridges: 0.99', piece: 'cut: [link]' };
    assert.deepEqual(await reported(cut), []);
    assert.deepEqual(await reported({ ...cut, link: 'size: 42, bridges: 1.01' }), [
      'Bridges of 1.01 mm hide too much of modules of 2.00 mm; at most half of a module.',
    ]);
  });
});
