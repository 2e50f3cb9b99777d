import assert from 'node:assert/strict';
import { inkOn } from '../../../src/look/ink.ts';
import { lookOf } from '../../../src/look/looks.ts';

describe('Ink', () => {
  it('is dark on light faces and light on dark ones', () => {
    // Relative luminance of mid greys by WCAG 2.2: black stands out more above 0.18, which is about #777777.
    assert.deepEqual(['#ffffff', '#8a8a8a', '#5c5c5c', '#000000'].map(inkOn), [
      '#222222',
      '#222222',
      '#ffffff',
      '#ffffff',
    ]);
    assert.equal(inkOn(lookOf('birch plywood').wood), '#222222');
    assert.equal(inkOn(lookOf('walnut').wood), '#ffffff');
  });
});
