import assert from 'node:assert/strict';
import { area, boundsOf } from '../../../src/geometry/measure.ts';
import { checkBatch } from '../../../src/engine/batch.ts';
import { partsOf } from '../../../src/geometry/parts.ts';
import type { Bounds, Region } from '../../../src/geometry/types.ts';
import { distance } from '../support/distance.ts';
import {
  assertNear,
  makeShapeUnchecked,
  makeUnchecked,
  newEngine,
  placeOf,
  report,
  specOf,
} from '../support/engine.ts';
import type { Unchecked } from '../support/engine.ts';

/** The ink of each line. */
function linesIn({ report: { tag } }: Unchecked): Region[] {
  const [, solid] = [...tag!.made].find(([shape]) => shape.generator.kind === 'lines')!;
  return solid.lettering!.map(({ letters }) => letters.flatMap(({ region }) => region));
}

const boxes = (made: Unchecked): Bounds[] => linesIn(made).map((ink) => boundsOf(ink)!);
const heightOf = ({ minY, maxY }: Bounds): number => maxY - minY;

describe('Lines', () => {
  it('share the size of their letters: twice the share, twice as high', async () => {
    const made = await makeShapeUnchecked('{lines: [{text: xx, share: 2}, {text: xx}], font: Nunito, width: 60}');
    const [first, second] = boxes(made);
    assertNear(heightOf(first!), 2 * heightOf(second!), 0.02);
    assertNear(made.width, 60, 0.01);
  });

  it('have small letters of the height that is asked for in the largest, whatever its font', async () => {
    for (const font of ['Nunito', 'Pacifico', 'Great Vibes']) {
      const alone = await makeShapeUnchecked(`{text: x, font: ${font}, x_height: 8}`);
      const made = await makeShapeUnchecked(
        `{lines: [{text: x, font: ${font}, share: 3}, {text: x, font: Nunito}], x_height: 8}`,
      );
      assertNear(heightOf(boxes(made)[0]!), alone.height, 0.02, font);
    }
    const capitals = await makeShapeUnchecked('{text: H, font: Nunito, cap_height: 8}');
    const made = await makeShapeUnchecked('{lines: [{text: H, share: 3}, {text: x}], font: Nunito, cap_height: 8}');
    assertNear(heightOf(boxes(made)[0]!), capitals.height, 0.02);
  });

  for (const gap of [0.5, 1, 3]) {
    it(`are ${gap} mm apart from ink to ink where that is asked for`, async () => {
      const made = await makeShapeUnchecked(
        `{lines: [{text: nanna}, {text: HEE}], font: Nunito, width: 40, gap: ${gap}}`,
      );
      const [first, second] = boxes(made);
      assertNear(first!.minY - second!.maxY, gap, 0.05);
    });
  }

  it('are 0.8 of the mean of their letters’ heights apart where nothing is said and no letter rises or hangs', async () => {
    const { height: x } = await makeShapeUnchecked('{text: x, font: Nunito, x_height: 8}');
    for (const share of [1, 2, 4]) {
      const made = await makeShapeUnchecked(
        `{lines: [{text: nanna, share: ${share}}, {text: nanna}], font: Nunito, x_height: 8}`,
      );
      const [first, second] = boxes(made);
      const mean = (8 + 8 / share) / 2;
      // Round letters go a little below the line and above the height that the font states.
      assertNear(first!.minY - second!.maxY, 0.8 * mean, 0.1 + x - 8, `${share}`);
    }
    // What rises comes nearer: 0.45 of that. Capitals alone are seen as high as they are.
    const risen = boxes(await makeShapeUnchecked('{lines: [nanna, lll], font: Nunito, x_height: 8}'));
    assertNear(risen[0]!.minY - risen[1]!.maxY, 0.45 * 8, 0.3);
    const capitals = boxes(await makeShapeUnchecked('{lines: [HILL, HILL], font: Nunito, cap_height: 8}'));
    assertNear(capitals[0]!.minY - capitals[1]!.maxY, 0.45 * 8, 0.1);
  });

  it('come no nearer than the gap anywhere, where what hangs down reaches between what stands up', async () => {
    const made = await makeShapeUnchecked('{lines: [{text: gypsy}, {text: dill}], font: Pacifico, width: 40, gap: 1}');
    const [first, second] = linesIn(made);
    const least = distance(first!, second!);
    assert.ok(least > 0.97 && least < 1.6, `${least}`);
  });

  it('are tight where nothing is said: Nana and Bear on a 4 mm backing are one piece', async () => {
    const made = await makeUnchecked(
      specOf([
        'words: {lines: [{text: Nana}, {text: Bear}], font: Pacifico, width: 60}',
        'body: {around: words, by: 4}',
      ]),
    );
    assert.equal(partsOf(made.region).length, 1);
    const [first, second] = linesIn(made);
    assert.ok(distance(first!, second!) < 8);
  });

  it('stand left, right or in the middle, each or all', async () => {
    const [left, right, middle, wide] = boxes(
      await makeShapeUnchecked(
        '{lines: [{text: i, align: left}, {text: i, align: right}, {text: i, align: center}, {text: mmmm}], font: Nunito, width: 40}',
      ),
    );
    assertNear(left!.minX, wide!.minX, 0.01);
    assertNear(right!.maxX, wide!.maxX, 0.01);
    assertNear(middle!.minX + middle!.maxX, wide!.minX + wide!.maxX, 0.01);
    const [all, longest] = boxes(
      await makeShapeUnchecked('{lines: [{text: i}, {text: mm}], font: Nunito, width: 40, align: right}'),
    );
    assertNear(all!.maxX, longest!.maxX, 0.01);
  });

  it('have a font and a weight each, or that of the shape', async () => {
    const made = await makeShapeUnchecked(
      '{lines: [{text: ll}, {text: ll, weight: 900}, {text: ll, font: Pacifico}], font: Nunito, weight: 300, width: 40}',
    );
    const [light, heavy, script] = linesIn(made).map((ink) => area(ink));
    assert.ok(heavy! > 1.3 * light!, `${heavy} and ${light}`);
    assert.notEqual(script, light);
    const { fonts } = made.report;
    assert.deepEqual(
      fonts.map(({ family, weight }) => `${family} ${weight}`),
      ['Nunito 600', 'Nunito 800', 'Pacifico 400'],
    );
  });

  it('may have room between the letters, in millimetres', async () => {
    const widthOf = async (spacing: string) => {
      const made = await makeShapeUnchecked(
        `{lines: [{text: mmmmmm}, {text: HHH${spacing}}], font: Nunito, x_height: 5}`,
      );
      const { minX, maxX } = boxes(made)[1]!;
      return maxX - minX;
    };
    assertNear((await widthOf(', letter_spacing: 1')) - (await widthOf('')), 2, 0.02);
  });

  it('have the height that is asked for, gap and growth included', async () => {
    assertNear(
      (await makeShapeUnchecked('{lines: [{text: Nana}, {text: Bear}], font: Nunito, height: 30, gap: 4}')).height,
      30,
      0.06,
    );
    const grown = await makeShapeUnchecked(
      '{lines: [{text: Nana}, {text: Bear}], font: Nunito, width: 50, gap: 1, grow: 0.4}',
    );
    assertNear(grown.width, 50, 0.06);
  });

  it('go in anywhere, as one', async () => {
    const made = await makeUnchecked(
      specOf(
        [
          'plate: {ellipse: 50}',
          'words: {lines: [{text: Nana}, {text: Bear}], font: Pacifico, fit: {in: plate, margin: 3, at_most: {x_height: 6}}}',
        ],
        'body: [plate], engrave: [words]',
      ),
    );
    const far = Math.max(...made.pieces[0]!.marks[0]!.region.flat().map(({ x, y }) => Math.hypot(x, y)));
    assert.ok(far < 22.03);
  });
});

describe('Lines that are optional', () => {
  const spec = (cells: string, more = '') =>
    [
      'tagwright: 1',
      `batch: [${cells}]`,
      'shapes:',
      '  words:',
      '    lines:',
      '      - {text: "{name}", share: 2}',
      `      - {text: "sown in {month}", optional: true}${more}`,
      '    font: Nunito',
      '    x_height: 6',
      'pieces:',
      '  tag: {body: [words], parts: many}',
      '',
    ].join('\n');

  it('are left out where their cell is empty or not there, and the others close up', async () => {
    const both = await makeUnchecked(spec('{name: Dill, month: May}'));
    assert.equal(linesIn(both).length, 2);
    const alone = await makeShapeUnchecked('{lines: [{text: Dill}], font: Nunito, x_height: 6}');
    for (const cells of ['{name: Dill, month: ""}', '{name: Dill}, {name: Ty, month: May}']) {
      const made = await makeUnchecked(spec(cells));
      assert.equal(linesIn(made).length, 1);
      assertNear(made.height, alone.height, 1e-6);
    }
  });

  it('are told where they are not optional', async () => {
    const text = spec('{name: Dill, month: ""}')
      .replace('optional: true', 'optional: false')
      .replace('sown in {month}', '{month}');
    const { issues } = await report(text);
    assert.match(issues[0]!.message, /“Dill” leaves .* empty/);
  });

  it('are not left out for a column that there is not', async () => {
    const made = await report(spec('{name: Dill, month: May}').replace('{month}', '{mnth}'));
    assert.match(made.issues[0]!.message, /There is no column “mnth”/);
    assert.equal(placeOf(made, made.issues[0]!).line, 7);
  });

  it('cannot all be empty', async () => {
    const { issues } = await report(specOf(['body: {lines: [{text: "", optional: true}], font: Nunito, x_height: 5}']));
    assert.match(issues[0]!.message, /all are empty/);
  });
});

describe('Lines with something wrong', () => {
  for (const [shape, message] of [
    ['{lines: [{text: A}], font: Nunito}', /has no size/],
    ['{lines: [{text: A}], font: Nunito, x_height: 5, cap_height: 6}', /both set the size/],
    ['{lines: [{text: A}], arc: {sweep: 90}, width: 30}', /“arc” goes with text, but this shape is a lines/],
    ['{text: A, gap: 2, width: 30}', /“gap” goes with lines/],
    ['{lines: [{text: ""}], width: 30}', /The text is empty/],
  ] as const) {
    it(`say so: ${shape}`, async () => {
      assert.match((await report(specOf([`body: ${shape}`]))).issues[0]!.message, message);
    });
  }

  it('say which letter a font lacks, at the line', async () => {
    const made = await report(specOf(['body: {lines: [{text: A}, {text: "\u4e2d"}], font: Pacifico, width: 30}']));
    const found = made.issues.find(({ code }) => code === 'missing-glyph');
    assert.deepEqual(found?.path, ['shapes', 'body', 'lines', 1, 'text']);
  });
});

describe('Lettering on a line', () => {
  const names = ['March', 'April', 'Egg', 'one', 'Sea Kale', 'Ty'];
  const batch = (shape: string) =>
    [
      'tagwright: 1',
      `batch: [${names.join(', ')}]`,
      'shapes:',
      '  plate: {rectangle: [80, 30]}',
      `  word: ${shape}`,
      'pieces:',
      '  tag: {body: [plate], engrave: [word], hanger: {hole: {at: left, diameter: 4}}}',
      '',
    ].join('\n');
  /** Where the feet of its letters are, as its font has it; and how high its small letters are. */
  const lineOf = async (text: string, row: number) => {
    const engine = newEngine();
    const made = await engine.compute(text, { locate: () => undefined, row });
    const [, solid] = [...made.tag!.made].find(([shape]) => shape.name === 'word')!;
    return { foot: solid.band!.baseline, xHeight: solid.lettering![0]!.xHeight };
  };

  for (const [what, shape] of [
    ['put in the middle', '{text: "{name}", font: Nunito, x_height: 5, align: baseline, place: {on: plate}}'],
    [
      'put at the bottom',
      '{text: "{name}", font: Nunito, x_height: 5, align: baseline, place: {on: plate, at: bottom, margin: 6}}',
    ],
    [
      'put at the top',
      '{text: "{name}", font: Nunito, x_height: 5, align: baseline, place: {on: plate, at: top, margin: 4}}',
    ],
    ['fitted', '{text: "{name}", font: Nunito, align: baseline, fit: {in: plate, margin: 3, at_most: {x_height: 8}}}'],
  ] as const) {
    it(`stands equally high on all tags of a batch: ${what}`, async () => {
      const feet = await Promise.all(names.map(async (_, row) => (await lineOf(batch(shape), row)).foot));
      for (const foot of feet) assertNear(foot, feet[0]!, 1e-6);
      if (what === 'put at the bottom') assertNear(feet[0]!, -15 + 6, 1e-6);
    });
  }

  it('does not without being asked to', async () => {
    const shape = '{text: "{name}", font: Nunito, x_height: 5, place: {on: plate, at: bottom, margin: 6}}';
    assert.ok(Math.abs((await lineOf(batch(shape), 0)).foot - (await lineOf(batch(shape), 1)).foot) > 1);
  });

  it('has the same size on all tags where that is asked for: the largest at which all have room', async () => {
    const shape = (more: string) =>
      `{text: "{name}", font: Nunito, align: baseline, fit: {in: plate, margin: 3${more}}}`;
    const each = await Promise.all(names.map(async (_, row) => (await lineOf(batch(shape('')), row)).xHeight));
    const same = await Promise.all(
      names.map(async (_, row) => (await lineOf(batch(shape(', same_size: true')), row)).xHeight),
    );
    for (const xHeight of same) assertNear(xHeight, Math.min(...each), 0.02);
    assert.ok(Math.max(...each) > 1.2 * Math.min(...each));
  });

  describe('makes room for the letters of its batch', () => {
    const tags = (words: readonly string[], plate: string, hole = '') =>
      [
        'tagwright: 1',
        `batch: [${words.join(', ')}]`,
        'shapes:',
        `  plate: {rectangle: ${plate}}`,
        `  word: {text: "{name}", font: Nunito, weight: 800, fit: {in: plate, margin: 3, same_size: true}, align: baseline}`,
        'pieces:',
        `  tag: {body: [plate], engrave: [word]${hole}}`,
        '',
      ].join('\n');
    const below = ', hanger: {hole: {at: top, diameter: 3}}';

    it('and no others: initials are as large as where they stand by themselves, and below their hole', async () => {
      const initials = ['A', 'E', 'T', 'V', 'O', 'J', 'M', 'L'];
      const text = tags(initials, '[24, 24]', below);
      const [even, single] = [await lineOf(text, 0), await lineOf(text.replace(', align: baseline', ''), 0)];
      assert.ok(even.xHeight > 0.98 * single.xHeight, `${even.xHeight} of ${single.xHeight}`);
      // Of those that stood aside there was an info, `off-centre`.
      const engine = newEngine();
      const options = { locate: () => undefined };
      const all = await checkBatch(engine, await engine.compute(text, options), options);
      assert.deepEqual(all.report.issues, []);
    });

    it('so that names without a descender are as large as the plate is high, and capitals in its middle', async () => {
      for (const words of [
        ['ANNA', 'TOM', 'EVA'],
        ['Lina', 'Tom', 'Eva'],
      ]) {
        const [first, ...others] = await Promise.all(
          words.map(async (_, row) => {
            const made = await newEngine().compute(tags(words, '[90, 16]'), { locate: () => undefined, row });
            const [mark] = made.tag!.pieces[0]!.marks;
            return boundsOf(mark!.region)!;
          }),
        );
        // The letters O and C reach beyond the line, as in any face.
        assert.ok(first!.maxY - first!.minY > 9, JSON.stringify(first));
        for (const other of others) assertNear(other.minY, first!.minY, 0.4);
        if (words[0] === 'ANNA') assertNear(first!.minY + first!.maxY, 0, 0.3);
      }
    });
  });

  it('has it a little later where somebody types: until then each is as large as it was, or as it has room for', async () => {
    const spec = (margin: number) =>
      batch(`{text: "{name}", font: Nunito, align: baseline, fit: {in: plate, margin: ${margin}, same_size: true}}`);
    const engine = newEngine();
    const xHeight = async (margin: number, isHasty: boolean) => {
      const made = await engine.compute(spec(margin), { locate: () => undefined, isHasty });
      const [, solid] = [...made.tag!.made].find(([shape]) => shape.name === 'word')!;
      return { is: solid.lettering![0]!.xHeight, isHasty: made.isHasty ?? false };
    };
    const own = await xHeight(3, true);
    const exact = await xHeight(3, false);
    assert.deepEqual([own.isHasty, exact.isHasty], [true, false]);
    assert.ok(own.is >= exact.is);
    assert.deepEqual(await xHeight(3, true), exact);
    // No larger than it was, and no larger than there is room for now.
    const wider = await xHeight(2.5, true);
    assert.ok(wider.isHasty && Math.abs(wider.is - exact.is) < 0.02);
    const narrow = await xHeight(11, true);
    assert.ok(narrow.isHasty && narrow.is < exact.is);
  });

  it('leaves lines of a batch as far apart as any', async () => {
    const text = batch(
      '{lines: [{text: "{name}", share: 2}, {text: sown}], font: Pacifico, x_height: 5, align: baseline, place: {on: plate}}',
    );
    const tops = await Promise.all(
      names.map(async (_, row) => {
        const made = await newEngine().compute(text, { locate: () => undefined, row });
        const [, solid] = [...made.tag!.made].find(([shape]) => shape.name === 'word')!;
        const [, second] = solid.lettering!;
        return boundsOf(second!.letters.flatMap(({ region }) => region))!.maxY;
      }),
    );
    for (const top of tops) assertNear(top, tops[0]!, 1e-4);
  });
});
