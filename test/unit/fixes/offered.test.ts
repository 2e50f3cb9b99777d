import assert from 'node:assert/strict';
import { offered, partsOfTitle, remedyIn, shortTitle } from '../../../src/fixes/offered.ts';

describe('A menu of fixes', () => {
  it('shows the best of each problem first, five in all, and the rest where it is asked for', () => {
    const many = [
      ['a1', 'a2', 'a3', 'a4', 'a5', 'a6', 'both'],
      ['both', 'b2', 'b3', 'b4'],
    ];
    const { shown, more } = offered(many);
    assert.deepEqual(shown, ['a1', 'a2', 'a3', 'both', 'b2']);
    assert.deepEqual(more, ['a4', 'a5', 'a6', 'b3', 'b4']);
    assert.deepEqual(offered([]), { shown: [], more: [] });
  });

  it('shows one of those that are the same but for their figures', () => {
    const larger = [
      'Make “name” larger and thicker: width 72 mm, grow 0.5 mm (a)',
      'Make “name” larger and thicker: width 72 mm, grow 0.55 mm (b)',
    ];
    const fonts = [
      'Set “name” in another font: font Pacifico (c)',
      'Set “name” in another font: font Alfa Slab One (d)',
    ];
    const { shown, more } = offered(
      [
        [larger[0]!, ...fonts],
        [larger[1]!, fonts[0]!],
      ],
      remedyIn,
    );
    assert.deepEqual(shown, [larger[0], ...fonts]);
    assert.deepEqual(more, [larger[1]]);
  });

  it('shows one more rather than a line that leads to a single one', () => {
    assert.deepEqual(offered([['a', 'b', 'c', 'd', 'e', 'f']]).more, []);
    assert.deepEqual(offered([['a', 'b', 'c', 'd', 'e', 'f', 'g']]).more, ['f', 'g']);
  });

  it('leaves the size of the piece out of a long line, and never what becomes of the letters or of the problem', () => {
    const title = 'Thicken “name”: grow 0.2 mm (bridge 0.92 → 1.50 mm, width +0.6 mm)';
    assert.equal(shortTitle(title), title);
    const long =
      'Thicken “name” and keep the size of its letters: grow 0.25 mm, x_height 10.5 mm (bridge 1.01 mm → at least 1.50 mm, width +6.4 mm, letters 5 % larger and further apart)';
    assert.equal(
      shortTitle(long),
      'Thicken “name” and keep the size of its letters: grow 0.25 mm, x_height 10.5 mm (bridge 1.01 mm → at least 1.50 mm, letters 5 % larger and further apart)',
    );
    const moved =
      'Move the ring elsewhere, where it is not in the way of the letters: at top-left (width +1.8 mm, height +3.5 mm)';
    assert.equal(shortTitle(moved), moved);
    assert.equal(
      shortTitle(
        'Thicken “name”: grow 0.3 mm (bridge 0.97 → 1.63 mm, width +5.8 mm, height −0.2 mm, letters 2 % smaller, 22 % heavier and further apart)',
      ),
      'Thicken “name”: grow 0.3 mm (bridge 0.97 → 1.63 mm, letters 2 % smaller, 22 % heavier and further apart)',
    );
    assert.deepEqual(partsOfTitle(title), {
      label: 'Thicken “name”: grow 0.2 mm',
      effects: 'bridge 0.92 → 1.50 mm, width +0.6 mm',
    });
    assert.deepEqual(partsOfTitle('Move (a little)'), { label: 'Move', effects: 'a little' });
    assert.deepEqual(partsOfTitle('Move'), { label: 'Move' });
  });
});
