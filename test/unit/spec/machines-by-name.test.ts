import assert from 'node:assert/strict';
import { completionsAt } from '../../../src/language/completion/complete.ts';
import { hoverAt } from '../../../src/language/hover/hover.ts';
import { selfContained } from '../../../src/language/self-contained.ts';
import { noWorkspaceNames } from '../../../src/language/workspace-names.ts';
import { measuredPlace } from '../../../src/edits/chosen-place.ts';
import { SpecSource } from '../../../src/spec/yaml/source.ts';
import { measurements, withMeasured } from '../../../src/test-pieces/measurements.ts';
import { headOfSpec } from '../../../src/test-pieces/stock-head.ts';
import { newEngine, placeOf, report } from '../support/engine.ts';

const shop = `tagwright: 1
stocks:
  ply3:
    material: birch plywood
    thickness: 3 mm
    kerf: 0.16 mm
    min_web: 1.2 mm
    machine: {cut: 12 mm/s, score: 60 mm/s, passes: {cut: 1}}
    measured_on: {kerf: 2026-03-14, min_web: 2026-03-15}
    machines:
      bench: {kerf: 0.22 mm, machine: {cut: 8 mm/s, passes: {engrave: 2}}, measured_on: {kerf: 2026-05-02}}
machines:
  bench: {travel: 150 mm/s, cut: 5 mm/s, engrave: 90 mm/s}
  attic: {travel: 400 mm/s}
`;

const on = (machine: string) => `tagwright: 1
use: shop.workshop.yaml
stock: ply3
${machine}shapes: {plate: {rectangle: [60, 30]}}
pieces: {tag: {body: [plate]}}
`;

const bench = on('machine: bench\n');
const read = (text: string, file = shop) => report(text, newEngine({ 'shop.workshop.yaml': file }));

describe('A machine by its name', () => {
  it('brings what a stock has for it, and leaves what it has for all', async () => {
    const { model, issues } = await read(bench);
    assert.deepEqual(issues, []);
    const { stock, machine } = model!;
    assert.deepEqual([stock.kerf, stock.minWeb, stock.thickness], [0.22, 1.2, 3]);
    assert.deepEqual(stock.measuredOn, { kerf: '2026-05-02', min_web: '2026-03-15' });
    // The stock on this machine, then the stock, then the machine.
    assert.deepEqual([machine!.cut, machine!.score, machine!.engrave, machine!.travel], [8, 60, 90, 150]);
    assert.deepEqual(machine!.passes, { cut: 1, score: 1, engrave: 2 });
    assert.equal(machine!.name, 'bench');
  });

  it('changes nothing of a stock that has nothing for it, nor where none is named', async () => {
    const attic = (await read(on('machine: attic\n'))).model!;
    assert.deepEqual([attic.stock.kerf, attic.machine!.cut, attic.machine!.travel], [0.16, 12, 400]);
    const none = (await read(on(''))).model!;
    assert.deepEqual([none.stock.kerf, none.machine!.cut, none.machine!.name], [0.16, 12, undefined]);
    const own = (await read(on('machine: {cut: 3 mm/s}\n'))).model!;
    assert.deepEqual([own.stock.kerf, own.machine!.cut], [0.16, 3]);
  });

  it('does not carry a day over to a value of its own that has none', async () => {
    const file = shop.replace(', measured_on: {kerf: 2026-05-02}', '');
    assert.deepEqual((await read(bench, file)).model!.stock.measuredOn, { min_web: '2026-03-15' });
  });

  it('that the workshop’s file chooses is the one of every spec that names none', async () => {
    const { model } = await read(on(''), `${shop}machine: bench\n`);
    assert.deepEqual([model!.stock.kerf, model!.machine!.travel], [0.22, 150]);
  });

  it('that there is not is told at its place, with the nearest', async () => {
    const made = await read(on('machine: bensh\n'));
    assert.equal(made.model, undefined);
    assert.deepEqual(
      made.issues.map((issue) => [issue.code, placeOf(made, issue).text, issue.message, issue.suggestions?.[0]]),
      [['unknown-name', 'bensh', 'There is no machine “bensh”. Did you mean “bench”?', 'bench']],
    );
    const file = shop.replace('      bench: {', '      bnech: {');
    const { inUsed } = await read(bench, file);
    const [{ issues, source }] = inUsed as [NonNullable<typeof inUsed>[number]];
    assert.deepEqual(
      issues.map(({ message, range }) => [
        message,
        file.slice(range.start, range.end),
        source.position(range.start).line,
      ]),
      [['There is no machine “bnech”. Did you mean “bench”?', 'bnech', 11]],
    );
  });

  const faults: readonly (readonly [what: string, from: string, to: string, pattern: RegExp])[] = [
    ['a kerf no beam has', '0.22 mm', '22 mm', /“kerf” is 22\.00 mm, more than any kerf here/],
    [
      'a kerf that leaves nothing of the web',
      '0.22 mm',
      '1.3 mm',
      /“min_web” is 1\.20 mm, less than the kerf of 1\.30 mm/,
    ],
    ['a speed without its unit', 'cut: 8 mm/s', 'cut: 8', /“8” is not a speed/],
    ['a day that is none', '2026-05-02', '2026-05-42', /There is no day 2026-05-42/],
    [
      'what is the same on every machine',
      '{kerf: 0.22',
      '{thickness: 3 mm, kerf: 0.22',
      /Unknown key “thickness”\. Allowed here: kerf, min_web/,
    ],
  ];
  for (const [what, from, to, pattern] of faults)
    it(`is told of once where a stock has ${what} for it, whichever is chosen`, async () => {
      for (const text of [bench, on('machine: attic\n')]) {
        const { issues, model } = await read(text, shop.replace(from, to));
        assert.equal(model, undefined);
        assert.equal(issues.length, 1, issues.map(({ message }) => message).join());
        assert.match(issues[0]!.message, pattern);
      }
    });

  it('is offered, and says what it is under the pointer', async () => {
    const made = await read(bench);
    const text = bench.replace('machine: bench', 'machine: ');
    const offered = completionsAt(text, text.indexOf('machine: ') + 9, { ...noWorkspaceNames, uses: made.uses });
    assert.deepEqual(
      offered.filter(({ label }) => label === 'bench' || label === 'attic').map(({ label, detail }) => [label, detail]),
      [
        ['bench', 'cut 5 mm/s, engrave 90 mm/s'],
        ['attic', ''],
      ],
    );
    const hover = hoverAt(made.source, bench.indexOf('bench') + 1, made, [])?.markdown ?? '';
    assert.match(hover, /\*\*bench\*\*\n\n- travel: 150 mm\/s/);
  });

  it('is offered under a stock, unless it is there already', () => {
    const file = shop.replace('      bench: {', '      \n      bench: {');
    const labels = completionsAt(file, file.indexOf('      \n      bench') + 6, noWorkspaceNames).map(
      ({ label }) => label,
    );
    assert.ok(labels.includes('attic'), labels.join());
    assert.ok(!labels.includes('bench'));
  });

  it('goes with a spec that is sent alone', async () => {
    const plain = async (text: string, file?: string) => {
      const { model, issues } = await read(text, file);
      assert.deepEqual(issues, []);
      return JSON.parse(
        JSON.stringify(model, (key, value: unknown) =>
          key === 'path' || value === 'ply3' || value === 'bench' || value === 'attic' ? undefined : value,
        ),
      ) as unknown;
    };
    const alone = async (text: string, file?: string) => {
      const { source, uses } = await read(text, file);
      const result = selfContained(source, uses);
      assert.ok('text' in result, JSON.stringify(result));
      assert.doesNotMatch(result.text, /use:/);
      return result.text;
    };
    const inline = on('machine: {cut: 3 mm/s}\n');
    const ownStock = bench.replace('stock: ply3', 'stock: {kerf: 0.1 mm, machines: {bench: {kerf: 0.2 mm}}}');
    for (const text of [bench, inline, on(''), on('machine: attic\n'), ownStock])
      assert.deepEqual(await plain(await alone(text)), await plain(text), text);
    const chosen = `${shop}machine: bench\n`;
    assert.deepEqual(await plain(await alone(on(''), chosen)), await plain(on(''), chosen));
    assert.match(await alone(bench), /kerf: 0\.22 mm/);
    assert.doesNotMatch(await alone(bench), /0\.16 mm|machines:/);
    assert.match(await alone(ownStock), /\nmachines:\n {2}bench: \{travel/);
  });

  it('is what a measurement is written for, and what its test pieces are cut on', async () => {
    const text = on('machine: attic\n');
    const { source, uses } = await read(text);
    const place = measuredPlace('stock', source, uses.used)!;
    assert.deepEqual(place.path, ['stocks', 'ply3', 'machines', 'attic']);
    const answer = measurements.web.read('1.4', 'mm');
    assert.ok('values' in answer);
    const written = withMeasured(shop, place.path, answer.values, { ...measurements.web, day: '2026-06-01' })!;
    assert.match(written, /\n {6}attic: \{min_web: 1\.4 mm, measured_on: \{min_web: 2026-06-01\}\}\n/);
    const { stock } = (await read(text, written)).model!;
    assert.deepEqual([stock.minWeb, stock.kerf, stock.measuredOn?.min_web], [1.4, 0.16, '2026-06-01']);
    assert.equal((await read(bench, written)).model!.stock.minWeb, 1.2);

    const bare = new SpecSource('tagwright: 1\nstocks:\n  card: {thickness: 0.6 mm}\nmachines: {bench: {}}\n');
    const first = withMeasured(bare.text, ['stocks', 'card', 'machines', 'bench'], answer.values, {
      ...measurements.web,
      day: '2026-06-01',
    });
    assert.match(first!, /card: \{thickness: 0\.6 mm, machines: \{bench: \{min_web: 1\.4 mm, measured_on: .*\}\}\}/);

    assert.deepEqual(headOfSpec(source, uses.used, () => 'shop.workshop.yaml').head, [
      'use: shop.workshop.yaml',
      'stock: ply3',
      'machine: attic',
    ]);
  });
});
