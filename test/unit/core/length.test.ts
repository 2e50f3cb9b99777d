import assert from 'node:assert/strict';
import { clip, longestMm, parseLength } from '../../../src/core/length.ts';
import type { Units } from '../../../src/core/units.ts';
import { assertNear } from '../support/engine.ts';
import { assertWorked, worked } from '../support/effort.ts';

function mm(value: number | string, units: Units = 'mm'): number {
  const result = parseLength(value, units);
  assert.ok('mm' in result, `${value} is a length`);
  return result.mm;
}

describe('A length', () => {
  // CSS Values and Units: 1 in = 2.54 cm = 72 pt = 96 px.
  const cases: readonly (readonly [number | string, Units, number])[] = [
    [3, 'mm', 3],
    [3, 'in', 76.2],
    ['3', 'mm', 3],
    ['3', 'in', 76.2],
    ['3 mm', 'in', 3],
    ['3mm', 'mm', 3],
    ['.25 mm', 'mm', 0.25],
    ['+2 mm', 'mm', 2],
    ['-0.5 mm', 'mm', -0.5],
    ['0.25 in', 'mm', 6.35],
    ['1/4 in', 'mm', 6.35],
    ['1/4', 'in', 6.35],
    ['1 1/2 in', 'mm', 38.1],
    ['10  15/16 in', 'mm', 277.8125],
    ['-1 1/2 in', 'mm', -38.1],
    ['12 pt', 'mm', (12 * 25.4) / 72],
    ['2.5 cm', 'mm', 25],
    ['96 px', 'mm', 25.4],
    ['  3 mm  ', 'mm', 3],
  ];
  for (const [written, units, expected] of cases) {
    it(`of ${JSON.stringify(written)} in a spec in ${units} is ${expected.toFixed(4)} mm`, () => {
      assertNear(mm(written, units), expected, 1e-12);
    });
  }

  it('of 100 mm is 377.9528 px and 283.4646 pt (CSS Values and Units)', () => {
    assertNear(mm('377.9528 px'), 100, 5e-5);
    assertNear(mm('283.4646 pt'), 100, 1e-4);
  });

  const wrong = [
    '',
    ' ',
    'mm',
    '3 m',
    '3 yards',
    '3,5 m',
    '1/0 in',
    '0/0',
    '1/2/3',
    '1e3',
    '--3',
    '3 mm 4',
    '½ in',
    'three',
    '0x10',
  ];
  for (const written of wrong) {
    it(`is not ${JSON.stringify(written)}`, () => {
      const result = parseLength(written, 'mm');
      assert.ok('problem' in result);
      assert.match(result.problem, /not a (length|number)/);
    });
  }

  it('has a point, and a comma is told', () => {
    for (const [written, pointed] of [
      ['3,5 mm', '3.5 mm'],
      ['60,5', '60.5'],
      ['-0,25 in', '-0.25 in'],
    ] as const)
      assert.deepEqual(parseLength(written, 'mm'), {
        problem: `Decimals are written with a point here: ${pointed}, not ${written}.`,
      });
  });

  it('is not beyond three metres either way, nor anything that is no number', () => {
    assert.equal(longestMm, 3000);
    assert.equal(mm(3000), 3000);
    for (const value of [3000.1, -3001, 1e300, '119 in', NaN, Infinity, -Infinity, '9'.repeat(400)]) {
      assert.ok('problem' in parseLength(value, 'mm'), String(value));
    }
    assert.deepEqual(parseLength(' 301 cm ', 'mm'), { problem: '301 cm is more than 3 m; check the unit.' });
  });

  it('is quoted short in messages, whole characters kept', () => {
    assert.equal(clip('abc'), 'abc');
    assert.equal(clip('🌱'.repeat(40)), '🌱'.repeat(40));
    assert.equal(clip('🌱'.repeat(60)), `${'🌱'.repeat(39)}…`);
    const result = parseLength('x'.repeat(10_000), 'mm');
    assert.ok('problem' in result && result.problem.length < 200);
  });

  it('is judged with less than a second of work however long the text', () => {
    const started = worked();
    for (const text of [
      '1'.repeat(200_000) + 'x',
      ' '.repeat(200_000) + '1',
      '1 '.repeat(100_000),
      '1/'.repeat(100_000),
    ]) {
      parseLength(text, 'mm');
    }
    assertWorked(started, 1);
  });
});
