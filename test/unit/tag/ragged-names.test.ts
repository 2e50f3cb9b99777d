import assert from 'node:assert/strict';
import { intersection } from '../../../src/geometry/clipper.ts';
import { area } from '../../../src/geometry/measure.ts';
import { distance } from '../support/distance.ts';
import { assertNear, newEngine } from '../support/engine.ts';

/** Short and long, with accents above and below, apostrophes and two words. */
const names = [
  ...['Ty', 'Jo', 'Zoë', 'Anaïs', "O'Neill", 'D’Arcy', 'Mrs Featherstonehaugh', 'Łukasz', 'Ørjan', 'Jiří'],
  ...['İpek', 'Ștefan', 'Tomáš', 'Nguyễn', 'Đặng', 'Ana Lucía', 'Mary Ann', 'Per Åge', 'Gwyneth', 'Jiggy'],
  ...['Penelope', 'Maximiliana', 'Jean-Luc', 'Æthelred', 'Ħamrun', 'St. John', 'Ugo', 'Quincy', 'Ægir & Þór', 'Ida ſ'],
];

const spec = (more = '') =>
  [
    'tagwright: 1',
    `batch: [${names.map((name) => JSON.stringify(name)).join(', ')}]`,
    'shapes:',
    '  plate: {label: {size: [86, 34], clip: 10}}',
    '  name:',
    '    text: "{name}"',
    '    font: [Pacifico, plain.otf]',
    '    align: baseline',
    `    fit: {in: plate, margin: 3, clear: 1.5, at_most: {x_height: 5.5}${more}}`,
    '  sown: {text: sown in spring, font: Nunito, weight: 600, x_height: 2.4, place: {on: plate, at: bottom, margin: 3.5}}',
    'pieces:',
    '  label: {body: [plate], engrave: [name, sown], hanger: {hole: {at: left, diameter: 4}}}',
    '',
  ]
    .join('\n')
    .replace('plain.otf', 'Alfa Slab One');

describe('Thirty ragged names', () => {
  const engine = newEngine();
  const made = async (row: number, text = spec()) => {
    const report = await engine.compute(text, { locate: () => undefined, row });
    const [piece] = report.tag!.pieces;
    const [name, sown] = piece!.marks;
    const [, solid] = [...report.tag!.made].find(([shape]) => shape.name === 'name')!;
    return {
      report,
      piece: piece!,
      name: name!,
      sown: sown!,
      band: solid.band!,
      xHeight: name!.lettering![0]!.xHeight,
    };
  };

  it('overlap nothing, stand on one line, and are no larger than asked for', async () => {
    const { band } = await made(0);
    for (const [row, label] of names.entries()) {
      if (label === 'Ida ſ') continue;
      const { piece, name, sown, xHeight, ...own } = await made(row);
      assert.equal(area(intersection(name.region, sown.region)), 0, label);
      assert.ok(distance(name.region, sown.region) > 1.47, `${label} is near the line below`);
      assert.ok(distance(name.region, piece.hangers[0]!.opening) > 1.47, `${label} is near the hole`);
      assert.ok(distance(name.region, piece.body) > 2.97, `${label} is near the edge`);
      assertNear(own.band.baseline, band.baseline, 0.01, label);
      assert.ok(xHeight < 5.51 && xHeight > 3, `${label}: ${xHeight}`);
      // Only what has no room is smaller: a long name, or an accent that reaches the edge.
      if (label.length < 12 && !/[ŘÅĀ]/iu.test(label.normalize('NFC').replace(/[^ÅåŘĀ]/gu, '')))
        assertNear(xHeight, 5.5, 0.02, label);
    }
  });

  it('have one size where that is asked for: the smallest that any of them has', async () => {
    const text = spec(', same_size: true');
    const rows = [0, 6, 17];
    const sizes = await Promise.all(rows.map(async (row) => (await made(row, text)).xHeight));
    const long = (await made(6)).xHeight;
    for (const size of sizes) assertNear(size, long, 0.02);
  });

  it('stand on one line, no larger than asked for, with letters that slide together too', async () => {
    const slid = spec().replace('align: baseline', 'align: baseline\n    overlap: 0.4');
    const bands = [];
    for (const row of [0, 2, 10, 24]) {
      const { band, xHeight } = await made(row, slid);
      assertNear(xHeight, 5.5, 0.05, names[row]);
      bands.push(band.baseline);
    }
    for (const baseline of bands) assertNear(baseline, bands[0]!, 0.01);
  });

  it('say which letter none of the fonts has', async () => {
    const { report } = await made(names.length - 1);
    const found = report.issues.find(({ code }) => code === 'missing-glyph');
    assert.match(found!.message, /^None of the fonts Pacifico, Alfa Slab One has “ſ”\.$/);
  });
});

describe('A letter that a font lacks', () => {
  const engine = newEngine();
  const compute = (shape: string) =>
    engine.compute(
      ['tagwright: 1', 'shapes:', `  body: ${shape}`, 'pieces:', '  a: {body: [body], parts: many}', ''].join('\n'),
      {
        locate: () => undefined,
      },
    );

  it('is the next font’s, as large as the others, and a warning says so where it stands out', async () => {
    const report = await compute('{text: xΩx, font: [Alfa Slab One, Nunito], x_height: 6}');
    const found = report.issues.filter(({ code }) => code === 'other-style');
    assert.deepEqual(
      found.map(({ message, severity }) => [message, severity]),
      [['Alfa Slab One has no “Ω”; that of Nunito was used instead, and looks much lighter than the rest.', 'warning']],
    );
    assert.deepEqual(
      report.fonts.map(({ family }) => family),
      ['Alfa Slab One', 'Nunito'],
    );
    const [, solid] = [...report.tag!.made][0]!;
    const [, omega] = solid.lettering![0]!.letters;
    const alone = await compute('{text: Ω, font: Nunito, x_height: 6}');
    const [, own] = [...alone.tag!.made][0]!;
    assertNear(area(omega!.region), area(own.region), 0.05);
  });

  it('changes nothing where none is lacking', async () => {
    const listed = await compute('{text: Rue, font: [Pacifico, Nunito], x_height: 6}');
    const alone = await compute('{text: Rue, font: Pacifico, x_height: 6}');
    assert.deepEqual(listed.tag!.pieces[0]!.region, alone.tag!.pieces[0]!.region);
    assert.deepEqual(
      listed.fonts.map(({ family }) => family),
      ['Pacifico'],
    );
  });

  it('does not hide that a font of the list is not there', async () => {
    const { issues } = await compute('{text: Rue, font: [Pacifico, Nunitoo], x_height: 6}');
    assert.equal(issues[0]!.code, 'unknown-font');
    assert.deepEqual(issues[0]!.path, ['shapes', 'body', 'font', 1]);
  });
});
