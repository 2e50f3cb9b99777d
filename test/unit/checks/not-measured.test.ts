import assert from 'node:assert/strict';
import { report } from '../support/engine.ts';
import { samples } from '../support/samples.ts';

const spec = (stock: string, piece = 'body: [plate]', head = '', across = 10): string => `tagwright: 1
stock: ply3
${head}stocks:
  ply3: {material: birch plywood, thickness: 3 mm${stock}}
shapes:
  plate: {rectangle: [60, 30], radius: 3}
  small: {text: seeds, font: Nunito, weight: 800, x_height: ${across / 10} mm, place: {on: plate}}
  left: {rectangle: [20, 20], nudge: {left: 20}}
  right: {rectangle: [20, 20], nudge: {right: 20}}
  neck: {polygon: {points: [[0, 0], [30, 0], [30, ${across}], [0, ${across}]]}}
pieces:
  tag: {${piece}}
`;

const messages = async (text: string): Promise<string[]> =>
  (await report(text)).issues
    .filter(({ code }) => code === 'not-measured')
    .map(({ severity, message }) => `${severity}: ${message}`);

describe('What was never measured of a stock', () => {
  it('is its kerf before all else, once, unless cuts are not compensated', async () => {
    assert.deepEqual(await messages(spec('', 'body: [plate], engrave: [small]', '', 14)), [
      'info: “ply3” has no kerf yet: parts come out smaller, and holes larger, by what the beam removes. Cut a kerf test to find it, or write “kerf: 0”.',
    ]);
    assert.deepEqual(await messages(spec('', 'body: [plate]', 'output: {compensate: false}\n')), []);
    assert.deepEqual(await messages(spec(', kerf: 0 mm')), []);
  });

  it('is how narrow it may be, for a tag that is nearly so narrow', async () => {
    const dumbbell = 'body: [left, neck, right]';
    // The default is 1.5 mm; 1.1 times that is 1.65 mm.
    assert.match(
      (await messages(spec(', kerf: 0.1 mm', dumbbell, '', 1.6))).join(),
      /narrowest place is 1\.60 mm; the minimum of 1\.50 mm for “ply3” is only a default\. Cut a web comb/,
    );
    assert.deepEqual(await messages(spec(', kerf: 0.1 mm', dumbbell, '', 1.7)), []);
    assert.deepEqual(await messages(spec(', kerf: 0.1 mm', dumbbell, '', 1.45)), [], 'weak-bridge says it');
    assert.deepEqual(await messages(spec(', kerf: 0.1 mm, min_web: 1.5 mm', dumbbell, '', 1.6)), []);
  });

  it('is not the width that letters are given by themselves, unless nothing is known of the material', async () => {
    const name = (keys: string, material: string) =>
      spec(', kerf: 0.1 mm', 'body: [name]')
        .replace('birch plywood', material)
        .replace('shapes:', `shapes:\n  name: {text: Rue, font: Pacifico, x_height: 12 mm, ${keys}}`);
    // Both are 1.5 mm at their narrowest, or hardly more.
    assert.deepEqual(await messages(name('overlap: auto', 'birch plywood')), []);
    assert.deepEqual(await messages(name('overlap: 0.6 mm, grow: auto', 'birch plywood')), []);
    assert.match((await messages(name('overlap: auto', 'straw panel'))).join(), /narrowest place is 1\.5\d mm/);
  });

  it('is how small its letters may be, for a tag whose letters are nearly so small', async () => {
    const engraved = 'body: [plate], engrave: [small]';
    const stock = ', kerf: 0.1 mm, min_web: 1.5 mm';
    assert.match(
      (await messages(spec(stock, engraved, '', 15))).join(),
      /letters are 1\.50 mm high; the minimum of 1\.20 mm for “ply3” is only a default\. Cut an engraving ladder/,
    );
    assert.deepEqual(await messages(spec(stock, engraved, '', 16)), []);
    assert.deepEqual(await messages(spec(`${stock}, min_x_height: 1.2 mm`, engraved, '', 15)), []);
  });

  it('is no matter in any sample', async () => {
    for (const { name, text } of samples) assert.deepEqual(await messages(text), [], name);
  }).timeout(180_000);

  it('is the kerf alone of a stock that is written in place, once it has a thickness', async () => {
    const inPlace = (stock: string) => messages(spec('').replace('stock: ply3', `stock: {${stock}}`));
    assert.deepEqual(await inPlace('material: walnut'), []);
    assert.deepEqual(await inPlace('material: walnut, thickness: 3 mm'), [
      'info: This stock has no kerf yet: parts come out smaller, and holes larger, by what the beam removes. Cut a kerf test to find it, or write “kerf: 0”.',
    ]);
    for (const kerf of ['0', '0.2 mm', '{outer: 0.2 mm}'])
      assert.deepEqual(await inPlace(`material: walnut, thickness: 3 mm, kerf: ${kerf}`), [], kerf);
  });
});
