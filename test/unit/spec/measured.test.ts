import assert from 'node:assert/strict';
import { parseForce } from '../../../src/spec/read/forces.ts';
import { parseSpec } from '../../../src/spec/parse.ts';
import { assertNear } from '../support/engine.ts';

const specOf = (stock: string, units = '') =>
  `tagwright: 1\n${units}stock: {${stock}}\nshapes:\n  p: {ellipse: 40}\npieces:\n  t: {body: [p]}\n`;

describe('A pull', () => {
  // Standard gravity 9.80665 m/s² (1901), the pound 0.45359237 kg (1959): both exact.
  for (const [written, newtons] of [
    ['42 N', 42],
    ['42N', 42],
    [42, 42],
    ['.5 kN', 500],
    ['4.3 kg', 42.168595],
    ['950 g', 9.3163175],
    ['9 lb', 40.0339937],
    ['12 oz', 3.3361661],
  ] as const) {
    it(`is read: ${written}`, () => {
      const result = parseForce(written);
      assert.ok('newtons' in result);
      assertNear(result.newtons, newtons, 1e-6);
    });
  }

  for (const [written, why] of [
    ['a lot', /is not a pull.*42 N.*4\.3 kg/],
    ['-3 N', /is not a pull/],
    ['42 mm', /is not a pull/],
    ['4,3 kg', /is not a pull/],
    [0, /means that nothing pulled/],
    ['1020 kg', /more than a ton of pull/],
    [-1, /is not a pull/],
  ] as const) {
    it(`is not: ${written}`, () => {
      const result = parseForce(written);
      assert.ok('problem' in result);
      assert.match(result.problem, why);
    });
  }
});

describe('What was measured of a stock', () => {
  it('is a pull and the width of the neck', () => {
    const { model, issues } = parseSpec(
      specOf('material: ash, thickness: 3 mm, measured: {breaks_at: 42 N, neck: 2.0 mm}'),
    );
    assert.deepEqual(issues, []);
    assert.deepEqual(model!.stock.measured, { breaksAt: 42, neck: 2 });
  });

  // 400 MPa on 2 × 3 mm are 2400 N, 0.05 MPa are 0.3 N.
  for (const [breaksAt, isRight] of [
    ['2390 N', true],
    ['2410 N', false],
    ['0.31 N', true],
    ['0.29 N', false],
  ] as const) {
    it(`${isRight ? 'may be' : 'cannot be'} ${breaksAt} on 2 × 3 mm`, () => {
      const { issues } = parseSpec(specOf(`thickness: 3 mm, measured: {breaks_at: ${breaksAt}, neck: 2 mm}`));
      assert.equal(issues.length, isRight ? 0 : 1);
    });
  }

  for (const [measured, at, code, message] of [
    [
      '{breaks_at: 9000 N, neck: 2 mm}',
      '9000 N',
      'bad-value',
      /9000 N on a neck of 2\.00 × 3\.00 mm is 1500 MPa, more than any/,
    ],
    ['{breaks_at: soon, neck: 2 mm}', 'soon', 'bad-value', /“soon” is not a pull/],
    ['{breaks_at: 42 N, neck: 0 mm}', '0 mm', 'bad-length', /“neck” must be more than 0/],
    ['{breaks_at: 42 N, neck: -2 mm}', '-2 mm', 'bad-length', /must be more than 0/],
    ['{breaks_at: 42 N, neck: 42 N}', '42 N}', 'bad-length', /is not a length/],
    ['{breaks_at: 42 N}', 'measured', 'missing-key', /neck/],
    ['{neck: 2 mm}', 'measured', 'missing-key', /breaks_at/],
    ['42 N', '42 N', 'bad-value', /./],
  ] as const) {
    it(`that is wrong is reported at its place: ${measured}`, () => {
      const text = specOf(`thickness: 3 mm, measured: ${measured}`);
      const { model, issues } = parseSpec(text);
      assert.equal(model, undefined);
      assert.equal(issues.length, 1, issues.map((issue) => issue.message).join());
      const [issue] = issues;
      assert.equal(issue!.code, code);
      assert.match(issue!.message, message);
      const place = text.slice(issue!.range.start, issue!.range.end);
      assert.ok(at.startsWith(place) || place.startsWith(at), `${place} is not ${at}`);
    });
  }
});
