import assert from 'node:assert/strict';
import { selfContained } from '../../../src/language/self-contained.ts';
import { stockName, workshopText } from '../../../src/language/workshop-text.ts';
import { readShared } from '../../../src/spec/parse.ts';
import { SpecSource } from '../../../src/spec/yaml/source.ts';
import { newEngine, report } from '../support/engine.ts';
import type { Beside } from '../support/engine.ts';

const shop = `tagwright: 1
stocks:
  ply3:
    material: birch plywood   # third shelf
    thickness: 3 mm
    kerf: 0.16 mm
    caution: "Film: peel it off {first}, please"
    machine: {cut: 12 mm/s, passes: {cut: 2}}
    measured_on: {kerf: 2026-03-14}
ties:
  jute: {twine: 2 mm, opening: 3.5 mm, measured_on: 2026-03-14}
tie: jute
machine: {travel: 300 mm/s, cut: 5 mm/s, passes: {score: 3}}
sheet: {size: [600, 300], margin: 5}
output: {tabs: 2, cut_outer: {color: "#FF0000"}}
hangers:
  side: {ring: {at: left, on: badge}}
shapes:
  plate: {rectangle: [60, 30], radius: 6}
  badge: {from: plate, grow: -1}
`;

const spec = `# Sown in March.
tagwright: 1
use: shop.workshop.yaml
stock: ply3    # the good one
pieces:
  tag: {body: [badge], hanger: side}
`;

/** What a spec makes, without where it is written and what its stock is called. */
async function madeOf(text: string, beside: Beside = {}) {
  const { model, issues } = await report(text, newEngine(beside));
  assert.deepEqual(issues, []);
  const plain: unknown = JSON.parse(
    JSON.stringify(model, (key, value: unknown) =>
      key === 'path' || (key === 'name' && value === 'ply3') ? undefined : value,
    ),
  );
  return plain;
}

async function alone(text: string, beside: Beside): Promise<string> {
  const { source, uses } = await report(text, newEngine(beside));
  const result = selfContained(source, uses);
  assert.ok('text' in result, JSON.stringify(result));
  return result.text;
}

describe('A spec with the values it used put in', () => {
  it('makes the same without the files, keeps its comments, and says what it says once', async () => {
    const beside = { 'shop.workshop.yaml': shop };
    const text = await alone(spec, beside);
    assert.doesNotMatch(text, /use:/);
    assert.match(
      text,
      /^# Sown in March\.\ntagwright: 1\nstock: \{material: birch plywood, thickness: 3 mm, .*\} {4}# the good one/,
    );
    assert.deepEqual(await madeOf(text), await madeOf(spec, beside));
    assert.equal(await alone(text, {}), text, 'twice is no more');
  });

  it('has bare figures of a file in another unit written with it', async () => {
    const inches = shop
      .replace('tagwright: 1\n', 'tagwright: 1\nunits: in\n')
      .replace('[60, 30], radius: 6', '[2, 1], radius: 1/4')
      .replace('grow: -1', 'grow: -0.02')
      .replace('[600, 300], margin: 5', '[24, 12], margin: 1/4');
    const beside = { 'shop.workshop.yaml': inches };
    const text = await alone(spec, beside);
    assert.match(text, /rectangle: \["?2 in"?, "?1 in"?\]/);
    assert.deepEqual(await madeOf(text), await madeOf(spec, beside));
  });

  it('counts the spec’s own machine, tie and sheet before those of the files', async () => {
    const beside = { 'shop.workshop.yaml': shop };
    const own = spec.replace(
      'pieces:',
      'machine: {cut: 9 mm/s}\ntie: {ribbon: 8 mm}\nsheet: {size: [300, 200]}\npieces:',
    );
    assert.deepEqual(await madeOf(await alone(own, beside)), await madeOf(own, beside));
  });

  it('says why where path data would change its size', async () => {
    const file = 'tagwright: 1\nunits: in\nshapes: {plate: {path: "M0 0 H2 V1 H0 Z"}}\n';
    const text = 'tagwright: 1\nuse: p.yaml\npieces: {tag: {body: [plate]}}\n';
    const { source, uses } = await report(text, newEngine({ 'p.yaml': file }));
    const result = selfContained(source, uses);
    assert.ok('problem' in result && /path data/.test(result.problem));
  });
});

describe('A new workshop file', () => {
  it('is right as it is written, and with every line of it that is only an example', () => {
    for (const units of ['mm', 'in'] as const) {
      const choices = {
        units,
        stock: 'ply3',
        material: 'birch plywood',
        thickness: units === 'in' ? '1/8 in' : '3 mm',
      };
      for (const more of [{}, { kerf: '0.16 mm', sheet: ['600 mm', '300 mm'] as const, twine: '2 mm' }]) {
        const text = workshopText({ ...choices, ...more });
        assert.deepEqual(readShared(new SpecSource(text)), [], text);
        // Examples are lines that begin with a mark and a key.
        const whole = text.replace(/^( *)# (?=[a-z_]+: [\d{"A-Z])/gm, '$1');
        const keys = Object.keys((new SpecSource(whole).value as { stocks: { ply3: object } }).stocks.ply3);
        for (const key of ['min_web', 'min_x_height', 'machine', 'price', 'caution', 'look'])
          assert.ok(keys.includes(key), key);
        assert.deepEqual(readShared(new SpecSource(whole)), [], whole);
      }
    }
  });

  it('names its stock in short', () => {
    assert.equal(stockName('birch plywood', '3 mm'), 'ply3');
    assert.equal(stockName('American basswood', '3.2 mm'), 'basswood3_2');
    assert.equal(stockName('椴', '3 mm'), 'stock3');
  });
});
