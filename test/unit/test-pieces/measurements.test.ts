import assert from 'node:assert/strict';
import { chosenPlace } from '../../../src/edits/chosen-place.ts';
import { readShared } from '../../../src/spec/parse.ts';
import { SpecSource } from '../../../src/spec/yaml/source.ts';
import { measurements, withMeasured } from '../../../src/test-pieces/measurements.ts';
import type { MeasurementName } from '../../../src/test-pieces/measurements.ts';
import { newEngine, report } from '../support/engine.ts';

const shop = `tagwright: 1
# What the seed library cuts.
stocks:
  ply3: {material: birch plywood, thickness: 3 mm, kerf: {outer: 0.2 mm, engrave: 0.1 mm}}   # from the third shelf
  card:
    material: card
    thickness: 0.6 mm
ties:
  jute: {twine: 2 mm}
`;

const day = '2026-03-14';

const entered = (text: string, path: string[], name: MeasurementName, typed: string): string => {
  const { of, dated, read } = measurements[name];
  const answer = read(typed, 'mm');
  assert.ok('values' in answer, JSON.stringify(answer));
  return withMeasured(text, path, answer.values, { of, dated, day })!;
};

describe('What is read off a test piece', () => {
  it('goes into the stock with its day, and nothing else of the file changes', () => {
    const written = entered(shop, ['stocks', 'card'], 'web', '1,1');
    assert.equal(
      written,
      shop.replace(
        'thickness: 0.6 mm\n',
        `thickness: 0.6 mm\n    min_web: 1.1 mm\n    measured_on: {min_web: ${day}}\n`,
      ),
    );
    const again = entered(written, ['stocks', 'card'], 'lettering', '1.4');
    assert.match(again, /min_x_height: 1\.4 mm/);
    assert.match(again, /measured_on: \{min_web: 2026-03-14, min_x_height: 2026-03-14\}/);
    assert.deepEqual(readShared(new SpecSource(again)), []);
  });

  it('is the kerf of cuts where it differs by operation, the mean of the pairs', () => {
    const written = entered(shop, ['stocks', 'ply3'], 'kerf', '10.16/9.84, 20.15/19.85, 30.17/29.83');
    // By hand: (0.32 + 0.30 + 0.34) / 2 / 3.
    assert.match(
      written,
      /kerf: \{outer: 0\.16 mm, engrave: 0\.1 mm\}, measured_on: \{kerf: 2026-03-14\}\} {3}# from the third shelf/,
    );
    assert.deepEqual(readShared(new SpecSource(written)), []);
  });

  it('is a hole for the tie, a distance of lines, power and speed by the number of a square or in words', () => {
    const all = [
      [['ties', 'jute'], 'hole', '3.5'],
      [['stocks', 'ply3'], 'spacing', '0.12'],
      [['stocks', 'ply3'], 'engraving', '13'],
      [['stocks', 'card'], 'engraving', 'power 25 %, 12 mm/s'],
    ] as const;
    const written = all.reduce((text, [path, name, typed]) => entered(text, [...path], name, typed), shop);
    assert.match(written, /jute: \{twine: 2 mm, opening: 3\.5 mm, measured_on: 2026-03-14\}/);
    assert.match(written, /machine: \{hatch: 0\.12 mm, engrave: 200 mm\/s, power: \{engrave: 30 %\}\}/);
    assert.match(written, /machine: \{engrave: 12 mm\/s, power: \{engrave: 25 %\}\}/);
    assert.deepEqual(readShared(new SpecSource(written)), []);
  });

  it('is refused where it cannot be meant, with an example of what can', () => {
    const refused: readonly (readonly [MeasurementName, string])[] = [
      ['kerf', '10.16'],
      ['kerf', '9.84/10.16'],
      ['kerf', '10.16/'],
      ['web', '-1'],
      ['web', '0'],
      ['web', '110'],
      ['web', 'thin'],
      ['hole', ''],
      ['lettering', '1.4 kg'],
      ['spacing', '5'],
      ['engraving', '26'],
      ['engraving', '30 %'],
    ];
    for (const [name, typed] of refused)
      assert.ok('problem' in measurements[name].read(typed, 'mm'), `${name}: ${typed}`);
    const doubtful = measurements.kerf.read('10.4/9.8, 20.1/19.9', 'mm');
    assert.ok('values' in doubtful && /differ by 0\.20 mm/.test(doubtful.doubt ?? ''));
  });

  it('is asked of the file that the stock is written in, however it was reached', async () => {
    const spec = 'tagwright: 1\nuse: house.yaml\nstock: ply3\ntie: {twine: 2 mm}\npieces: {}\n';
    const beside = { 'house.yaml': 'tagwright: 1\nuse: shop.workshop.yaml\nstock: card\n', 'shop.workshop.yaml': shop };
    const place = async (text: string, what: 'stock' | 'tie') => {
      const { source, uses } = await report(text, newEngine(beside));
      const found = chosenPlace(what, source, uses.used);
      return found && [found.file, found.path.join('.'), found.name];
    };
    assert.deepEqual(await place(spec, 'stock'), ['/specs/shop.workshop.yaml', 'stocks.ply3', 'ply3']);
    assert.deepEqual(await place(spec.replace('stock: ply3\n', ''), 'stock'), [
      '/specs/shop.workshop.yaml',
      'stocks.card',
      'card',
    ]);
    assert.deepEqual(await place(spec, 'tie'), [undefined, 'tie', undefined]);
    assert.equal(await place(spec.replace('ply3', 'gone'), 'stock'), undefined);
  });
});
