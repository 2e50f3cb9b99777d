import assert from 'node:assert/strict';
import { crossText, fineText, lengthText, partsText, sizeText, zoomText } from '../../../webview/format.ts';
import { allLooks, lookOf } from '../../../webview/look.ts';
import { placeLabels, type Label } from '../../../webview/place-labels.ts';

const stage = { width: 600, height: 400 };
const size = { width: 70, height: 18 };
const label = (id: string, x: number, y: number): Label => ({ id, at: [x, y], size });

describe('The labels of pins', () => {
  it('neither overlap nor cover a spot', () => {
    const labels = [label('a', 290, 200), label('b', 300, 205), label('c', 310, 200), label('d', 300, 190)];
    const placed = [...placeLabels(labels, stage, [300, 260], []).values()];
    assert.equal(placed.length, 4);
    placed.forEach(([x, y], index) => {
      for (const [ox, oy] of placed.slice(index + 1)) {
        assert.ok(Math.abs(x - ox) >= size.width || Math.abs(y - oy) >= size.height);
      }
      for (const { at } of labels) {
        assert.ok(at[0] < x || at[0] > x + size.width || at[1] < y || at[1] > y + size.height);
      }
    });
  });

  it('stay on the stage at its edges', () => {
    for (const [x, y] of [
      [2, 2],
      [598, 2],
      [2, 398],
      [598, 398],
    ] as const) {
      const [left, top] = placeLabels([label('a', x, y)], stage, [300, 200], []).get('a')!;
      assert.ok(left >= 0 && top >= 0 && left + size.width <= 600 && top + size.height <= 400, `at ${x}, ${y}`);
    }
  });

  it('keep clear of figures', () => {
    const free = placeLabels([label('a', 300, 100)], stage, [300, 200], []).get('a')!;
    const [x, y] = placeLabels(
      [label('a', 300, 100)],
      stage,
      [300, 200],
      [[free[0], free[1], free[0] + 70, free[1] + 18]],
    ).get('a')!;
    assert.ok(Math.abs(x - free[0]) >= 70 || Math.abs(y - free[1]) >= 18);
  });

  it('are left out where their spot is off the stage', () => {
    assert.equal(placeLabels([label('a', -1, 50)], stage, [300, 200], []).size, 0);
  });
});

describe('Figures', () => {
  it('give sizes in both systems, the spec’s own first (1 in = 25.4 mm)', () => {
    assert.equal(sizeText(82, 31.4, 'mm'), '82.0 × 31.4 mm (3.23 × 1.24 in)');
    assert.equal(sizeText(50.8, 25.4, 'in'), '2.00 × 1.00 in (50.8 × 25.4 mm)');
  });

  it('give doubtful widths a digit more than dimensions', () => {
    assert.deepEqual([lengthText(0.917, 'mm'), fineText(0.917, 'mm')], ['0.9 mm', '0.92 mm']);
    assert.deepEqual([lengthText(12.7, 'in'), fineText(0.917, 'in')], ['0.50 in', '0.036 in']);
    assert.deepEqual([crossText(11, 3, 'mm'), crossText(25.4, 12.7, 'in')], ['11.0 × 3.0 mm', '1.00 × 0.50 in']);
  });

  it('count in words', () => {
    assert.equal(partsText({ partCount: 1, holeCount: 3 }), '1 part · 3 holes');
    assert.equal(zoomText(2, 4).replace(/\s/, ' '), '50 %');
  });
});

describe('The look of a material', () => {
  it('follows the words of its name and is light wood otherwise', () => {
    assert.deepEqual(
      ['black walnut', 'American cherry', '3 mm MDF', 'clear acrylic', 'card', 'birch plywood', undefined].map((name) =>
        lookOf(name).join(' '),
      ),
      ['look-dark', 'look-red', 'look-fibre', 'look-acrylic', 'look-paper', 'look-light', 'look-light'],
    );
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
