import assert from 'node:assert/strict';
import {
  areaText,
  counted,
  finest,
  lengthText,
  measuredText,
  mmPer,
  roundInches,
  shortLength,
  shortSize,
  sizeText,
  trimmed,
  writtenSize,
} from '../../../src/core/units.ts';

/** The international yard and pound agreement (1959): 1 in = 25.4 mm exactly, so 1 in² = 645.16 mm². */
describe('Lengths, sizes and areas as people read them', () => {
  it('of a finished size go to a tenth of a millimetre, or as far as needed to a thousandth of an inch', () => {
    assert.deepEqual(mmPer, { mm: 1, in: 25.4 });
    assert.equal(lengthText(82, 'mm'), '82.0 mm');
    assert.equal(lengthText(82, 'in'), '3.228 in');
    const sixteenths = [1, 1.125, 2.75, 0.0625, 3.1875].map((inches) => lengthText(inches * 25.4, 'in'));
    assert.deepEqual(sixteenths, ['1 in', '1.125 in', '2.75 in', '0.063 in', '3.188 in']);
  });

  it('of a measured width have all their decimals, as in messages', () => {
    assert.equal(measuredText(82.456, 'mm'), '82.46 mm');
    assert.equal(measuredText(25.4, 'in'), '1.000 in');
  });

  it('are short where they need no more', () => {
    assert.equal(shortLength(3, 'mm'), '3 mm');
    assert.equal(shortLength(3.256, 'mm'), '3.26 mm');
    assert.equal(shortLength(82, 'in'), '3.228 in');
    assert.equal(shortLength(12.7, 'in'), '0.5 in');
    assert.equal(shortLength(-0.001, 'mm'), '0 mm');
    // 0.05 mm are 0.0019685 in.
    assert.equal(shortLength(0.05, 'in', finest), '0.002 in');
    assert.equal(trimmed(-0.04, 1), '0');
    assert.equal(trimmed(-0.06, 1), '-0.1');
  });

  it('of an example in inches are those that makers use', () => {
    const figures = [60, 30, 100, 45, 12, 3, 2, 1.5, 0.16, -0.5].map(roundInches);
    assert.deepEqual(figures, [2.5, 1.25, 4, 1.75, 0.5, 0.125, 0.08, 0.06, 0.006, -0.02]);
  });

  it('of two sides name their unit once', () => {
    assert.equal(sizeText(82, 31.44, 'mm'), '82.0 × 31.4 mm');
    assert.equal(sizeText(69.85, 28.575, 'in'), '2.75 × 1.125 in');
    assert.equal(shortSize(600, 300, 'mm'), '600 × 300 mm');
    assert.equal(shortSize(304.8, 609.6, 'in'), '12 × 24 in');
    assert.equal(writtenSize(12, 8.5, 'in'), '12 × 8.5 in');
  });

  it('of areas are square centimetres and square inches', () => {
    assert.equal(areaText(2570, 'mm'), '25.7 cm²');
    assert.equal(areaText(1234, 'mm'), '12.3 cm²');
    assert.equal(areaText(645.16, 'in'), '1 in²');
    // 2570 / 645.16 = 3.98351.
    assert.equal(areaText(2570, 'in'), '3.98 in²');
  });

  it('are counted in the singular only for one', () => {
    assert.equal(counted(1, 'part'), '1 part');
    assert.equal(counted(6, 'part'), '6 parts');
    assert.equal(counted(0, 'part'), '0 parts');
    assert.equal(counted(2, 'piece in the way', 'pieces in the way'), '2 pieces in the way');
  });
});
