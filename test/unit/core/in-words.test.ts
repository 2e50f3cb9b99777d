import assert from 'node:assert/strict';
import { wayIn, waysIn } from '../../../src/core/in-words.ts';

/** One foot is 12 in, and a yard 3 ft (international yard and pound agreement, 1959). */
describe('Ways of the beam in words', () => {
  it('are in metres from a metre on, and in feet from a yard on', () => {
    assert.deepEqual([wayIn(999.94, 'mm'), wayIn(1234, 'mm')], ['999.9 mm', '1.23 m']);
    assert.deepEqual(
      [wayIn(35 * 25.4, 'in'), wayIn(3 * 304.8, 'in'), wayIn(16 * 304.8, 'in')],
      ['35 in', '3 ft', '16 ft'],
    );
  });

  it('have one unit where they stand in a column', () => {
    assert.deepEqual(
      waysIn(
        [4.326, 72.48, 23.25].map((inches) => inches * 25.4),
        'in',
      ),
      ['0.36 ft', '6.04 ft', '1.94 ft'],
    );
    assert.deepEqual(
      waysIn(
        [4.326, 23.25].map((inches) => inches * 25.4),
        'in',
      ),
      ['4.326 in', '23.25 in'],
    );
    assert.deepEqual(waysIn([42, 16590.9], 'mm'), ['0.042 m', '16.6 m']);
  });
});
