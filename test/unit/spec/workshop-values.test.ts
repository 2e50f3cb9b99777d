import assert from 'node:assert/strict';
import { newEngine, placeOf, report } from '../support/engine.ts';

const spec = `tagwright: 1
use: shop.workshop.yaml
stock: ply3
tie: jute
shapes:
  plate: {rectangle: [60, 30], radius: 3}
pieces:
  tag: {body: [plate], hanger: {hole: {at: left}}}
`;

const shop = (stock: string, tie = '{twine: 2 mm}', more = ''): Record<string, string> => ({
  'shop.workshop.yaml': `tagwright: 1\nstocks:\n  ply3: ${stock}\nties:\n  jute: ${tie}\n${more}`,
});

const read = (stock: string, tie?: string, more?: string, text = spec) =>
  report(text, newEngine(shop(stock, tie, more)));

const messagesOf = async (stock: string, tie?: string) => {
  const made = await read(stock, tie);
  return made.issues.map((issue) => `${issue.code} “${placeOf(made, issue).text}”: ${issue.message}`).join('\n');
};

/** Joined by 1.1 mm. */
const dumbbell =
  'polygon: {points: [[0, 0], [20, 0], [20, 9.45], [30, 9.45], [30, 0], [50, 0], [50, 20], [30, 20], [30, 10.55], [20, 10.55], [20, 20], [0, 20]]}';

describe('What a workshop file says of a stock', () => {
  it('is how it is cut, worked, read, seen and warned of', async () => {
    const made = await read(
      '{material: birch plywood, thickness: 3 mm, kerf: {outer: 0.16 mm, inner: 0.14 mm}, min_web: 1.2 mm, min_x_height: 1.4 mm, ' +
        'caution: " Peel the film. ", look: {color: "#EEDDBB", grain: up-down, engraving: light}, ' +
        'machine: {cut: 12 mm/s, hatch: 0.08 mm, passes: {cut: 2}, power: {cut: 80 %, engrave: 30}}, ' +
        'measured_on: {kerf: 2026-03-14, min_web: 2026-03-15}}',
    );
    assert.deepEqual(made.issues, []);
    const { stock, machine } = made.model!;
    assert.equal(stock.name, 'ply3');
    assert.equal(stock.minXHeight, 1.4);
    assert.equal(stock.caution, 'Peel the film.');
    assert.deepEqual(stock.look, { color: '#EEDDBB', grain: 'up-down', engraving: 'light' });
    assert.deepEqual(stock.measuredOn, { kerf: '2026-03-14', min_web: '2026-03-15' });
    assert.deepEqual(stock.stated, { kerf: true, minWeb: true });
    assert.equal(machine!.cut, 12);
    assert.equal(machine!.hatch, 0.08);
    assert.deepEqual(machine!.passes, { cut: 2, score: 1, engrave: 1 });
    assert.deepEqual(machine!.power, { cut: '80 %', engrave: '30' });
  });

  it('of the machine counts after the spec’s own and before the file’s', async () => {
    const more = 'machine: {cut: 5 mm/s, score: 6 mm/s, travel: 333 mm/s}\n';
    const stock = '{machine: {cut: 12 mm/s, passes: {cut: 3}}}';
    const byFile = (await read(stock, undefined, more)).model!.machine!;
    assert.deepEqual([byFile.cut, byFile.score, byFile.travel, byFile.passes.cut], [12, 6, 333, 3]);
    const own = spec.replace('tie:', 'machine: {cut: 9 mm/s}\ntie:');
    const bySpec = (await read(stock, undefined, more, own)).model!.machine!;
    assert.deepEqual([bySpec.cut, bySpec.score, bySpec.passes.cut], [9, undefined, 3]);
  });

  it('of a tie is the hole that it was seen to go through, which hangers then have', async () => {
    const made = await read('{}', '{twine: 2 mm, opening: 3.4 mm, measured_on: 2026-03-14}');
    assert.equal(made.tag!.pieces[0]!.hangers[0]!.openingSize, 3.4);
    const tight = spec.replace('at: left', 'at: left, diameter: 3.2 mm');
    const messages = await read('{kerf: 0.1 mm}', '{twine: 2 mm, opening: 3.4 mm, measured_on: 2026-03-14}', '', tight);
    assert.deepEqual(
      messages.issues.map(({ message }) => message),
      ['The hole is 3.20 mm; 2.00 mm twine, doubled, needs 3.40 mm, measured on 2026-03-14.'],
    );
  });

  const faults: readonly (readonly [what: string, stock: string, tie: string | undefined, pattern: RegExp])[] = [
    [
      'a kerf no beam has',
      '{kerf: 16 mm}',
      undefined,
      /bad-length .*line 3: “kerf” is 16\.00 mm, more than any kerf here \(2 mm\)/,
    ],
    ['a negative kerf', '{kerf: -0.1 mm}', undefined, /bad-length .*“kerf” cannot be less than 0/],
    ['a web of nothing', '{min_web: 0 mm}', undefined, /“min_web” must be more than 0/],
    [
      'letters as high as a hand',
      '{min_x_height: 90 mm}',
      undefined,
      /“min_x_height” is 90\.00 mm, more than any engraved letter here/,
    ],
    [
      'a web under the kerf',
      '{kerf: 0.3 mm, min_web: 0.2 mm}',
      undefined,
      /“min_web” is 0\.20 mm, less than the kerf of 0\.30 mm: one of the two is wrong/,
    ],
    [
      'a day that is none',
      '{kerf: 0.1 mm, measured_on: {kerf: 2026-02-30}}',
      undefined,
      /bad-value .*There is no day 2026-02-30/,
    ],
    [
      'a day in other words',
      '{kerf: 0.1 mm, measured_on: {kerf: May}}',
      undefined,
      /“kerf” should be a day such as 2026-03-14/,
    ],
    [
      'a day without its value',
      '{measured_on: {min_web: 2026-03-14}}',
      undefined,
      /missing-key .*has a day for “min_web”, but this stock has no “min_web”/,
    ],
    [
      'lines that leave gaps',
      '{machine: {hatch: 30 mm}}',
      undefined,
      /“hatch” is 30\.00 mm, more than any distance of engraved lines here/,
    ],
    ['a speed without a unit', '{machine: {cut: 12}}', undefined, /“12” is not a speed/],
    [
      'a hole that its twine fills twice over',
      '{}',
      '{twine: 3 mm, opening: 2 mm}',
      /“opening” is 2\.00 mm, less than the twine of 3\.00 mm/,
    ],
    ['a tie of nothing', '{}', '{opening: 2 mm}', /missing-key .*A tie needs “twine”, “ribbon” or “split_ring”/],
    ['two ties in one', '{}', '{twine: 2 mm, ribbon: 5 mm}', /A tie is one of “twine”, “ribbon” and “split_ring”/],
  ];
  for (const [what, stock, tie, pattern] of faults)
    it(`is refused with its file and line where it is ${what}`, async () => {
      const all = await messagesOf(stock, tie);
      assert.match(all, pattern);
      assert.match(all, /“shop\.workshop\.yaml”: shop\.workshop\.yaml, line \d/);
    });

  it('is said with the day it was measured on, and only where that is known', async () => {
    const thin = spec.replace('rectangle: [60, 30], radius: 3', dumbbell).replace(', hanger: {hole: {at: left}}', '');
    const measured = await read(
      '{kerf: 0.1 mm, min_web: 1.3 mm, measured_on: {min_web: 2026-03-14}}',
      undefined,
      '',
      thin,
    );
    assert.match(measured.issues[0]!.message, /minimum 1\.30 mm, measured on 2026-03-14\.$/);
    const written = await read('{kerf: 0.1 mm, min_web: 1.3 mm}', undefined, '', thin);
    assert.match(written.issues[0]!.message, /minimum 1\.30 mm\.$/);
  });

  it('of the narrowest web that survived is no measure for what a tag hangs on', async () => {
    const inset = async (stock: string) => {
      const { model } = await read(stock);
      const [hanger] = model!.pieces[0]!.hangers;
      return hanger!.kind === 'hole' ? hanger!.inset : undefined;
    };
    assert.equal(await inset('{thickness: 3 mm, min_web: 1.1 mm}'), 1.5 * 1.1);
    assert.equal(await inset('{thickness: 3 mm, min_web: 1.1 mm, measured_on: {min_web: 2026-03-14}}'), 4.5);
  });

  it('is one problem where the file is missing or broken', async () => {
    const missing = await report(spec, newEngine({}));
    assert.deepEqual(
      missing.issues.map(({ code }) => code),
      ['bad-file'],
    );
    const broken = await report(spec, newEngine({ 'shop.workshop.yaml': 'tagwright: 1\nstocks: {' }));
    assert.deepEqual(
      broken.issues.map(({ code }) => code),
      ['yaml-syntax'],
    );
  });

  it('limits how small engraved letters may be, just above and just below', async () => {
    const lettered = (height: number) =>
      spec
        .replace(
          'pieces:',
          `  name: {text: "seeds", font: Nunito, weight: 800, x_height: ${height} mm, place: {on: plate}}\npieces:`,
        )
        .replace('body: [plate]', 'body: [plate], engrave: [name]');
    const stock = '{kerf: 0.1 mm, min_x_height: 1.6 mm, measured_on: {min_x_height: 2026-03-14}}';
    const messagesAt = async (height: number) =>
      (await read(stock, undefined, '', lettered(height))).issues.map(
        ({ severity, message }) => `${severity}: ${message}`,
      );
    assert.deepEqual(await messagesAt(1.62), []);
    assert.deepEqual(await messagesAt(1.55), [
      'warning: “seeds” is too small for engraving: its letters are 1.55 mm high; minimum 1.60 mm, measured on 2026-03-14.',
    ]);
  });
});
