import assert from 'node:assert/strict';
import { memoizeRecent } from '../../../src/core/recent.ts';

describe('What was last made of a few texts', () => {
  it('is made once, and again when others have come between', () => {
    const made: string[] = [];
    const upper = memoizeRecent(2, (text) => {
      made.push(text);
      return text === 'none' ? undefined : text.toUpperCase();
    });
    assert.deepEqual(['a', 'b', 'a', 'c', 'a', 'b'].map(upper), ['A', 'B', 'A', 'C', 'A', 'B']);
    assert.deepEqual(made, ['a', 'b', 'c', 'b']);
    made.length = 0;
    assert.deepEqual(['none', 'none'].map(upper), [undefined, undefined]);
    assert.deepEqual(made, ['none']);
  });
});
