/** Strokes of neighbouring letters that run together, by shapes drawn for it; an x-height is 10 mm. */

import assert from 'node:assert/strict';
import { union } from '../../../src/geometry/clipper.ts';
import type { Region } from '../../../src/geometry/types.ts';
import { Lettering } from '../../../src/tag/lettering/letters.ts';
import { mergedStrokes } from '../../../src/checks/measures/merged-strokes.ts';
import { box } from '../support/shapes.ts';

const xHeight = 10;

/** Stems 2 mm wide, so far apart as set and as made, with what is filled in between as high as given. */
function mergedIn(texts: string, { set, made, filled }: { set: number; made: number; filled: number }): string[] {
  const stemAt = (x: number): Region => [box(x, 0, x + 2, 10)];
  const letters = Array.from(texts, (text, k) => {
    return { text, line: 0, opens: k === 0, baseline: 0, region: stemAt(k * (2 + made)), asSet: stemAt(k * (2 + set)) };
  });
  const between = letters
    .slice(1)
    .map((_, k): Region => [box(k * (2 + made) + 1, 0, (k + 1) * (2 + made) + 1, filled)]);
  const shape = union([...letters.map(({ region }) => region), ...between]);
  const about = { path: [], xHeight, grow: 0, as: 'material', slid: true, hairline: 0 } as const;
  return mergedStrokes(new Lettering(about, () => letters), shape);
}

describe('Strokes of letters that were set apart', () => {
  it('have run together where all between them is filled', () => {
    assert.deepEqual(mergedIn('nnu', { set: 2, made: 0.3, filled: 10 }), ['nn', 'nu']);
  });

  it('have not where a bar joins their feet', () => {
    assert.deepEqual(mergedIn('nnu', { set: 2, made: 1, filled: 3 }), []);
  });

  it('have not where the font sets them together', () => {
    assert.deepEqual(mergedIn('nnu', { set: 0.3, made: 0.3, filled: 10 }), []);
  });

  it('are read where a word has one such pair', () => {
    assert.deepEqual(mergedIn('nn', { set: 2, made: 0.3, filled: 10 }), []);
  });
});
