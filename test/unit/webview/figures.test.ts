import assert from 'node:assert/strict';
import { lengthText, measuredText, sizeText } from '../../../src/core/units.ts';
import { partsText, bothSizes, zoomText } from '../../../webview/common/format.ts';
import { lookOfStock } from '../../../src/look/stock-look.ts';
import { allLooks, lookOf } from '../../../webview/preview/scene/look.ts';

describe('Figures', () => {
  it('give sizes in both systems, the spec’s own first (1 in = 25.4 mm)', () => {
    assert.equal(bothSizes(82, 31.4, 'mm'), '82.0 × 31.4 mm (3.228 × 1.236 in)');
    assert.equal(bothSizes(50.8, 25.4, 'in'), '2 × 1 in (50.8 × 25.4 mm)');
  });

  it('give doubtful widths a digit more than dimensions', () => {
    assert.deepEqual([lengthText(0.917, 'mm'), measuredText(0.917, 'mm')], ['0.9 mm', '0.92 mm']);
    assert.deepEqual([lengthText(12.7, 'in'), measuredText(0.917, 'in')], ['0.5 in', '0.036 in']);
    assert.deepEqual([sizeText(11, 3, 'mm'), sizeText(25.4, 12.7, 'in')], ['11.0 × 3.0 mm', '1 × 0.5 in']);
  });

  it('count in words', () => {
    assert.equal(partsText({ partCount: 1, holeCount: 3 }), '1 part · 3 holes');
    assert.equal(zoomText(2, 4).replace(/\s/, ' '), '50 %');
  });
});

describe('The look of a material', () => {
  it('follows the words of its name, and is light wood where none is given', () => {
    assert.deepEqual(
      ['black walnut', 'American cherry', '3 mm MDF', 'clear acrylic', 'card', 'birch plywood', undefined].map((name) =>
        lookOf(name).join(' '),
      ),
      ['look-dark', 'look-red', 'look-fibre', 'look-acrylic', 'look-paper', 'look-light', 'look-light'],
    );
    for (const wood of ['Baltic birch', 'poplar ply 4 mm', 'lime', 'pine', 'red maple', 'Sperrholz', 'contreplaqué'])
      assert.deepEqual(lookOf(wood), ['look-light'], wood);
  });

  it('is a plain sheet for a material that is not known', () => {
    for (const unknown of ['slate', 'limestone', 'glass', 'unheard of', 'washed linen'])
      assert.deepEqual(lookOf(unknown), ['look-plain'], unknown);
    assert.deepEqual(lookOf('blue rubber'), ['look-plain', 'tint-blue']);
    assert.equal(lookOfStock({ material: 'slate' }).grain, undefined);
  });

  it('has the colour that is named, but wood has its own', () => {
    assert.deepEqual(lookOf('ruby red acrylic'), ['look-acrylic', 'tint-red']);
    assert.deepEqual(lookOf('Kraft card, brown'), ['look-paper', 'tint-brown']);
    assert.deepEqual(lookOf('red oak'), ['look-tan']);
  });

  it('is one of those that are switched', () => {
    for (const material of ['oak', 'black leather', 'unheard of']) {
      for (const look of lookOf(material)) assert.ok(allLooks.includes(look));
    }
  });
});
